import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { dirFromMas } from "#core/celestial/vector.ts";
import { projectionOf } from "#core/chart/page.ts";
import { realLookups } from "#core/lesson/realLookups.ts";
import type { Lesson } from "#core/lesson/types.ts";
import type { AttemptRecord } from "#core/seams/index.ts";
import { encodeRecord } from "#core/session/record.ts";
import { SET_ELSEWHERE } from "#core/session/trail.ts";
import { createPracticeSource } from "#core/sky/practice/practiceSource.ts";
import type { FinishedAttempt } from "../../../src/desk/app/ports.ts";
import { factsOf, lastPassed, nightTime } from "../../../src/desk/report/facts.ts";
import { reportLayout } from "../../../src/desk/report/layout.ts";
import { bestStars, nextLesson, nextStep, trainingFor } from "../../../src/desk/report/nextStep.ts";
import { nightNotes } from "../../../src/desk/report/notes.ts";
import { parMarks } from "../../../src/desk/report/parMarks.ts";
import { reportPage, trailPieces } from "../../../src/desk/report/reportPage.ts";
import { sketchNeeds, sketchOf } from "../../../src/desk/report/sketch.ts";
import { compiledHop, FIELD_DAS, type Place, Writer } from "../score/attempts.ts";
import { type Files, type LessonCase, lessonCase } from "./workerCases.ts";

const at = (path: string) => fileURLToPath(new URL(`../../../${path}`, import.meta.url));
const files: Files = {
  lesson: (name) => readFile(at(`lessons/${name}`), "utf8"),
  sky: async (name) => {
    const { buffer, byteOffset, byteLength } = await readFile(at(`assets/sky/${name}`));
    return (buffer as ArrayBuffer).slice(byteOffset, byteOffset + byteLength);
  },
};
const WAY: readonly Place[] = [
  [0, 0],
  [0, 1],
  [0.4, 2],
  [0, 3],
];
const writer = () => new Writer(compiledHop(WAY));

let first: LessonCase;
let third: LessonCase;
beforeAll(async () => {
  [first, third] = await Promise.all([lessonCase("1-01", files), lessonCase("3-03", files)]);
});
const finishedOf = (record: AttemptRecord, lessonId = "3-03"): FinishedAttempt => ({
  id: "a",
  lessonId,
  endedAtMs: 1,
  word: "found",
  points: 12,
  stars: 1,
  recordText: encodeRecord(record),
});
const factsFrom = (record: AttemptRecord) => factsOf(finishedOf(record), third.lesson);

describe("what a report says", () => {
  it("is scored again from the record; the points that the logbook noted are not read", () => {
    const facts = factsOf(finishedOf(third.record), third.lesson);
    expect(facts.report.points).toBe(100);
    expect(facts.stars).toBe(3);
    expect(facts.dear).toBeNull();
    expect([facts.anchor, facts.target]).toEqual(["gamma Sge", "M 27"]);
  });
  it("counts claims where the lesson does", () => {
    expect(factsOf(finishedOf(first.record), first.lesson).byClaims).toBe(true);
  });
  it("refuses a record that is none", () => {
    expect(() => factsOf({ ...finishedOf(third.record), recordText: "{}" }, third.lesson)).toThrow(/format/);
  });
  it("names the furthest mark that was passed", () => {
    const record = writer().to([0, 1]).to([0.4, 1.9]).claim().record();
    const { way, dirs } = factsFrom(record);
    expect(lastPassed(way, dirs, FIELD_DAS)).toBe("mark 2");
    expect(lastPassed(way, dirs.slice(0, 2), FIELD_DAS)).toBeNull();
  });
  it("tells the time as the sky's own place has it", () => {
    expect(nightTime(third.record, 5 * 60_000)).toEqual({ time: "21.05", date: "31 August 2027" });
    const { compiled } = third.record;
    const spec = { ...compiled.spec, siteMas: [0, 54_000_000] as const };
    expect(nightTime({ ...third.record, compiled: { ...compiled, spec } }, 0).time).toBe("22.00");
  });
});

describe("the marks of the dots on the line of fields", () => {
  const pass: Lesson["pass"] = { points: [70, 82, 92] };
  const marksOf = (record: AttemptRecord) => parMarks(pass, factsFrom(record).report, record);
  it("lie the nearer the more dots, and where the points are just reached", () => {
    const record = writer().to([0, 1]).pin().to([2, 2]).to([0, 3]).pin().claim().record();
    const marks = marksOf(record);
    expect(marks.length).toBeGreaterThan(1);
    const lengths = marks.map(({ lengthDas }) => lengthDas);
    expect([...lengths].sort((a, b) => b - a)).toEqual(lengths);
    const { report } = factsFrom(record);
    for (const { dots, lengthDas } of marks)
      expect(report.trailDas <= lengthDas).toBe((report.points ?? 0) >= pass.points[dots - 1]!);
  });
  it("come nearer where help was taken", () => {
    const plain = writer().to([2, 1]).pin().to([0, 3]).pin().claim().record();
    const helped = writer()
      .event({ kind: "hint", leg: 0, grade: 2 })
      .to([2, 1])
      .pin()
      .to([0, 3])
      .pin()
      .claim()
      .record();
    const [before, after] = [marksOf(plain)[0], marksOf(helped)[0]];
    expect(after!.lengthDas).toBeLessThan(before!.lengthDas);
  });
  it("are none where claims are counted", () => {
    const record = writer().to([0, 3]).claim().record();
    expect(parMarks({ claims: [3, 2, 1] }, factsFrom(record).report, record)).toEqual([]);
  });
});

describe("the night's notes", () => {
  it("tell each thing done in order, with its price", () => {
    const record = writer()
      .event({ kind: "hint", leg: 0, grade: 1 })
      .to([0, 1])
      .pin([0.2, 1])
      .to([3, 1])
      .restart()
      .to([0, 3])
      .claim()
      .record();
    const texts = nightNotes(factsFrom(record)).map(({ text }) => text);
    expect(texts).toEqual([
      "To the finder.",
      "Gamma Sge in the middle.",
      "Asked where to look, −4.",
      "Rested on mark 1.",
      "Pin set, 0.2 field off.",
      expect.stringMatching(/^Back to gamma Sge, −\d\.$/),
      "To the eyepiece, 48×.",
      "Claimed. It is M 27.",
    ]);
  });
  it("price wrong claims one by one", () => {
    const wrong = writer().to([0, 1]).claim();
    wrong.tMs += 3000;
    wrong.event({ kind: "claim", says: "here" });
    const texts = nightNotes(factsFrom(wrong.record())).map(({ text }) => text);
    expect(texts.filter((text) => text.startsWith("Claimed"))).toEqual([
      "Claimed. It was not, −10.",
      "Claimed. It was not, −20.",
    ]);
  });
});

describe("the report's page", () => {
  it("has room for the ways and all of the trail, north up", () => {
    const record = writer().to([-3, 1]).to([4, 2]).to([0, 3]).claim().record();
    const { dirs } = factsFrom(record);
    const page = reportPage(record.compiled, dirs, []);
    const { project, holds } = projectionOf(page);
    const places = [...dirs, ...record.compiled.ways[0]!.marks.map(({ dir }) => dirFromMas(dir))];
    for (const dir of places) {
      const point = { x: 0, y: 0 };
      expect(project(dir, point) && holds(point, 40)).toBe(true);
    }
  });
  it("breaks the trail where the tube was set elsewhere at a stroke", () => {
    const { dirs, record } = factsFrom(writer().to([1, 0]).restart().to([0, 3]).claim().record());
    const pieces = trailPieces(dirs, record.trail.mark);
    expect(pieces).toHaveLength(2);
    expect(pieces.flat()).toHaveLength(dirs.length);
    expect(record.trail.mark.indexOf(SET_ELSEWHERE)).toBe(pieces[0]!.length);
  });
  it.each([
    [1440, 900],
    [1920, 1080],
    [1100, 700],
    [1024, 768],
    [390, 844],
    [320, 568],
  ])("fits %i x %i", (width, height) => {
    const { leftPx, wordsPx, gapPx, sheetScale, kind } = reportLayout(width, height);
    const sheet = 700 * sheetScale;
    const whole = kind === "beside" ? leftPx + wordsPx + gapPx + sheet : Math.max(wordsPx, sheet) + 2 * leftPx;
    expect(whole).toBeLessThanOrEqual(width);
  });
});

describe("the sketch of the claimed field", () => {
  it("shows the stars that the instrument showed, the target in the middle, north marked", async () => {
    const { lesson, record } = first;
    const seeing = realLookups.seeing(lesson);
    const { objects } = realLookups.sky(lesson);
    const source = createPracticeSource("sallow");
    const { cone, limitMag } = sketchNeeds(record, seeing);
    await source.want([...source.resident(cone, limitMag).missing], 0, new AbortController().signal);
    const sketch = sketchOf(record, { source, seeing, objects });
    expect(sketch.gear.id).toBe("binocular-10x50");
    expect(sketch.stars.length).toBeGreaterThan(40);
    for (const { x, y } of [...sketch.stars, ...sketch.stipple]) expect(x * x + y * y).toBeLessThanOrEqual(1);
    const middle = sketch.stars.filter(({ x, y }) => Math.hypot(x, y) < 0.06);
    expect(middle.length).toBeGreaterThan(4);
    expect(sketch.northDeg).toBeGreaterThanOrEqual(0);
    expect(sketch.northDeg).toBeLessThan(360);
  });
});

describe("what a report proposes", () => {
  const lessons = () => [first.lesson, third.lesson, { ...third.lesson, id: "3-04s" }];
  const done = (lessonId: string, stars: 0 | 1 | 2 | 3): FinishedAttempt => ({
    ...finishedOf(third.record, lessonId),
    stars,
  });
  it("is the next lesson without a star, in order, then the first one left out", () => {
    expect(nextLesson(null, lessons(), [])?.id).toBe("1-01");
    expect(nextLesson(third.lesson, lessons(), [])?.id).toBe("3-04s");
    expect(nextLesson(third.lesson, lessons(), [done("3-04s", 1)])?.id).toBe("1-01");
    expect(nextLesson(null, lessons(), [done("1-01", 1), done("3-03", 3), done("3-04s", 2)])).toBeNull();
  });
  it("keeps the best of all attempts", () => {
    expect(bestStars("3-03", [done("3-03", 2), done("3-03", 0)])).toBe(2);
    expect(bestStars("3-03", [])).toBeNull();
  });
  it("is the hop again where it was not passed, and the habit's lesson where there is one", () => {
    expect(nextStep(false, null, third.lesson, lessons(), []).kind).toBe("again");
    expect(nextStep(true, null, third.lesson, lessons(), [done("3-03", 1)])).toMatchObject({ kind: "next" });
    const report = { ...factsFrom(third.record).report, habit: { code: "OFF-WAY", costPoints: 9, lesson: "1-01" } };
    const trainedIn = trainingFor(report, third.lesson, lessons());
    expect(trainedIn?.id).toBe("1-01");
    expect(nextStep(true, trainedIn, third.lesson, lessons(), [])).toMatchObject({ kind: "train" });
    expect(trainingFor({ ...report, habit: { ...report.habit, lesson: "3-09" } }, third.lesson, lessons())).toBeNull();
  });
});

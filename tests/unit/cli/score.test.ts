/** `score` over records of the lessons that come along, played here by a hand that knows the way. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { dirFromMas } from "#core/celestial/vector.ts";
import { checkLesson } from "#core/lesson/format.ts";
import { toHopSpec } from "#core/lesson/hopSpec.ts";
import { realLookups } from "#core/lesson/realLookups.ts";
import { compileHop } from "#core/score/compile.ts";
import { score } from "#core/score/report.ts";
import type { AttemptRecord, CompiledAttempt } from "#core/seams/index.ts";
import { encodeRecord, record } from "#core/session/record.ts";
import { compiledAnew, createSession, skyTimeMs } from "#core/session/session.ts";
import { residentAbout, skyOf } from "../../../src/cli/skies.ts";
import { onAnchor, pushTo, say } from "../session/hands.ts";
import { faintward, jsonOf, repo } from "./faintward.ts";

type Scored = {
  score: number | null;
  parts: Record<string, number>;
  trail: { lengthDeg: number; parDeg: number; fields: number };
  matchesRecord: boolean;
};
const io = { root: repo(""), isTerminal: false, progress: () => {} };
const lessonFile = (id: string) => repo(`lessons/${id}.yaml`);

/** @param laterMs the night is set on by so much */
async function compiled(id: string, laterMs = 0): Promise<CompiledAttempt> {
  const written = checkLesson(id, readFileSync(lessonFile(id), "utf8"), realLookups).lesson!;
  const lesson = { ...written, time: new Date(Date.parse(written.time) + laterMs).toISOString() };
  const spec = toHopSpec(lesson, 0, realLookups);
  const seeing = realLookups.seeing(lesson);
  const made = compileHop(spec, await residentAbout(skyOf(spec.sky, io), spec, seeing), seeing, 7);
  if (!("ok" in made)) throw new Error("tiles are missing");
  return made.ok;
}

/** From mark to mark, pins where the tube points, a claim at the end. */
function played(attempt: CompiledAttempt, session = createSession(attempt)): AttemptRecord {
  const { hoppingGear, claimGear, anchor } = attempt.spec;
  onAnchor(session, hoppingGear, anchor);
  for (const { dir } of attempt.ways[0]!.marks.slice(1)) {
    pushTo(session, dirFromMas(dir));
    say(session, { kind: "pin", at: dir });
  }
  if (claimGear !== hoppingGear) say(session, { kind: "use", gear: claimGear });
  pushTo(session, dirFromMas(attempt.spec.targets[0]!.dir), 0.2);
  say(session, { kind: "claim", says: "here" });
  return record(session);
}

describe.each(["1-01", "3-03", "3-04s"])("a record of %s", (id) => {
  let folder: string;
  let run: AttemptRecord;
  let file: string;
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "faintward-score-"));
    run = played(await compiled(id));
    file = join(folder, "record.json");
    writeFileSync(file, encodeRecord(run));
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it("gives the very points that the page would give, and knows its lesson", () => {
    const report = score(run);
    const scored = jsonOf<Scored>("score", file, `--lesson=${lessonFile(id)}`);
    expect(report.word).toBe("found");
    expect(scored.score).toBe(report.points);
    expect(Object.values(scored.parts).reduce((sum, points) => sum + points, 0)).toBe(report.points);
    expect(scored.trail.parDeg).toBeCloseTo(report.parDas / 36_000, 4);
    expect(scored.trail.fields).toBeCloseTo(report.trailDas / run.compiled.hoppingFieldDas, 1);
    expect(scored.matchesRecord).toBe(true);
  });

  it("can be passed by one who goes straight", () => {
    expect(score(run).points!).toBeGreaterThanOrEqual(92);
  });

  it("is told from a changed one, with exit 1", () => {
    const changed = JSON.parse(encodeRecord(run)) as { lengthBeforeDas: number };
    changed.lengthBeforeDas += 1;
    const other = join(folder, "changed.json");
    writeFileSync(other, JSON.stringify(changed));
    const { exit, out } = faintward("score", other, "--json");
    expect(exit).toBe(1);
    expect(JSON.parse(out)).toMatchObject({ score: score(run).points, matchesRecord: false });
  });

  it("does not match another lesson", () => {
    const other = id === "3-03" ? "3-04s" : "3-03";
    const { exit, out } = faintward("score", file, `--lesson=${lessonFile(other)}`, "--json");
    expect([exit, (JSON.parse(out) as Scored).matchesRecord]).toEqual([1, false]);
  });
});

describe("a record of a hop whose night was set to another hour", () => {
  const folder = mkdtempSync(join(tmpdir(), "faintward-score-"));
  afterAll(() => rmSync(folder, { recursive: true }));
  const HOUR_MS = 3_600_000;

  /** Whether the command knows the record of a hop that was compiled for an hour later as the lesson's. */
  async function matches(toMs: (lessonMs: number) => number): Promise<boolean> {
    const [first, later] = [await compiled("3-03"), await compiled("3-03", HOUR_MS)];
    const session = createSession(first);
    say(session, { kind: "timeSet", toMs: toMs(first.spec.startMs) });
    expect(compiledAnew(session, later)).toBe(true);
    const run = played(later, session);
    expect(compiledAnew(session, first), "once the hop is on, what is compiled stands").toBe(false);
    expect(score(run).word).toBe("found");
    const taken = createSession(run.compiled, { resume: run });
    expect([skyTimeMs(taken), taken.compiled.limits]).toEqual([toMs(first.spec.startMs), later.limits]);
    const file = join(folder, "record.json");
    writeFileSync(file, encodeRecord(run));
    const { out } = faintward("score", file, `--lesson=${lessonFile("3-03")}`, "--json");
    expect(JSON.parse(out)).toMatchObject({ score: score(run).points });
    return (JSON.parse(out) as Scored).matchesRecord;
  }

  it("is the lesson's where the events say that hour, and another limit was in force", async () => {
    expect(await matches((lessonMs) => lessonMs + HOUR_MS)).toBe(true);
    const finder = ({ limits }: CompiledAttempt) => limits.find(({ gear }) => gear === "finder-9x50")!.avertedMilliMag;
    // The Arrow sinks after its culmination, and less of a star's light comes through.
    expect(finder(await compiled("3-03", 4 * HOUR_MS))).toBeLessThan(finder(await compiled("3-03")) - 100);
  });

  it("is not where they say another", async () => {
    expect(await matches((lessonMs) => lessonMs + 2 * HOUR_MS)).toBe(false);
  });
});

describe("a record that cannot be read", () => {
  it.each([
    ["no JSON", "not json"],
    ["another document", '{"a":1}'],
    ["a document of great depth", `${"[".repeat(100_000)}`],
  ])("%s", (_, text) => {
    const folder = mkdtempSync(join(tmpdir(), "faintward-score-"));
    const file = join(folder, "record.json");
    writeFileSync(file, text);
    const { exit, out } = faintward("score", file, "--json");
    rmSync(folder, { recursive: true });
    expect(exit).toBe(2);
    expect(JSON.parse(out)).toMatchObject({ error: { code: "RECORD", file } });
  });
});

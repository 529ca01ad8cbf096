import { describe, expect, it } from "vitest";
import { checkLesson } from "#core/lesson/format.ts";
import { figuresOf, starsEarned } from "#core/lesson/pass.ts";
import type { LessonPass } from "#core/lesson/types.ts";
import { score } from "#core/score/report.ts";
import { compiledHop, type Place, Writer } from "../score/attempts.ts";
import { smallLookups } from "./smallSky.ts";
import { SOUND } from "./sound.ts";

const TARGET: Place = [0, 1];
const compiled = compiledHop([[0, 0], TARGET]);
const BY_POINTS: LessonPass = { points: [70, 82, 92] };
const BY_CLAIMS: LessonPass = { claims: [3, 2, 1] };

/** Straight to the target with exact pins, after so many claims beside it. */
function attempt({ wrong = 0, hint = 0 as 0 | 1 | 2, give = false } = {}) {
  const writer = new Writer(compiled).to([0, 0.4]).pin();
  if (hint > 0) writer.event({ kind: "hint", leg: 0, grade: hint as 1 | 2 });
  writer.to([0, 0.8]);
  for (let i = 0; i < wrong; i++) writer.claim();
  writer.event({ kind: "use", gear: "finder-9x50" }).to(TARGET).pin();
  return (give ? writer.event({ kind: "giveUp" }) : writer.claim()).record();
}
const stars = (pass: LessonPass, how: Parameters<typeof attempt>[0]) =>
  starsEarned(pass, score(attempt(how)), attempt(how));

describe("stars by points", () => {
  it.each([
    ["straight and clean", {}, 3],
    ["one hint of the first grade", { hint: 1 as const }, 2],
    ["one hint of the second grade", { hint: 2 as const }, 1],
    ["one wrong claim", { wrong: 1 }, 2],
    ["two wrong claims", { wrong: 2 }, 0],
    ["given up at the target", { give: true }, 0],
  ])("%s", (_, how, earned) => {
    expect(stars(BY_POINTS, how)).toBe(earned);
  });
});

describe("stars by claims", () => {
  it.each([
    ["the first claim", {}, 3],
    ["the second", { wrong: 1 }, 2],
    ["the third", { wrong: 2 }, 1],
    ["none", { give: true }, 0],
  ])("%s", (_, how, earned) => {
    expect(stars(BY_CLAIMS, how)).toBe(earned);
  });
});

it("fills lines from the record", () => {
  const lesson = checkLesson("t.yaml", SOUND, smallLookups).lesson!;
  const record = attempt({ wrong: 1 });
  expect(figuresOf(lesson, 0, score(record), record)).toMatchObject({
    anchor: "Bright",
    target: "Cluster",
    parDeg: "5.3",
    parFields: "1.0",
    trailFields: "1.0",
    shortFields: "0.0",
    claims: "2",
  });
});

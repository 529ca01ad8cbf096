/**
 * The trail as it is stored: times as differences; places in steps of the trail as differences of differences, which are
 * small where the tube moves evenly; the hand as run lengths; marks as pairs of index and mark.
 */
import type { Trail } from "#core/seams/index.ts";
import { int, list, object, oneOf, pair, refuse } from "./shape.ts";
import { STEP_DAS } from "./trail.ts";

const MOST_SAMPLES = 200_000;
const CIRCLE_DAS = 12_960_000;
const MOST_MS = 2_147_483_647;

/** The stored form of a trail: plain lists of small whole numbers, for JSON. */
export function packTrail(trail: Trail) {
  const onSteps = [trail.raDas, trail.decDas].every((column) => column.every((das) => das % STEP_DAS === 0));
  const stepDas = onSteps ? STEP_DAS : 1;
  return {
    tMs: differences(trail.tMs),
    stepDas,
    ra: differences(differences(trail.raDas.map((das) => das / stepDas))),
    dec: differences(differences(trail.decDas.map((das) => das / stepDas))),
    hand: runLengths(trail.byHand),
    marks: Array.from(trail.mark.entries()).filter(([, mark]) => mark !== 0),
  };
}

function differences(column: ArrayLike<number>): number[] {
  return Array.from(column, (each, i) => (i === 0 ? each : each - column[i - 1]!));
}

/** Lengths of runs of equal flags, starting with the run of 0 (which may be empty). */
function runLengths(flags: Uint8Array): number[] {
  const runs: number[] = [];
  let flag = 0;
  let run = 0;
  for (const each of flags) {
    if (each === flag) run++;
    else {
      runs.push(run);
      [flag, run] = [each, 1];
    }
  }
  return [...runs, run];
}

const deltas = list(int(-4 * CIRCLE_DAS, 4 * CIRCLE_DAS), MOST_SAMPLES);
const trailShape = object({
  tMs: list(int(0, MOST_MS), MOST_SAMPLES),
  stepDas: oneOf([1, STEP_DAS]),
  ra: deltas,
  dec: deltas,
  hand: list(int(0, MOST_SAMPLES), MOST_SAMPLES),
  marks: list(pair(int(0, MOST_SAMPLES)), MOST_SAMPLES),
});

/**
 * The trail from its stored form.
 * @throws InputError where columns, runs or marks do not fit each other or leave their bounds
 */
export function unpackTrail(value: unknown): Trail {
  const shape = trailShape(value, "trail");
  const count = shape.tMs.length;
  if (shape.ra.length !== count || shape.dec.length !== count) refuse("trail", "has columns of unequal length");
  const places = (twice: readonly number[], low: number, high: number, where: string) =>
    summed(summed(twice, -4 * CIRCLE_DAS, 4 * CIRCLE_DAS, where), low / shape.stepDas, high / shape.stepDas, where).map(
      (steps) => steps * shape.stepDas,
    );
  return {
    tMs: summed(shape.tMs, 0, MOST_MS, "trail.tMs"),
    raDas: places(shape.ra, 0, CIRCLE_DAS - 1, "trail.ra"),
    decDas: places(shape.dec, -CIRCLE_DAS / 4, CIRCLE_DAS / 4, "trail.dec"),
    byHand: flagsOfRuns(shape.hand, count),
    mark: marksOf(shape.marks, count),
  };
}

function summed(steps: ArrayLike<number>, low: number, high: number, where: string): Int32Array {
  const column = new Int32Array(steps.length);
  let sum = 0;
  for (let i = 0; i < steps.length; i++) {
    sum += steps[i]!;
    if (sum < low || sum > high) refuse(`${where}[${i}]`, "adds up beyond its bounds");
    column[i] = sum;
  }
  return column;
}

function flagsOfRuns(runs: readonly number[], count: number): Uint8Array {
  const flags = new Uint8Array(count);
  let at = 0;
  runs.forEach((run, i) => {
    if (at + run > count) refuse("trail.hand", "is longer than the trail");
    flags.fill(i % 2, at, at + run);
    at += run;
  });
  if (at !== count) refuse("trail.hand", "is shorter than the trail");
  return flags;
}

function marksOf(marks: readonly (readonly [number, number])[], count: number): Uint8Array {
  const column = new Uint8Array(count);
  for (const [index, mark] of marks) {
    if (index >= count || mark > 2) refuse("trail.marks", "names a sample or a mark that there is not");
    column[index] = mark;
  }
  return column;
}

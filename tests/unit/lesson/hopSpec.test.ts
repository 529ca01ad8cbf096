import { expect, it } from "vitest";
import { checkLesson } from "#core/lesson/format.ts";
import { toHopSpec } from "#core/lesson/hopSpec.ts";
import { InputError } from "#core/seams/errors.ts";
import { smallLookups } from "./smallSky.ts";
import { SOUND } from "./sound.ts";

const lesson = checkLesson("t.yaml", SOUND, smallLookups).lesson!;
const MAS_PER_DEG = 3_600_000;

it("maps a stage to a hop in whole numbers", () => {
  const spec = toHopSpec(lesson, 0, smallLookups);
  expect(spec).toMatchObject({
    sky: { kind: "catalogue", skyVersion: 1 },
    anchor: { raMas: 300 * MAS_PER_DEG, decMas: 20 * MAS_PER_DEG },
    targets: [{ objectId: "Cluster", dir: { raMas: 300 * MAS_PER_DEG, decMas: 24 * MAS_PER_DEG }, sizeDas: 7200 }],
    hoppingGear: "finder-9x50",
    claimGear: "newton200-48x",
    siteMas: [50 * MAS_PER_DEG, 0],
    startMs: Date.UTC(2027, 7, 31, 21),
    weights: { directness: 25, pins: 45, care: 30 },
    level: "C",
    finderOffsetDas: [0, 0],
  });
  expect(spec.neighbours.map(({ objectId }) => objectId)).toEqual(["Neighbour", "Ghost"]);
  expect(spec.ways.map(({ marks }) => marks.map(({ name }) => name))).toEqual([["Bright", "Mark", "Cluster"]]);
});

it("every number of the hop is an integer", () => {
  const numbers: number[] = [];
  JSON.stringify(toHopSpec(lesson, 0, smallLookups), (_, value: unknown) => {
    if (typeof value === "number") numbers.push(value);
    return value;
  });
  expect(numbers.length).toBeGreaterThan(20);
  expect(numbers.every(Number.isInteger)).toBe(true);
});

it("refuses a stage that is not there", () => {
  expect(() => toHopSpec(lesson, 1, smallLookups)).toThrow(InputError);
});

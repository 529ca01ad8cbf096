import { expect, test } from "vitest";
import { lookAlikesOf } from "#core/score/lookAlikes.ts";
import { score } from "#core/score/report.ts";
import type { CompiledAttempt } from "#core/seams/index.ts";
import { compiledHop, FIELD_DAS, mas, type Place, Writer } from "./attempts.ts";

type Star = readonly [x: number, y: number, milliMag: number];
const triplesOf = (stars: readonly Star[]): Int32Array =>
  Int32Array.from(
    [...stars]
      .sort((a, b) => a[2] - b[2])
      .flatMap(([x, y, milliMag]) => {
        const { raMas, decMas } = mas([x, y]);
        return [raMas, decMas, milliMag];
      }),
  );
/** Anchor, a waymark, the target. */
const MARKS: readonly Place[] = [
  [0, 0],
  [0, 1],
  [0, 2],
];
const ANCHOR: Star = [0, 0, 2500];
const MARK: Star = [0, 1, 4500];
/** A figure: a bent pair about its star, turned and set where one likes. */
const figureAt = ([x, y]: Place, turnRad: number, mirrored = false): Star[] =>
  (
    [
      [0.2, 0.05, 5000],
      [-0.1, 0.3, 5600],
    ] as const
  ).map(([east, north, milliMag]) => {
    const [a, b] = [mirrored ? -east : east, north];
    const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
    return [x + c * a - s * b, y + s * a + c * b, milliMag];
  });
const BASE = [ANCHOR, MARK, ...figureAt([0, 1], 0)];
const hop = () => compiledHop(MARKS);
/** Places of the look-alikes, in fields. */
const alikes = (more: readonly Star[]): Place[] => {
  const stars = [...BASE, ...more].sort((a, b) => a[2] - b[2]);
  return lookAlikesOf(hop().ways, triplesOf(stars), FIELD_DAS).map((at) => [stars[at]![0], stars[at]![1]]);
};
const TWIN: Place = [1, 1];

test("a way with nothing like its marks about it has no look-alikes", () => {
  expect(alikes([])).toEqual([]);
  expect(alikes([[1, 1, 4500]])).toEqual([]);
});

test("the same figure passes for the mark however it is turned, and not where it is mirrored", () => {
  for (const turnRad of [0, 1, 2.5, 4, 6])
    expect(alikes([[...TWIN, 4600], ...figureAt(TWIN, turnRad)]), `${turnRad}`).toEqual([TWIN]);
  for (const turnRad of [0, 1, 2.5, 4, 6])
    expect(alikes([[...TWIN, 4600], ...figureAt(TWIN, turnRad, true)]), `${turnRad}`).toEqual([]);
});

test("a figure of another brightness, another size or too far off is none", () => {
  expect(alikes([[...TWIN, 5200], ...figureAt(TWIN, 1)])).toEqual([]);
  const wide = figureAt(TWIN, 1).map(([x, y, m]): Star => [1 + 1.4 * (x - 1), 1 + 1.4 * (y - 1), m]);
  expect(alikes([[...TWIN, 4500], ...wide])).toEqual([]);
  expect(alikes([[1.7, 1, 4500], ...figureAt([1.7, 1], 1)])).toEqual([]);
});

test("a neighbour as bright as the anchor passes for it, figure or none", () => {
  expect(alikes([[-1, 0, 2900]])).toEqual([[-1, 0]]);
  expect(alikes([[-1, 0, 3100]])).toEqual([]);
});

test("a mark never passes for another, and a mark without a star has no look-alikes", () => {
  const marks: Place[] = [...MARKS.slice(0, 2), [1, 1], [1, 2]];
  const stars = triplesOf([...BASE, [1, 1, 4500], ...figureAt([1, 1], 2)]);
  expect(lookAlikesOf(compiledHop(marks).ways, stars, FIELD_DAS)).toEqual([]);
  const dark = triplesOf([ANCHOR, ...figureAt([0, 1], 0), [1, 1, 4500], ...figureAt([1, 1], 2)]);
  expect(lookAlikesOf(hop().ways, dark, FIELD_DAS)).toEqual([]);
});

/** No pins, so that the way alone decides. */
const unpinned = () => compiledHop(MARKS, { weights: { directness: 80, pins: 0, care: 20 } });
/** A look-alike less than a step away: no other habit comes in. */
const BESIDE: Place = [0.6, 1];
const withTwin = (): CompiledAttempt => {
  const stars = triplesOf([...BASE, [...BESIDE, 4600], ...figureAt(BESIDE, 0)]);
  return { ...unpinned(), context: { stars, lookAlikes: lookAlikesOf(hop().ways, stars, FIELD_DAS) } };
};
const habitOf = (compiled: CompiledAttempt, lookMs: number) => {
  const writer = new Writer(compiled).to([0, 0.5]).to([0, 1]).to(BESIDE);
  writer.tMs += lookMs;
  return score(writer.to([0, 1]).to([0, 1.5]).to([0, 2]).claim().record()).habit;
};

test("a long look at a look-alike is the habit to mend, a short one or one where nothing resembles is not", () => {
  expect(habitOf(withTwin(), 3000)).toMatchObject({ code: "FIG-TWIN", lesson: "3-05" });
  expect(habitOf(withTwin(), 3000)!.costPoints).toBeGreaterThan(0);
  expect(habitOf(withTwin(), 0)?.code).not.toBe("FIG-TWIN");
  expect(habitOf(unpinned(), 3000)?.code).not.toBe("FIG-TWIN");
});

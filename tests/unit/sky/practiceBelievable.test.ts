/** A small version of the bench's classifier: can grown finder fields be told from real ones? */
import { describe, expect, test } from "vitest";
import type { FoundStar } from "#core/sky/catalogue/starsWithin.ts";
import { finderFields, toldRightly } from "../../bench/practice/believability.ts";

const SEEDS = ["birk", "oak", "ash", "fern", "moss", "rook"];
const FIELDS = 300;
const TRAINING = 150;
/** Half is chance; of 150 fields it gives 0.62 or more once in 600 times. */
const TOLD_AT_MOST = 0.62;

const fields = await finderFields("assets/sky", SEEDS, FIELDS, 4711);

/** The same fields with the stars of the grown ones changed, or left out. */
const spoiled = (change: (star: FoundStar, i: number) => FoundStar | undefined) =>
  fields.map((field) =>
    field.isReal ? field : { ...field, stars: field.stars.flatMap((star, i) => change(star, i) ?? []) },
  );

describe("150 grown and 150 real finder fields", () => {
  test("are hardly told apart", () => {
    expect(toldRightly(fields, TRAINING)).toBeLessThan(TOLD_AT_MOST);
  });

  test.each<[string, (star: FoundStar, i: number) => FoundStar | undefined]>([
    ["whose colours are all alike", (star) => ({ ...star, colourBV: 0.6 })],
    ["whose colours are a step too blue", (star) => ({ ...star, colourBV: star.colourBV - 0.16 })],
    ["which have no middling colours", (star) => ({ ...star, colourBV: star.colourBV < 0.8 ? 0.3 : 1.1 })],
    ["which have half as many stars", (star, i) => (i % 2 ? undefined : star)],
    ["which stand on a grid", (star) => ({ ...star, dir: star.dir.map(onGrid) as unknown as FoundStar["dir"] })],
  ])("%s are found out", (_, change) => {
    expect(toldRightly(spoiled(change), TRAINING)).toBeGreaterThan(TOLD_AT_MOST);
  });
});

/** To steps of a fifth of a degree. */
function onGrid(coordinate: number): number {
  return Math.round(coordinate * 286) / 286;
}

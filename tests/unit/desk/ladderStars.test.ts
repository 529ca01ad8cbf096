import { describe, expect, it } from "vitest";
import { DEG, dirFromRadec } from "#core/celestial/vector.ts";
import { pointBlock } from "#core/field/pointBlock.ts";
import { ladderStarsOf } from "../../../src/desk/play/ladderStars.ts";

const ZENITH = dirFromRadec(0, 50 * DEG);
const AT = dirFromRadec(0, 0);
/** A star of 1.0 and one of 4.0, both 5 degrees off. */
const block = pointBlock(
  [1000, 4000].map((milliMag, i) => ({ dir: dirFromRadec((i ? -5 : 5) * DEG, 0), milliMag, colourBV: 0.6 })),
);

describe("the ladder's stars", () => {
  it("are those that the instrument shows: in twilight the ladder empties as the field does", () => {
    const shown = (limitMag: number) =>
      ladderStarsOf([block], AT, ZENITH, limitMag).map(({ atDeg }) => Math.round(atDeg));
    expect(shown(5.6)).toHaveLength(2);
    expect(shown(2)).toEqual(shown(5.6).slice(0, 1));
    expect(shown(-0.6)).toEqual([]);
  });
});

import { DEG, radecFromDir } from "#core/celestial/vector.ts";
import type { FoundStar } from "#core/sky/catalogue/starsWithin.ts";
import { NEUTRAL_BV } from "#core/sky/catalogue/tileFormat.ts";
import { rounded, roundedTurn } from "./values.ts";

/** Tiles hold colours in steps that never meet this one: whoever has it was never measured. */
const UNKNOWN_BV = Math.fround(NEUTRAL_BV);

/** A star as scripts read it. Places to 0.004", more than the tiles hold; colour null where it is unknown. */
export function starJson({ dir, milliMag, colourBV, invented }: FoundStar) {
  const { raRad, decRad } = radecFromDir(dir);
  return {
    raDeg: roundedTurn(raRad / DEG, 6),
    decDeg: Number((decRad / DEG).toFixed(6)) + 0,
    magV: milliMag / 1000,
    colourBV: colourBV === UNKNOWN_BV ? null : rounded(colourBV, 2),
    invented,
  };
}

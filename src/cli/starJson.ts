import { DEG, radecFromDir } from "#core/celestial/vector.ts";
import type { FoundStar } from "#core/sky/catalogue/starsWithin.ts";
import { rounded } from "./values.ts";

/** A star as scripts read it. Places to 0.004", more than the tiles hold; colour null where it is unknown. */
export function starJson({ dir, milliMag, colourBV, invented }: FoundStar) {
  const { raRad, decRad } = radecFromDir(dir);
  const raDeg = Number((raRad / DEG).toFixed(6));
  return {
    raDeg: raDeg === 360 ? 0 : raDeg,
    decDeg: Number((decRad / DEG).toFixed(6)) + 0,
    magV: milliMag / 1000,
    colourBV: rounded(colourBV, 2),
    invented,
  };
}

import type { Dir } from "#core/seams/index.ts";
import { exactHypot3 } from "./exactMath.ts";
import { MAS_RAD, normalise } from "./vector.ts";

/**
 * Place of a star `years` (Julian) later, moved along its great circle; no radial motion. `pmRaMas` is mu_alpha cos(dec) and
 * `pmDecMas` mu_delta, mas a year at the first epoch, as catalogues give them. At a pole, east is taken for right
 * ascension 0.
 */
export function applyProperMotion(dir: Dir, pmRaMas: number, pmDecMas: number, years: number): Dir {
  const [x, y, z] = dir;
  const rho = exactHypot3(x, y, 0);
  const cosRa = rho > 0 ? x / rho : 1;
  const sinRa = rho > 0 ? y / rho : 0;
  const east = pmRaMas * MAS_RAD * years;
  const north = pmDecMas * MAS_RAD * years;
  return normalise([x - east * sinRa - north * z * cosRa, y + east * cosRa - north * z * sinRa, z + north * rho]);
}

/** What the air takes of a star beyond what it takes at the zenith, by the star's height: a table for those who draw many. */
import { kastenYoung } from "#core/celestial/airmass.ts";
import { exactAsin, roundHalfUp } from "#core/celestial/exactMath.ts";
import { DEG } from "#core/celestial/vector.ts";
import { apparentAltDeg, lossMagOf } from "./conditions.ts";

/** Steps of the table from the horizon to the zenith, alike in the sine of the true altitude. */
const STEPS = 256;

/**
 * Extinction beyond the zenith's, 0.001 mag, for the sines 0, 1/256 .. 1 of the true altitude; refraction lifts the star.
 * @param extinction V, mag per air mass
 */
export function lossTable(extinction: number): Int16Array {
  const table = new Int16Array(STEPS + 1);
  for (let i = 0; i <= STEPS; i++) {
    const airMass = kastenYoung(apparentAltDeg(exactAsin(i / STEPS) / DEG));
    table[i] = roundHalfUp(1000 * lossMagOf(extinction, airMass));
  }
  return table;
}

/** What a table says of a height, 0.001 mag; below the horizon as at it. Allocates nothing. */
export function lossMilliMagAt(table: ArrayLike<number>, sinAltitude: number): number {
  const at = Math.min(STEPS, Math.max(0, sinAltitude * STEPS));
  const i = Math.min(STEPS - 1, Math.floor(at));
  return table[i]! + (table[i + 1]! - table[i]!) * (at - i);
}

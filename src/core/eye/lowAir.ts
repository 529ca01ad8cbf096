/** What height over the horizon does to what is drawn: tables for those who draw many stars, or a wide glow. */
import { exactPow10, roundHalfUp } from "#core/celestial/exactMath.ts";
import { type Conditions, type SkyHere, skyHere } from "./conditions.ts";
import { litFactor } from "./instrument.ts";
import { log10 } from "./light.ts";
import { nakedLimitMag } from "./threshold.ts";

/** Steps of the table from the horizon to the zenith, alike in the sine of the true altitude. */
const STEPS = 256;

/** The sky without Moon and Milky Way, whose light has no one height, by the sine of the true altitude. */
const plainSky = (now: Conditions) => {
  const plain: Conditions = { ...now, zenith: [0, 0, 1], moon: null, glowMuAt: undefined };
  return (sine: number): SkyHere => skyHere(plain, [Math.sqrt(1 - sine * sine), 0, sine]);
};

/**
 * By how much stars fall behind the naked eye's limit lower down, against the zenith, 0.001 mag, for the sines 0, 1/256 .. 1
 * of the true altitude: the air takes of their light, and the night before which they stand grows brighter.
 */
export function lossTable(now: Conditions): Int16Array {
  const skyAt = plainSky(now);
  const limitAt = (sine: number) => {
    const { skyMu, lossMag } = skyAt(sine);
    return nakedLimitMag(skyMu, litFactor(skyMu)) - lossMag;
  };
  const best = limitAt(1);
  return Int16Array.from({ length: STEPS + 1 }, (_, i) => roundHalfUp(1000 * (best - limitAt(i / STEPS))));
}

/**
 * What is left of a glow's contrast with the night, 1 at the zenith, for the same sines: air dims the glow as it dims a star,
 * and the night behind it grows brighter downwards.
 */
export function contrastTable(now: Conditions): Float32Array {
  const skyAt = plainSky(now);
  const zenithMu = skyAt(1).skyMu;
  return Float32Array.from({ length: STEPS + 1 }, (_, i) => {
    const { skyMu, lossMag } = skyAt(i / STEPS);
    return exactPow10(0.4 * (skyMu - zenithMu - lossMag));
  });
}

/**
 * How much brighter a glow makes the sky at a height, dex.
 * @param zenithDex what it would make of the zenith
 * @param contrast what is left of it, 0 to 1
 */
export const lowGlowDex = (zenithDex: number, contrast: number): number =>
  log10(1 + (exactPow10(zenithDex) - 1) * contrast);

/** What a table says of a height; below the horizon as at it. Allocates nothing. */
export function atHeight(table: ArrayLike<number>, sinAltitude: number): number {
  const at = Math.min(STEPS, Math.max(0, sinAltitude * STEPS));
  const i = Math.min(STEPS - 1, Math.floor(at));
  return table[i]! + (table[i + 1]! - table[i]!) * (at - i);
}

/** What height over the horizon does to what is drawn: tables for those who draw many stars, or a wide glow. */
import { kastenYoung } from "#core/celestial/airmass.ts";
import { exactAsin, exactPow10, roundHalfUp } from "#core/celestial/exactMath.ts";
import { DEG } from "#core/celestial/vector.ts";
import { apparentAltDeg, lossMagOf } from "./conditions.ts";
import { log10 } from "./light.ts";
import { nightNl } from "./skyLight.ts";

/** Steps of the table from the horizon to the zenith, alike in the sine of the true altitude. */
const STEPS = 256;
/** The night's growth downwards is the same share of any. */
const ANY_MU = 21;

/** Apparent altitude of a true one's sine, degrees: refraction lifts what stands there. */
const apparentDegOf = (sine: number): number => apparentAltDeg(exactAsin(sine) / DEG);

/**
 * Extinction beyond the zenith's, 0.001 mag, for the sines 0, 1/256 .. 1 of the true altitude; refraction lifts the star.
 * @param extinction V, mag per air mass
 */
export function lossTable(extinction: number): Int16Array {
  const table = new Int16Array(STEPS + 1);
  for (let i = 0; i <= STEPS; i++) {
    table[i] = roundHalfUp(1000 * lossMagOf(extinction, kastenYoung(apparentDegOf(i / STEPS))));
  }
  return table;
}

/**
 * What is left of a glow's contrast with the night, 1 at the zenith, for the same sines: air dims the glow as it dims a star,
 * and the night behind it grows brighter downwards (Krisciunas & Schaefer 1991, PASP 103, 1033, eq. 2).
 * @param extinction V, mag per air mass
 */
export function contrastTable(extinction: number): Float32Array {
  const table = new Float32Array(STEPS + 1);
  const zenithNl = nightNl(ANY_MU, 0, extinction);
  for (let i = 0; i <= STEPS; i++) {
    const altDeg = apparentDegOf(i / STEPS);
    const left = exactPow10(-0.4 * lossMagOf(extinction, kastenYoung(altDeg)));
    table[i] = (left * zenithNl) / nightNl(ANY_MU, (90 - altDeg) * DEG, extinction);
  }
  return table;
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

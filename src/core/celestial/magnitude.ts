/** Magnitudes and light (Pogson's scale: 5 mag are a factor of 100). */
import { exactLog, exactPow10 } from "./exactMath.ts";

/** How many times brighter magnitude `a` is than magnitude `b`. */
export function lightRatio(a: number, b: number): number {
  return exactPow10(0.4 * (b - a));
}

/** Light of a magnitude, in that of magnitude 0. */
export function lightOfMag(mag: number): number {
  return exactPow10(-0.4 * mag);
}

/** Magnitude of a light given in that of magnitude 0. None gives Infinity. */
export function magOfLight(light: number): number {
  return (-2.5 / Math.LN10) * exactLog(light);
}

/** Magnitude of several stars seen as one. None gives Infinity. */
export function combinedMag(mags: readonly number[]): number {
  let light = 0;
  for (const mag of mags) light += lightOfMag(mag);
  return magOfLight(light);
}

/** B-V of an average star: taken where no colour is known, and the one for which limits are stated. */
export const AVERAGE_BV = 0.7;

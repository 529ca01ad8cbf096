/** Directions and angles for property tests. */
import fc from "fast-check";
import { dirFromRadec, TWO_PI } from "#core/celestial/vector.ts";

// The same cases in every run: a test that fails does so again.
fc.configureGlobal({ seed: 20000101 });

export function anAngle(min: number, max: number): fc.Arbitrary<number> {
  return fc.double({ min, max, noNaN: true });
}

/** Even over the sphere, poles and the first meridian included. */
export const aDir = fc
  .tuple(anAngle(0, TWO_PI), anAngle(-1, 1))
  .map(([raRad, sinDec]) => dirFromRadec(raRad, Math.asin(sinDec)));

export function turnBetween(aRad: number, bRad: number): number {
  const d = Math.abs(aRad - bRad) % TWO_PI;
  return Math.min(d, TWO_PI - d);
}

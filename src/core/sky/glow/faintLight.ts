/**
 * The light of the stars too faint to be seen singly, in stars of V = 0 a square degree. Beyond V 11 the slope of the counts
 * falls evenly from what was measured there to a value assumed at V 16 (.350 a magnitude in the plane, .225 at the poles),
 * and on at the same rate until nothing is added: good to 25 % at V 14, 40 % at V 16.
 */
import { exactLog, exactPow10 } from "#core/celestial/exactMath.ts";

/** Arcseconds of a square degree's side, squared. */
const SQ_ARCSEC = 3600 * 3600;
/** Where measured counts end, and where the assumed slope stands. */
export const MEASURED_MAG = 11;
const ASSUMED_MAG = 16;
/** Beyond this a star adds no light that counts. */
const LAST_MAG = 26;
const STEP_MAG = 0.25;
/** Slope of log N at V 16 by |b|, degrees: what table of counts is continued with. */
const SLOPES_AT_16: readonly (readonly [latitudeDeg: number, slope: number])[] = [
  [0, 0.35],
  [5, 0.346],
  [10, 0.336],
  [20, 0.305],
  [30, 0.278],
  [60, 0.238],
  [90, 0.225],
];

function slopeAt16(latitudeDeg: number): number {
  const above = SLOPES_AT_16.findIndex(([edge]) => edge >= latitudeDeg);
  const [highDeg, high] = SLOPES_AT_16[above < 0 ? SLOPES_AT_16.length - 1 : above]!;
  const [lowDeg, low] = SLOPES_AT_16[Math.max(0, above - 1)]!;
  return highDeg === lowDeg ? high : low + ((latitudeDeg - lowDeg) / (highDeg - lowDeg)) * (high - low);
}

/**
 * Light of the stars fainter than V 11 for each star to V 11.
 * @param latitudeDeg |b|, 0 to 90
 * @param slope of log10 N(V) a magnitude, at V 11
 */
export function faintLightPerStar(latitudeDeg: number, slope: number): number {
  const fall = (slopeAt16(latitudeDeg) - slope) / (ASSUMED_MAG - MEASURED_MAG);
  let count = 1;
  let light = 0;
  for (let mag = MEASURED_MAG; mag < LAST_MAG; mag += STEP_MAG) {
    const here = slope + fall * (mag + STEP_MAG / 2 - MEASURED_MAG);
    if (here <= 0) break;
    const next = count * exactPow10(here * STEP_MAG);
    light += (next - count) * exactPow10(-0.4 * (mag + STEP_MAG / 2));
    count = next;
  }
  return light;
}

/** Stars of V = 0 a square degree as mag/arcsec2. */
export const muOfLight = (perSqDeg: number): number => 2.5 * ((exactLog(SQ_ARCSEC) - exactLog(perSqDeg)) / Math.LN10);
/** mag/arcsec2 as stars of V = 0 a square degree. */
export const lightOfMu = (magPerArcsec2: number): number => SQ_ARCSEC * exactPow10(-0.4 * magPerArcsec2);

/**
 * Refraction as two published fits. They take different altitudes: Saemundsson the true one (true -> apparent), Bennett the
 * apparent one (apparent -> true). Below -1 degree both stay at their value there.
 */
import { exactTan } from "./exactMath.ts";
import { DEG } from "./vector.ts";

const LOWEST_DEG = -1;

/** Air at pressure (hPa) and temperature (degrees C) against the 1010 hPa and 10 C of the fits. */
function density(pressureHPa: number, temperatureC: number): number {
  return (pressureHPa / 1010) * (283 / (273 + temperatureC));
}

function cotDeg(deg: number): number {
  return 1 / exactTan(deg * DEG);
}

/** Refraction in degrees, to add to a true altitude (Th. Saemundsson 1986, Sky & Telescope 72, 70). Never negative. */
export function saemundssonDeg(trueAltDeg: number, pressureHPa = 1010, temperatureC = 10): number {
  const h = Math.max(LOWEST_DEG, trueAltDeg);
  const arcmin = 1.02 * cotDeg(h + 10.3 / (h + 5.11));
  return (Math.max(0, arcmin) / 60) * density(pressureHPa, temperatureC);
}

/** Refraction in degrees, to take from an apparent altitude (G. G. Bennett 1982, J. Navigation 35, 255). Never negative. */
export function bennettDeg(apparentAltDeg: number, pressureHPa = 1010, temperatureC = 10): number {
  const h = Math.max(LOWEST_DEG, apparentAltDeg);
  const arcmin = cotDeg(h + 7.31 / (h + 4.4));
  return (Math.max(0, arcmin) / 60) * density(pressureHPa, temperatureC);
}

/** Units of light as the eye's models take them, all in V. Exact mathematics: limits enter records. */
import { exactExp, exactLog, exactPow10 } from "#core/celestial/exactMath.ts";

/** Illuminance of a star of V = 0, lux (Crumey 2014, MNRAS 442, 2600, sect. 1.2). */
const ZERO_MAG_LUX = 2.54e-6;
/** Magnitude per square arcsecond of 1 cd/m2 (Crumey 2014, sect. 1.2). */
const CANDELA_MAG = 12.58;

/** A positive number to any power. */
export const power = (base: number, exponent: number): number => exactExp(exponent * exactLog(base));
export const log10 = (x: number): number => exactLog(x) / Math.LN10;

/** Illuminance of a star, lux. */
export const luxOfMag = (magV: number): number => ZERO_MAG_LUX * exactPow10(-0.4 * magV);
export const magOfLux = (lux: number): number => -2.5 * log10(lux / ZERO_MAG_LUX);

/** Luminance of a sky brightness, cd/m2. */
export const candelaOfMu = (magPerArcsec2: number): number => exactPow10(0.4 * (CANDELA_MAG - magPerArcsec2));
export const muOfCandela = (candelaPerM2: number): number => CANDELA_MAG - 2.5 * log10(candelaPerM2);

/**
 * Sky brightness in nanolamberts, in which moonlight is published (Garstang 1986, PASP 98, 364, eq. 19). Its zero point lies
 * 0.7 % from that of `candelaOfMu`.
 */
export const nanolambertOfMu = (magPerArcsec2: number): number => 34.08 * exactExp(20.7233 - 0.92104 * magPerArcsec2);
export const muOfNanolambert = (nanolambert: number): number => (20.7233 - exactLog(nanolambert / 34.08)) / 0.92104;

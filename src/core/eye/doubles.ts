/** Whether a pair of stars is seen as two. */
import { exactPow10 } from "#core/celestial/exactMath.ts";
import type { DoubleMeasure, Gear } from "#core/seams/index.ts";

/** Empirical limit of equal pairs of sixth magnitude, arcsec times mm (Dawes 1867, Mem. R. Astron. Soc. 35; from memory). */
const DAWES = 116;
/** First dark ring of the diffraction disc, arcsec times mm, at 550 nm: 1.22 lambda / D (Rayleigh, textbook). */
const RAYLEIGH = 138.4;
/** How much wider an unequal pair must be, per magnitude of difference (fitted to the classes of Lewis 1914, The Observatory 37, 372, from memory). */
const INEQUALITY_DEX_PER_MAG = 0.16;
/** What an eye at the eyepiece parts at ease (common practice, no source). */
export const EYE_ARCSEC = 120;

export const dawesArcsec = (apertureMm: number): number => DAWES / apertureMm;
export const rayleighArcsec = (apertureMm: number): number => RAYLEIGH / apertureMm;

export type Split = {
  /** Least separation of such a pair, arcsec. */
  readonly neededArcsec: number;
  /** What asks for it: the aperture (with the pair's inequality), the eye at this power, or the air. */
  readonly limit: "aperture" | "eye" | "air";
  readonly isSplit: boolean;
};

/**
 * @param differenceMag of the two stars' brightness, 0 or more
 * @param blurArcsec width of a star's image by the air; pairs are parted down to about half of it (common practice, no source)
 */
export function splitOf(
  separationArcsec: number,
  differenceMag: number,
  apertureMm: number,
  magnification: number,
  blurArcsec = 0,
): Split {
  const aperture = dawesArcsec(apertureMm) * exactPow10(INEQUALITY_DEX_PER_MAG * Math.max(0, differenceMag));
  const eye = EYE_ARCSEC / magnification;
  const air = blurArcsec / 2;
  const neededArcsec = Math.max(aperture, eye, air);
  const limit = neededArcsec === aperture ? "aperture" : neededArcsec === eye ? "eye" : "air";
  return { neededArcsec, limit, isSplit: separationArcsec >= neededArcsec };
}

/**
 * Whether an instrument splits a listed pair.
 * @param blurArcsec as for `splitOf`
 */
export const splitIn = (
  { apertureMm, magnification }: Gear,
  { separationArcsec, magV }: DoubleMeasure,
  blurArcsec: number,
): Split => splitOf(separationArcsec, Math.abs(magV[1] - magV[0]), apertureMm, magnification, blurArcsec);

/** What air does to light: it swallows, blurs and shakes it. */
import { exactExp } from "#core/celestial/exactMath.ts";
import { power } from "./light.ts";

/**
 * Extinction in V, mag per air mass, of a site by its height: air and aerosol thin out with height, ozone does not (scale
 * heights from memory). Sea level 0.24, 2000 m 0.13.
 */
export const extinctionOfHeight = (heightM: number): number =>
  0.1066 * exactExp(-heightM / 8200) + 0.12 * exactExp(-heightM / 1500) + 0.016;

/** Width of a star's image by the air, arcsec: X^0.6 times that at the zenith (theory of turbulence, from memory). */
export const seeingArcsec = (zenithArcsec: number, airMass: number): number => zenithArcsec * power(airMass, 0.6);

/** Width of a star's image, arcsec: the air's and the aperture's (1.03 lambda / D at 550 nm) together. */
export function imageArcsec(airArcsec: number, apertureMm: number): number {
  const ownArcsec = ((1.03 * 550e-6) / apertureMm) * 206264.8;
  return Math.sqrt(airArcsec * airArcsec + ownArcsec * ownArcsec);
}

/** Apertures narrower than the flying shadows on the ground lose nothing by their width; light cannot go below nothing. */
const NARROW = { atZenith: 0.15, most: 0.8 } as const;

/**
 * Scintillation: relative scatter of a star's light, rms. Osborn et al. 2015 (MNRAS 452, 1707, eq. 7) for wide apertures;
 * for the eye and the narrowest 0.15 X^1.5 (fitted to common values), at most 0.8; the two pass into one another about 50 mm
 * (variances joined as resistances are, our own).
 * @param timeS over which the light is summed, s; the eye about 0.1
 * @param turbulence the empirical constant, 1.3 to 1.67 by site
 */
export function scintillation(
  apertureMm: number,
  airMass: number,
  heightM: number,
  timeS = 0.1,
  turbulence = 1.5,
): number {
  const cube = airMass * airMass * airMass;
  const narrow = Math.min(NARROW.most * NARROW.most, NARROW.atZenith * NARROW.atZenith * cube);
  const wide =
    (1e-5 * turbulence * turbulence * cube * exactExp((-2 * heightM) / 8000)) /
    (power(apertureMm / 1000, 4 / 3) * timeS);
  return Math.sqrt((narrow * wide) / (narrow + wide));
}

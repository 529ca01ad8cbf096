/** What makes the sky bright, each as a luminance in nanolamberts, to be added up. */
import { exactAcos, exactCos, exactPow10, exactSin } from "#core/celestial/exactMath.ts";
import { DEG } from "#core/celestial/vector.ts";
import { muOfNanolambert, nanolambertOfMu } from "./light.ts";

/** Zenith brightness of Paranal's moonless night in V, by which its twilight was measured. */
const PARANAL_NIGHT_MU = 21.6;
/** Twilight of the measures' bright end, and how it grows beyond: mag a degree (Patat et al. 2006). */
const BRIGHT_TWILIGHT = { depressionDeg: 5, mu: 11.84, perDeg: 1.057 } as const;
/** Brightest sky that the eye's measures reach. */
const DAY_MU = 3.8;
/** The fit's rest is let out over these depressions. */
const FADE = { fromDeg: 15, toDeg: 18 } as const;

/** Air mass of scattered light by zenith distance (Krisciunas & Schaefer 1991, PASP 103, 1033, eq. 3). */
export function scatterAirMass(zenithRad: number): number {
  const s = exactSin(Math.min(Math.PI / 2, Math.max(0, zenithRad)));
  return 1 / Math.sqrt(1 - 0.96 * s * s);
}

/** Night sky of a site at a zenith distance from its value at the zenith (Krisciunas & Schaefer 1991, eq. 2). */
export function nightNl(zenithMu: number, zenithRad: number, extinction: number): number {
  const x = scatterAirMass(zenithRad);
  return nanolambertOfMu(zenithMu) * exactPow10(-0.4 * extinction * (x - 1)) * x;
}

/** Twilight at the zenith, night included, mag/arcsec2; for Sun's zenith distances of 95 to 105 (Patat et al. 2006, A&A 455, 385, table 1, V). */
export function patatMu(sunZenithDeg: number): number {
  const x = sunZenithDeg - 95;
  return 11.84 + 1.518 * x - 0.057 * x * x;
}

/**
 * Twilight and daylight alone, zenith value, for a Sun at this altitude. The night of the measures is taken off and the rest
 * let out between 15 and 18 degrees; toward the Sun it would be 1 to 2 mag brighter, which is left out.
 */
export function twilightNl(sunAltDeg: number): number {
  const down = -sunAltDeg;
  if (down >= FADE.toDeg) return 0;
  const { depressionDeg, mu, perDeg } = BRIGHT_TWILIGHT;
  if (down < depressionDeg) return nanolambertOfMu(Math.max(DAY_MU, mu - perDeg * (depressionDeg - down)));
  const share = Math.min(1, (FADE.toDeg - down) / (FADE.toDeg - FADE.fromDeg));
  return share * Math.max(0, nanolambertOfMu(patatMu(90 + down)) - nanolambertOfMu(PARANAL_NIGHT_MU));
}

/** The Moon's V by its phase angle, degrees from full (Krisciunas & Schaefer 1991, eq. 9). */
export function moonMagV(phaseDeg: number): number {
  const a = Math.abs(phaseDeg);
  return -12.73 + 0.026 * a + 4e-9 * a * a * a * a;
}

/** Scattering by air and dust at an angle from the Moon (Krisciunas & Schaefer 1991, eq. 17 to 19, 21). */
function scatter(separationDeg: number): number {
  const c = exactCos(separationDeg * DEG);
  const near = Math.max(1, separationDeg);
  const dust = near < 10 ? 6.2e7 / (near * near) : exactPow10(6.15 - near / 40);
  return exactPow10(5.36) * (1.06 + c * c) + dust;
}

/** A Moon over a place of the sky. */
export type MoonAbove = {
  /** 0 full, 180 new. */
  readonly phaseDeg: number;
  readonly zenithDeg: number;
  readonly separationDeg: number;
};

/** Moonlight at a zenith distance (Krisciunas & Schaefer 1991, eq. 15, 20). Below the horizon it gives none. */
export function moonNl(
  { phaseDeg, zenithDeg, separationDeg }: MoonAbove,
  zenithRad: number,
  extinction: number,
): number {
  if (zenithDeg >= 90) return 0;
  const strength = exactPow10(-0.4 * (moonMagV(phaseDeg) + 12.73 + 3.84));
  const through = exactPow10(-0.4 * extinction * scatterAirMass(zenithDeg * DEG));
  const lit = 1 - exactPow10(-0.4 * extinction * scatterAirMass(zenithRad));
  return scatter(separationDeg) * strength * through * lit;
}

/** Angle of two unit vectors' dot product, degrees. */
export const degOfDot = (dot: number): number => exactAcos(Math.min(1, Math.max(-1, dot))) / DEG;

export const muOfSum = (nanolamberts: readonly number[]): number =>
  muOfNanolambert(nanolamberts.reduce((sum, each) => sum + each, 0));

/** What the vanes that carry a Newtonian's second mirror do to starlight: a bright star has four thin lines of light. */
import { exactSin } from "#core/celestial/exactMath.ts";
import type { Gear } from "#core/seams/index.ts";

/** Thickness of a vane (common practice, no source), and a wavelength of V. */
const VANE_MM = 1;
const LIGHT_MM = 550e-6;
/** Angle of the first dark place of a vane's pattern, lambda / thickness, radians: 113". */
export const VANE_RAD = LIGHT_MM / VANE_MM;
/** From here on the colours' fringes run into one another. */
const FRINGES_FROM = 0.75;

/** Refractors and telescopes with a plate before the tube have no vanes; finders are refractors. */
export const hasVanes = ({ kind, path }: Pick<Gear, "kind" | "path">): boolean =>
  kind === "eyepiece" && path === "newtonian";

/**
 * Light along a spike, 1 in its middle: (sin pi x / pi x) squared, the Fraunhofer pattern of a slit, which by Babinet's
 * principle is that of a strip of the same width (textbooks of optics); beyond its first fall the mean over the fringes.
 * @param x angle from the star over {@link VANE_RAD}
 */
export function spikeLight(x: number): number {
  const turn = Math.PI * Math.abs(x);
  if (turn > Math.PI * FRINGES_FROM) return 1 / (2 * turn * turn);
  if (turn < 1e-6) return 1;
  const wave = exactSin(turn) / turn;
  return wave * wave;
}

/**
 * Share of a star's light in the middle of a pair of spikes, within an angle along it. A strip scatters as much light as it
 * blocks (Babinet): that of one across the whole pupil, 4 w / (pi D), spread over lambda / w.
 * @param spanRad on the sky
 */
export const spikeShare = (apertureMm: number, spanRad: number): number =>
  ((4 * VANE_MM) / (Math.PI * apertureMm)) * Math.min(1, spanRad / VANE_RAD);

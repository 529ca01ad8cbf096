/** How bright comets and minor planets are, by their distances. */
import type { OrbitPlace } from "./twoBody.ts";

/** A comet: its total magnitude at 1 au from Sun and observer, and how it grows with distance. A minor planet: H and G. */
export type OrbitBrightness =
  | { readonly kind: "comet"; readonly totalMag: number; readonly slope: number }
  | { readonly kind: "minorPlanet"; readonly absoluteMag: number; readonly slope: number };

/** Phase functions of the H, G system: exp(-A tan^B of half the phase angle) (Bowell et al. 1989, in Asteroids II, 524). */
const PHASE = [
  [3.33, 0.63],
  [1.87, 1.22],
] as const;
/** A body between Sun and observer shows its night side: no light at all would be minus infinity. */
const LEAST_SHARE = 1e-9;

/** Tangent of half the angle Sun, body, observer, by the sides of the triangle. */
function tanHalfPhase({ sunAu, earthAu, observerAu }: Omit<OrbitPlace, "dir">): number {
  const cos = (sunAu * sunAu + earthAu * earthAu - observerAu * observerAu) / (2 * sunAu * earthAu);
  return Math.sqrt(Math.max(0, 1 - cos) / Math.max(LEAST_SHARE, 1 + cos));
}

/**
 * V of a body. Comets: `totalMag + 5 log(earth) + slope log(sun)`, distances in au (the usual law of comet catalogues).
 * Minor planets: the H, G system.
 */
export function magnitudeOf(law: OrbitBrightness, place: Omit<OrbitPlace, "dir">): number {
  const { sunAu, earthAu } = place;
  if (law.kind === "comet") return law.totalMag + 5 * Math.log10(earthAu) + law.slope * Math.log10(sunAu);
  const tan = tanHalfPhase(place);
  const [one, two] = PHASE.map(([a, b]) => Math.exp(-a * tan ** b));
  const share = (1 - law.slope) * one! + law.slope * two!;
  return law.absoluteMag + 5 * Math.log10(sunAu * earthAu) - 2.5 * Math.log10(Math.max(LEAST_SHARE, share));
}

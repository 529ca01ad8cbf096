/** The lit part of the Moon (Meeus 1998, Astronomical Algorithms, ch. 48). */
import { exactAtan2, exactCos, exactSin } from "./exactMath.ts";

/** Mean distance of Sun over that of the Moon. */
const SUN_OVER_MOON = 389.17;

/**
 * Sun-Moon-Earth angle, radians: 0 full, pi new; from the elongation of Moon and Sun. `sunOverMoon` is the ratio of their
 * distances: the mean one is good to 0.02 degrees.
 */
export function moonPhaseAngleRad(elongationRad: number, sunOverMoon: number = SUN_OVER_MOON): number {
  return exactAtan2(sunOverMoon * exactSin(elongationRad), 1 - sunOverMoon * exactCos(elongationRad));
}

/** Lit fraction of the disc, 0 to 1, from the phase angle. */
export function litFraction(phaseAngleRad: number): number {
  return (1 + exactCos(phaseAngleRad)) / 2;
}

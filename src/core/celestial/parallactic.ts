import type { Dir } from "#core/seams/index.ts";
import { positionAngleRad } from "./vector.ts";

/**
 * Parallactic angle in ICRS: the position angle of the zenith seen from `dir`, north (of J2000) through east, radians in
 * [0, 2 pi); small west of the meridian, near 2 pi east of it for a star culminating south. This one turns a chart in J2000
 * coordinates; the angle of date differs by degrees near the poles.
 */
export function parallacticAngleRad(dir: Dir, zenith: Dir): number {
  return positionAngleRad(dir, zenith);
}

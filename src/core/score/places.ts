/** Distances that a score may decide by: exact maths, rounded to whole tenths of an arcsecond. */

import { exactAsin } from "#core/celestial/exactMath.ts";
import { cross, DAS_RAD, dirFromMas, dot, normalise, separationRad } from "#core/celestial/vector.ts";
import type { Dir, MasDir, Route, Trail } from "#core/seams/index.ts";

/** Great-circle distance in whole das. */
export const distanceDas = (a: Dir, b: Dir): number => Math.round(separationRad(a, b) / DAS_RAD);

/** Directions of a trail's samples, in order. */
export function dirsOfTrail(trail: Trail): Dir[] {
  return Array.from(trail.raDas, (raDas, i) => dirFromMas({ raMas: raDas * 100, decMas: trail.decDas[i]! * 100 }));
}

/** Directions of a route's marks, in order. */
export const dirsOfRoute = (route: Route): Dir[] => route.marks.map(({ dir }) => dirFromMas(dir));

/** Length of a route along the great circles between its marks, whole das. */
export const lengthOfMarksDas = (marks: readonly MasDir[]): number =>
  marks.slice(1).reduce((sum, mark, i) => sum + distanceDas(dirFromMas(marks[i]!), dirFromMas(mark)), 0);

/** Distance of a point from the arc (shorter than half a circle) between two directions, whole das. */
export function distanceToArcDas(point: Dir, from: Dir, to: Dir): number {
  const toEnds = Math.min(distanceDas(point, from), distanceDas(point, to));
  const normal = cross(from, to);
  const size = Math.sqrt(dot(normal, normal));
  if (size < DAS_RAD) return toEnds;
  const beside = dot(cross(normal, from), point) >= 0 && dot(cross(to, normal), point) >= 0;
  if (!beside) return toEnds;
  const sine = Math.min(1, Math.abs(dot(normalise(normal), point)));
  return Math.round(exactAsin(sine) / DAS_RAD);
}

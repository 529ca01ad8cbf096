/** Which bright stars an eye joins: neighbours with nothing between them. */
import { exactAcos, exactCos, roundHalfUp } from "#core/celestial/exactMath.ts";
import { cross, DEG, dot } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";

export type Spot = { readonly dir: Dir; readonly milliMag: number };
/** Neighbours of each spot by its place in the list, in rising order. */
export type Neighbours = readonly (readonly number[])[];

/** Of spots nearer to one another than `apartDeg` the first alone: give the brightest first. */
export function thinned<Each extends Spot>(spots: readonly Each[], apartDeg: number): Each[] {
  const cosine = exactCos(apartDeg * DEG);
  const kept: Each[] = [];
  for (const spot of spots) if (kept.every(({ dir }) => dot(dir, spot.dir) < cosine)) kept.push(spot);
  return kept;
}

/**
 * Gabriel graph (Gabriel and Sokal 1969, Systematic Zoology 18, 259): two spots are joined where no third lies in the circle
 * that has their arc for its diameter. It is part of the Delaunay triangulation, so no two of its arcs cross.
 * @param longestDeg no longer arc is drawn
 */
export function gabrielGraph(spots: readonly Spot[], longestDeg: number): Neighbours {
  const cosine = exactCos(longestDeg * DEG);
  const near = spots.map(() => [] as number[]);
  for (let a = 0; a < spots.length; a++)
    for (let b = 0; b < spots.length; b++) if (dot(spots[a]!.dir, spots[b]!.dir) >= cosine) near[a]!.push(b);
  return spots.map((_, a) =>
    near[a]!.filter((b) => b !== a && near[a]!.every((c) => c === a || c === b || seesAcute(spots, a, b, c))),
  );
}

/** Whether the arc from a to b is seen from c under less than a right angle (of the chords). */
function seesAcute(spots: readonly Spot[], a: number, b: number, c: number): boolean {
  const [p, q, r] = [spots[a]!.dir, spots[b]!.dir, spots[c]!.dir];
  return (p[0] - r[0]) * (q[0] - r[0]) + (p[1] - r[1]) * (q[1] - r[1]) + (p[2] - r[2]) * (q[2] - r[2]) > 0;
}

/** By how many degrees the way from a over b to c turns at b: positive to the east of north, 0 where it goes straight on. */
export function turnDeg(a: Dir, b: Dir, c: Dir): number {
  const [into, out] = [cross(a, b), cross(b, c)];
  const cosine = dot(into, out) / Math.sqrt(dot(into, into) * dot(out, out));
  const angle = roundHalfUp(exactAcos(Math.max(-1, Math.min(1, cosine))) / DEG);
  return dot(into, c) > 0 ? -angle : angle;
}

/** Length of an arc in tenths of a degree. */
export function tenthsDeg(a: Dir, b: Dir): number {
  return roundHalfUp((10 * exactAcos(Math.max(-1, Math.min(1, dot(a, b))))) / DEG);
}

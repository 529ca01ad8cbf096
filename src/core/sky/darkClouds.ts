/**
 * Dark nebulae, which are seen as stars that are not there. The catalogue's own stars lack what is behind them; what is
 * invented, beyond the catalogue and in practice skies, has to be thinned.
 */
import { exactCos, exactSin, exactTan } from "#core/celestial/exactMath.ts";
import { cross, DEG, dot, normalise } from "#core/celestial/vector.ts";
import type { Dir, SkyObject } from "#core/seams/index.ts";

/** Share of the faint stars of a direction that a cloud leaves: 1 where there is none. */
export type SeeThrough = (dir: ArrayLike<number>) => number;

/**
 * What is left behind the thick of a cloud: two magnitudes of dust where counts grow as 10^(0.35 m) leave a fifth, and stars
 * before the cloud stand as they are (fitted, no source for the single cloud).
 */
const LEFT_SHARE = 0.2;
/** The cloud is thick to here, in half axes, and thins out to its listed edge. */
const THICK_TO = 0.7;

type Shaped = Pick<SkyObject, "kind" | "dir" | "majorArcmin" | "minorArcmin" | "axisDeg">;
interface Cloud {
  readonly centre: Dir;
  /** Along the axes, each as long as one over the tangent of the half axis. */
  readonly major: Dir;
  readonly minor: Dir;
}
const times = (dir: Dir, by: number): Dir => [dir[0] * by, dir[1] * by, dir[2] * by];

function cloudOf({ dir, majorArcmin, minorArcmin, axisDeg }: Shaped): Cloud {
  const east = dir[0] === 0 && dir[1] === 0 ? ([0, 1, 0] as const) : normalise([-dir[1], dir[0], 0]);
  const north = cross(dir, east);
  const [along, aside] = [exactCos(axisDeg * DEG), exactSin(axisDeg * DEG)];
  const axis: Dir = [0, 1, 2].map((i) => along * north[i as 0]! + aside * east[i as 0]!) as unknown as Dir;
  const half = (arcmin: number) => exactTan((arcmin / 120) * DEG);
  return {
    centre: dir,
    major: times(axis, 1 / half(majorArcmin)),
    minor: times(cross(dir, axis), 1 / half(minorArcmin)),
  };
}

function shareLeft({ centre, major, minor }: Cloud, dir: Dir): number {
  const depth = dot(centre, dir);
  if (depth <= 0) return 1;
  const [x, y] = [dot(major, dir) / depth, dot(minor, dir) / depth];
  const edge = (Math.sqrt(x * x + y * y) - THICK_TO) / (1 - THICK_TO);
  return LEFT_SHARE + (1 - LEFT_SHARE) * Math.min(1, Math.max(0, edge));
}

/** @param objects of any kind; what is no dark nebula covers nothing */
export function darkClouds(objects: readonly Shaped[]): SeeThrough {
  const clouds = objects.filter(({ kind }) => kind === "darkNebula").map(cloudOf);
  return (dir) => {
    let least = 1;
    for (let i = 0; i < clouds.length; i++) least = Math.min(least, shareLeft(clouds[i]!, dir as unknown as Dir));
    return least;
  };
}

/** Where the practised part of a sky lies. */
import { exactAsin, exactCos } from "#core/celestial/exactMath.ts";
import { DEG, dirFromRadec, dot, offsetDir, positionAngleRad, TWO_PI } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import type { Chance } from "./chance.ts";
import type { SkyFrame, SkyStar } from "./frame.ts";

/**
 * The zenith of Sallowfell hill (50 N, 0 E) in the evening of 29 October 2027, 20:00 UT: the practised part of every sky lies
 * about it, so that any seed can be hopped in on the evenings of the course.
 */
export const HOME: Dir = dirFromRadec(337.64 * DEG, 49.86 * DEG);
/** The anchor's distance from there: altitudes of 45 to 60 degrees. */
const NEAREST_DEG = 31;
const FURTHEST_DEG = 44;
const TRIES = 64;
/** Within this of the anchor nothing is brighter, and its figure is made. */
export const FIGURE_REACH_DEG = 14;

export type AnchorPlace = { readonly dir: Dir; readonly upRad: number };

/** Whether two directions lie within an angle whose cosine is given. */
export function within(a: Dir, b: Dir, cosine: number): boolean {
  return dot(a, b) >= cosine;
}

/**
 * The first place drawn that suits an anchor, or the one with the fewest faults: no brighter star near it, some for its
 * figure, not in the thick of the Milky Way nor at its poles, nothing that spoils the way of a degree and a half.
 */
export function drawAnchorPlace(chance: Chance, frame: SkyFrame, bright: readonly SkyStar[]): AnchorPlace {
  let best: Dir = HOME;
  let fewest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < TRIES && fewest > 0; i++) {
    const dir = offsetDir(HOME, TWO_PI * chance(), (NEAREST_DEG + (FURTHEST_DEG - NEAREST_DEG) * chance()) * DEG);
    const faults = faultsOf(dir, frame, bright);
    if (faults < fewest) [best, fewest] = [dir, faults];
  }
  return { dir: best, upRad: positionAngleRad(best, HOME) };
}

/** `bright` is sorted: counting stops at the first star that is too faint. */
function countNear(dir: Dir, degrees: number, milliMag: number, bright: readonly SkyStar[]): number {
  const cosine = exactCos(degrees * DEG);
  let count = 0;
  for (let i = 0; i < bright.length && bright[i]!.milliMag <= milliMag; i++) {
    if (within(bright[i]!.dir, dir, cosine)) count += 1;
  }
  return count;
}

function faultsOf(dir: Dir, { galacticPole }: SkyFrame, bright: readonly SkyStar[]): number {
  const near = (degrees: number, milliMag: number) => countNear(dir, degrees, milliMag, bright);
  const latitudeDeg = exactAsin(Math.min(1, Math.abs(dot(dir, galacticPole)))) / DEG;
  const dull = latitudeDeg < 8 || latitudeDeg > 40 ? 2 : 0;
  const figureless = near(FIGURE_REACH_DEG, 4300) < 4 ? 3 : 0;
  return 4 * near(FIGURE_REACH_DEG, 2600) + 2 * near(3, 4500) + near(1.8, 5800) + dull + figureless;
}

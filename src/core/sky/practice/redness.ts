/** How dust, and what is born in it, makes the stars of one place redder than those of the next. */
import { exactExp, exactLog } from "#core/celestial/exactMath.ts";
import { mixHash32 } from "#core/celestial/hash.ts";
import { DEG } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { aboveAmong, along, shareAmong } from "./between.ts";
import type { SkyFrame } from "./frame.ts";
import { createSkyNoise } from "./noise.ts";
import { PURPOSE } from "./seed.ts";

/**
 * Finder fields of Tycho-2 (Hog et al. 2000, A&A 355, L27) to V 9.5: where the logarithm of the count is 1 lower than usual for
 * the latitude, the mean B-V is redder by so much; and so much of its scatter has nothing to do with the count.
 */
const LATITUDES_DEG: readonly number[] = [0, 10, 22, 33, 45];
const BY_FULLNESS: readonly number[] = [0.1, 0.08, 0.07, 0, 0];
const BY_ITSELF: readonly number[] = [0.05, 0.05, 0.06, 0.025, 0];
const REACHES_DEG = 45;
const SPACING_DEG = 9;
/** Odds that make the mean B-V redder by one, as far as small steps go: tried on the colours as counted. */
const ODDS_FOR_ONE = 3;
const EMPTIEST = 0.05;

/**
 * By how much the odds of a blue star are less in a direction than in the mean of its latitude, as the factor of
 * {@link redderRank}; `fullness` is stars there for one star of that mean.
 */
export type Redness = (dir: Dir, absLatDeg: number, fullness: number) => number;

/** The redness of a frame's sky. */
export function createRedness(frame: SkyFrame): Redness {
  const noise = createSkyNoise(mixHash32(frame.hash, PURPOSE.dust) | 0, SPACING_DEG * DEG);
  return (dir, absLatDeg, fullness) => {
    if (absLatDeg >= REACHES_DEG) return 1;
    const own = noise(dir);
    const above = aboveAmong(LATITUDES_DEG, absLatDeg);
    const share = shareAmong(LATITUDES_DEG, above, absLatDeg);
    const byFullness = along(BY_FULLNESS, above, share) * exactLog(Math.max(EMPTIEST, fullness));
    return exactExp(-ODDS_FOR_ONE * (along(BY_ITSELF, above, share) * own - byFullness));
  };
}

/** The rank in [0, 1] of a colour among all, from blue to red, where the odds of blue ones are changed: no gap fills. */
export function redderRank(rank: number, redness: number): number {
  return rank / (rank + (1 - rank) * redness);
}

/** The stars of an open cluster that stands anywhere in a practice sky. */
import { exactLog, roundHalfUp } from "#core/celestial/exactMath.ts";
import { combinedMag } from "#core/celestial/magnitude.ts";
import { DEG, offsetDir, TWO_PI } from "#core/celestial/vector.ts";
import { type Chance, createChance } from "./chance.ts";
import type { SkyStar } from "./frame.ts";
import { FAINTEST_PRACTICE_MAG } from "./layers.ts";
import { planted } from "./plantings.ts";
import type { WildObject } from "./population.ts";
import { PURPOSE } from "./seed.ts";

const FEWEST = 15;
const MOST = 60;
/** Counts of members rise with their magnitude as 10^(0.3 m), over five magnitudes (common practice, no source). */
const RISE = 0.3;
/** What 10^(0.3 * 5) - 1 is. */
const RISE_OVER_SPAN = 30.6228;

/** The members that a practice sky is deep enough for; with those that it is not their light makes the cluster's V. */
export function membersOf(hash: number, rank: number, cluster: WildObject): SkyStar[] {
  const chance = createChance(hash, PURPOSE.members, rank);
  const count = FEWEST + Math.floor((MOST - FEWEST + 1) * chance());
  const below = Array.from({ length: count }, () => magBelowBrightest(chance()));
  const brightest = cluster.magV - combinedMag(below);
  return below.flatMap((below) => {
    const dir = offsetDir(cluster.dir, TWO_PI * chance(), distanceRad(chance, cluster.majorArcmin));
    const colourBV = chance() < 0.15 ? 0.9 + 0.7 * chance() : -0.1 + 0.6 * chance();
    const milliMag = roundHalfUp(1000 * (brightest + below));
    return milliMag <= 1000 * FAINTEST_PRACTICE_MAG ? [planted(dir, milliMag, colourBV)] : [];
  });
}

/** The inverse of the counts to a magnitude. */
const magBelowBrightest = (draw: number) => exactLog(1 + RISE_OVER_SPAN * draw) / (RISE * Math.LN10);

/** Crowded to the middle: a power between an even disc's half and one, which would be spread evenly in distance. */
function distanceRad(chance: Chance, majorArcmin: number): number {
  const draw = chance();
  return (Math.sqrt(draw * Math.sqrt(draw)) * majorArcmin * DEG) / 120;
}

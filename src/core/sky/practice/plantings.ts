/** What is planted about the anchor: a cluster with a pair half way to it, a galaxy with a way of stars. */
import { roundHalfUp } from "#core/celestial/exactMath.ts";
import { combinedMag } from "#core/celestial/magnitude.ts";
import { DEG, offsetDir, separationRad, TWO_PI } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { type Chance, drawFrom } from "./chance.ts";
import type { SkyStar } from "./frame.ts";

const ARCMIN = DEG / 60;

export const CLUSTER_AWAY_DEG = 1.5;
export const CLUSTER_WIDE_ARCMIN = 20;
const PAIR_APART_ARCMIN = 12;
export const GALAXY_AWAY_DEG = 4;

const MEMBERS = { fewest: 14, most: 22 } as const;
const MEMBER_BRIGHTEST = 6800;
const MEMBER_SPAN = 3700;
/** Nearer than this two members would melt into one in binoculars. */
const MEMBERS_APART_RAD = 1 * ARCMIN;

export const planted = (dir: Dir, milliMag: number, colourBV: number): SkyStar => ({
  dir: [Math.fround(dir[0]), Math.fround(dir[1]), Math.fround(dir[2])],
  milliMag,
  colourBV,
});

export type ClusterPlanting = {
  readonly centre: Dir;
  readonly members: readonly SkyStar[];
  /** V of all members together, to 0.1. */
  readonly magV: number;
  /** Two stars alike, side by side across the way; its middle is the mark. */
  readonly pair: readonly [SkyStar, SkyStar];
  readonly pairMiddle: Dir;
};

/** The cluster 1.5 degrees from the anchor at a position angle, and the pair half way. */
export function plantCluster(chance: Chance, anchor: Dir, angleRad: number): ClusterPlanting {
  const centre = offsetDir(anchor, angleRad, CLUSTER_AWAY_DEG * DEG);
  const pairMiddle = offsetDir(anchor, angleRad + (chance() - 0.5) * 0.16, (0.72 + 0.06 * chance()) * DEG);
  const across = angleRad + TWO_PI / 4 + (chance() - 0.5) * 0.6;
  const half = (PAIR_APART_ARCMIN / 2) * ARCMIN;
  const pairColour = 0.1 + 0.3 * chance();
  const pairMag = 6420 + roundHalfUp(40 * chance());
  const members = drawMembers(chance, centre);
  return {
    centre,
    members,
    magV: roundHalfUp(10 * combinedMag(members.map(({ milliMag }) => milliMag / 1000))) / 10,
    pair: [
      planted(offsetDir(pairMiddle, across, half), pairMag, pairColour),
      planted(offsetDir(pairMiddle, across + TWO_PI / 2, half), pairMag + 30, pairColour),
    ],
    pairMiddle,
  };
}

/** From the brightest down ever more, crowded to the middle, blue but for a few. */
function drawMembers(chance: Chance, centre: Dir): SkyStar[] {
  const count = MEMBERS.fewest + Math.floor((MEMBERS.most - MEMBERS.fewest + 1) * chance());
  const members: SkyStar[] = [];
  for (let i = 0; i < count; i++) {
    const rank = (i + chance() * 0.6) / count;
    const milliMag = MEMBER_BRIGHTEST + roundHalfUp(MEMBER_SPAN * rank);
    const colourBV = chance() < 0.12 ? 1 + 0.5 * chance() : -0.1 + 0.4 * chance();
    members.push(planted(freePlace(chance, centre, members), milliMag, colourBV));
  }
  return members;
}

function freePlace(chance: Chance, centre: Dir, others: readonly SkyStar[]): Dir {
  for (;;) {
    // A power above the half of an even disc crowds the middle.
    const draw = chance();
    const radius = (CLUSTER_WIDE_ARCMIN / 2) * ARCMIN * draw * Math.sqrt(Math.sqrt(draw + 0.02));
    const dir = offsetDir(centre, TWO_PI * chance(), Math.min(radius, (CLUSTER_WIDE_ARCMIN / 2) * ARCMIN));
    if (others.every((other) => separationRad(other.dir, dir) > MEMBERS_APART_RAD)) return dir;
  }
}

export type GalaxyPlanting = {
  readonly centre: Dir;
  readonly magV: number;
  readonly majorArcmin: number;
  readonly minorArcmin: number;
  readonly axisDeg: number;
  /** The star of the first step, then the three of the little triangle of the second, brightest first. */
  readonly lone: SkyStar;
  readonly triangle: readonly [SkyStar, SkyStar, SkyStar];
  readonly triangleMiddle: Dir;
};

/** The galaxy four degrees from the anchor, with a star of V 5 and a small triangle on the way, a step of under 2 degrees each. */
export function plantGalaxy(chance: Chance, anchor: Dir, angleRad: number): GalaxyPlanting {
  const side = drawFrom(chance, [-1, 1] as const);
  const lone = offsetDir(anchor, angleRad + side * (0.15 + 0.15 * chance()), (1.6 + 0.3 * chance()) * DEG);
  const triangleMiddle = offsetDir(anchor, angleRad - side * 0.08, (3 + 0.2 * chance()) * DEG);
  const turn = TWO_PI * chance();
  const corner = (thirds: number, arcmin: number) =>
    offsetDir(triangleMiddle, turn + (TWO_PI * thirds) / 3, arcmin * ARCMIN);
  const majorArcmin = 8 + roundHalfUp(2 * chance());
  return {
    centre: offsetDir(anchor, angleRad, GALAXY_AWAY_DEG * DEG),
    magV: roundHalfUp(10 * (8.4 + 0.3 * chance())) / 10,
    majorArcmin,
    minorArcmin: roundHalfUp(majorArcmin * (4 + 2 * chance())) / 10,
    axisDeg: Math.floor(180 * chance()),
    lone: planted(lone, 4900 + roundHalfUp(400 * chance()), 0.9 + 0.5 * chance()),
    triangle: [
      planted(corner(0, 9), 6100 + roundHalfUp(200 * chance()), 0.3),
      planted(corner(1, 6), 7000 + roundHalfUp(200 * chance()), 0.6),
      planted(corner(2, 7), 7300 + roundHalfUp(200 * chance()), 0.1),
    ],
    triangleMiddle,
  };
}

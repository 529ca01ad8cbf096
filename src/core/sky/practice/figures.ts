/** Invented figures: a few bright stars joined by the shortest tree, whose branches never cross. */
import { exactCos } from "#core/celestial/exactMath.ts";
import { DEG, dot } from "#core/celestial/vector.ts";
import { FIGURE_REACH_DEG, HOME, within } from "./anchorPlace.ts";
import type { SkyStar } from "./frame.ts";

const STARS_OF_A_FIGURE = 6;
const FAINTEST_OF_A_FIGURE = 4600;
/** Leads of two figures stand so far apart that no branch of one reaches the other. */
const LEADS_APART_DEG = 2 * FIGURE_REACH_DEG + 4;
const LEADS_FROM_HOME_DEG = 70;

export type FigurePlan = {
  /** Brightest first: the lead. */
  readonly stars: readonly SkyStar[];
  /** Pairs of places in `stars`. */
  readonly lines: readonly (readonly [number, number])[];
};

/**
 * The figure of each lead: the given one, then the brightest others that stand apart and are up on the evenings of the
 * course.
 * @param bright every star that may belong to a figure, brightest first
 */
export function drawFigures(anchor: SkyStar, bright: readonly SkyStar[], count: number): FigurePlan[] {
  const apart = exactCos(LEADS_APART_DEG * DEG);
  const reach = exactCos(FIGURE_REACH_DEG * DEG);
  const home = exactCos(LEADS_FROM_HOME_DEG * DEG);
  const leads = [anchor];
  for (let rank = 0; rank < bright.length && leads.length < count; rank++) {
    const { dir } = bright[rank]!;
    const free = leads.every((lead) => !within(lead.dir, dir, apart));
    const outshone = bright.slice(0, rank).some((brighter) => within(brighter.dir, dir, reach));
    if (free && !outshone && within(dir, HOME, home)) leads.push(bright[rank]!);
  }
  return leads.map((lead) => figureOf(lead, bright));
}

function figureOf(lead: SkyStar, bright: readonly SkyStar[]): FigurePlan {
  const reach = exactCos(FIGURE_REACH_DEG * DEG);
  const others = bright.filter(
    (star) =>
      star.milliMag <= FAINTEST_OF_A_FIGURE && star.milliMag > lead.milliMag && within(star.dir, lead.dir, reach),
  );
  const stars = [lead, ...others.slice(0, STARS_OF_A_FIGURE - 1)];
  return { stars, lines: shortestTree(stars) };
}

/** Prim's shortest spanning tree. Its branches never cross: of two that did, one could be had shorter. */
function shortestTree(stars: readonly SkyStar[]): [number, number][] {
  const lines: [number, number][] = [];
  const reached = [0];
  while (reached.length < stars.length) {
    let [from, to, nearest] = [0, 0, -2];
    for (const a of reached) {
      stars.forEach((star, b) => {
        const facing = dot(stars[a]!.dir, star.dir);
        if (!reached.includes(b) && facing > nearest) [from, to, nearest] = [a, b, facing];
      });
    }
    lines.push([from, to]);
    reached.push(to);
  }
  return lines;
}

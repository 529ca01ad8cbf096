/** Invented constellations: which bright stars of a sky are joined, and what each figure is called. */
import { exactCos } from "#core/celestial/exactMath.ts";
import { DEG, dot, normalise } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import table from "#shared/sallowfell.json" with { type: "json" };
import { gabrielGraph, type Spot, thinned } from "./gabriel.ts";
import { type Shape, type ShapeKind, shapesOf } from "./shapes.ts";

/** Stars nearer to one another than this are one corner of a figure, and fainter ones than this are in none. */
const APART_DEG = 1.7;
const FAINTEST_MILLIMAG = 4250;
const LONGEST_LINE_DEG = 12;
/** A star as bright as this gets a figure where one can be made. */
const FAINTEST_LEAD_MILLIMAG = 3600;
/** Middles of two figures are further apart than this, so that no figure crowds another's name. */
const MIDDLES_APART_DEG = 13;

export type Constellation<Star extends Spot> = {
  readonly abbr: string;
  readonly name: string;
  readonly kind: ShapeKind;
  /** Brightest first. */
  readonly stars: readonly Star[];
  /** Pairs of places in `stars`. */
  readonly lines: readonly (readonly [number, number])[];
  readonly middle: Dir;
};

/**
 * The figures of a list of bright stars. From the brightest star down each gets the shape that shows best of those that are
 * still free; lines never cross, and no star is in two figures.
 * @param stars in any order
 * @param nameOrder in which order the names of a shape are given out: every number from 0 to 15 once
 * @param first a star that gets its figure before all others, of no brighter stars than itself
 */
export function drawConstellations<Star extends Spot>(
  stars: readonly Star[],
  nameOrder: readonly number[],
  first?: Star,
): Constellation<Star>[] {
  const bright = stars.filter((star) => star.milliMag <= FAINTEST_MILLIMAG && star !== first).sort(byLight);
  const spots = thinned(first ? [first, ...bright] : bright, APART_DEG);
  const shapes = shapesAbout(spots);
  const names = namesInOrder(nameOrder);
  const taken = new Set<number>();
  const found: Constellation<Star>[] = [];
  const apart = exactCos(MIDDLES_APART_DEG * DEG);
  spots.forEach((lead, place) => {
    if (lead.milliMag > FAINTEST_LEAD_MILLIMAG) return;
    for (const shape of shapes[place]!) {
      if (shape.spots.some((i) => taken.has(i)) || names[shape.kind].length === 0) continue;
      if (lead === first && shape.spots.some((i) => spots[i]!.milliMag < lead.milliMag)) continue;
      const middle = middleOf(shape.spots.map((i) => spots[i]!));
      if (found.some((other) => dot(other.middle, middle) > apart)) continue;
      const [abbr, name] = names[shape.kind].shift()!;
      for (const i of shape.spots) taken.add(i);
      found.push({ abbr, name, kind: shape.kind, middle, ...starsAndLines(shape, spots) });
      return;
    }
  });
  return found;
}

/** One line about the figure of an abbreviation, or undefined. */
export function loreOf(abbr: string): string | undefined {
  for (const rows of Object.values(table.figures)) for (const [each, , lore] of rows) if (each === abbr) return lore;
  return undefined;
}

/** The mean direction of some stars. */
function middleOf(stars: readonly { readonly dir: Dir }[]): Dir {
  const sum = (axis: 0 | 1 | 2) => stars.reduce((total, { dir }) => total + dir[axis], 0);
  return normalise([sum(0), sum(1), sum(2)]);
}

const byLight = (a: Spot, b: Spot) =>
  a.milliMag - b.milliMag || a.dir[0] - b.dir[0] || a.dir[1] - b.dir[1] || a.dir[2] - b.dir[2];

/** The shapes that each spot is in, best first. */
function shapesAbout(spots: readonly Spot[]): readonly (readonly Shape[])[] {
  const about: Shape[][] = spots.map(() => []);
  for (const shape of shapesOf(spots, gabrielGraph(spots, LONGEST_LINE_DEG)))
    for (const spot of shape.spots) about[spot]!.push(shape);
  // Sorting keeps the order of making where two are as good.
  for (const list of about) list.sort((a, b) => b.score - a.score);
  return about;
}

type Names = Record<ShapeKind, [abbr: string, name: string][]>;

function namesInOrder(order: readonly number[]): Names {
  const inOrder = (kind: ShapeKind) =>
    order.flatMap((i): [string, string][] => {
      const row = table.figures[kind][i];
      return row ? [[row[0]!, row[1]!]] : [];
    });
  return {
    line: inOrder("line"),
    hook: inOrder("hook"),
    cup: inOrder("cup"),
    zigzag: inOrder("zigzag"),
    triangle: inOrder("triangle"),
    kite: inOrder("kite"),
    box: inOrder("box"),
    ring: inOrder("ring"),
    fork: inOrder("fork"),
    cross: inOrder("cross"),
  };
}

function starsAndLines<Star extends Spot>(shape: Shape, spots: readonly Star[]) {
  const order = [...shape.spots].sort((a, b) => spots[a]!.milliMag - spots[b]!.milliMag || a - b);
  return {
    stars: order.map((i) => spots[i]!),
    lines: shape.lines.map(([a, b]) => [order.indexOf(a), order.indexOf(b)] as const),
  };
}

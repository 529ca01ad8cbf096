/** The part of a way that cost most: where the pointing left what the hop needed, how far it went, where it was regained. */
import { slerpDir } from "#core/celestial/vector.ts";
import type { AttemptRecord, Dir, Route } from "#core/seams/index.ts";
import { corridorOf, excessDas, isInside, lengthsIn } from "./corridor.ts";
import { type Step, scoredPath } from "./path.ts";
import { dirsOfRoute, distanceDas, distanceToArcDas } from "./places.ts";

export interface DearPart {
  /** Where it began, and the furthest place that it went to. */
  readonly from: Dir;
  readonly furthest: Dir;
  /** Lengths along the way from its start, das: where the part begins, goes furthest, ends; and the whole way. */
  readonly fromDas: number;
  readonly furthestDas: number;
  readonly toDas: number;
  readonly wholeDas: number;
  /** Whether it left the corridor; otherwise it turned back within. */
  readonly outside: boolean;
}

/** The way is looked at in so many equal parts: fine enough to point at, bounded whatever the record holds. */
const PARTS = 160;
/** A stretch is dear by what it has beyond this many tenths of what was needed between its ends. */
const FREE_TENTHS = 13;

/** `wayDas`: how far along the shortest way the nearest place of that way lies. */
type Point = { readonly dir: Dir; readonly alongDas: number; readonly wayDas: number };

/** How far along a way its place nearest to a direction lies, das. */
function alongWay(way: readonly Dir[], place: Dir): number {
  let [startDas, nearestDas, along] = [0, Number.MAX_SAFE_INTEGER, 0];
  for (let i = 1; i < way.length; i++) {
    const [from, to] = [way[i - 1]!, way[i]!];
    const legDas = distanceDas(from, to);
    const offDas = distanceToArcDas(place, from, to);
    if (offDas < nearestDas) {
      const fromDas = distanceDas(from, place);
      const onLegDas = Math.sqrt(Math.max(0, fromDas * fromDas - offDas * offDas));
      [nearestDas, along] = [offDas, startDas + Math.min(legDas, onLegDas)];
    }
    startDas += legDas;
  }
  return along;
}

/** Places along the way at even lengths. Where the tube was set elsewhere at a stroke, both places stand at one length. */
function pointsAlong(steps: readonly Step[], way: readonly Dir[]): Point[] {
  const wholeDas = steps.reduce((sum, { lengthDas, share }) => sum + lengthDas * share, 0);
  const eachDas = Math.max(1, wholeDas / PARTS);
  const points: Point[] = [];
  const add = (dir: Dir, atDas: number) =>
    points.push({ dir, alongDas: Math.round(atDas), wayDas: alongWay(way, dir) });
  let alongDas = 0;
  let dueDas = 0;
  for (const { from, to, lengthDas, share } of steps) {
    const countedDas = lengthDas * share;
    for (; countedDas > 0 && dueDas <= alongDas + countedDas; dueDas += eachDas)
      add(slerpDir(from, to, (dueDas - alongDas) / countedDas), dueDas);
    alongDas += countedDas;
  }
  const last = steps.at(-1);
  if (last) add(last.to, alongDas);
  return points;
}

/** What was needed from one place to another: the straight line, or the part of the way between them, which may bend. */
const neededDas = (a: Point, b: Point): number => Math.max(distanceDas(a.dir, b.dir), Math.abs(b.wayDas - a.wayDas));

/** The stretch with the greatest length beyond 1.3 of what was needed between its ends; ties: the earlier, shorter one. */
function dearest(points: readonly Point[]): { from: number; to: number } | null {
  let best: { from: number; to: number } | null = null;
  let mostDas = 0;
  for (let from = 0; from < points.length; from++)
    for (let to = from + 1; to < points.length; to++) {
      const lengthDas = points[to]!.alongDas - points[from]!.alongDas;
      if (lengthDas <= mostDas) continue;
      const beyondDas = lengthDas - (FREE_TENTHS * neededDas(points[from]!, points[to]!)) / 10;
      if (beyondDas > mostDas) [best, mostDas] = [{ from, to }, beyondDas];
    }
  return best;
}

/** Index of the point of a stretch that lies furthest from the line between its ends. */
function furthestOf(points: readonly Point[], from: number, to: number): number {
  const [start, end] = [points[from]!.dir, points[to]!.dir];
  let furthest = from;
  let mostDas = -1;
  for (let i = from; i <= to; i++) {
    const offDas = distanceToArcDas(points[i]!.dir, start, end);
    if (offDas > mostDas) [furthest, mostDas] = [i, offDas];
  }
  return furthest;
}

const shortest = (ways: readonly Route[]): Route =>
  ways.reduce((best, one) => (one.lengthDas < best.lengthDas ? one : best));

/** The dearest part of an attempt's way; null where directness lost nothing by its length. */
export function dearPart(record: AttemptRecord): DearPart | null {
  const steps = scoredPath(record);
  const corridor = corridorOf(record.compiled);
  if (excessDas(corridor, lengthsIn(corridor, steps)) === 0) return null;
  const points = pointsAlong(steps, dirsOfRoute(shortest(record.compiled.ways)));
  const stretch = dearest(points);
  if (!stretch) return null;
  const furthest = points[furthestOf(points, stretch.from, stretch.to)]!;
  return {
    from: points[stretch.from]!.dir,
    furthest: furthest.dir,
    fromDas: points[stretch.from]!.alongDas,
    furthestDas: furthest.alongDas,
    toDas: points[stretch.to]!.alongDas,
    wholeDas: points.at(-1)!.alongDas,
    outside: !isInside(corridor, furthest.dir),
  };
}

/** A chart as marks: what is printed, in px from the page's centre (x right, y down), faint stars first. */
import type { Dir, ObjectKind, SkyObject, StarBlock } from "#core/seams/index.ts";
import type { FigureSegment, NamedStar } from "#core/sky/names/types.ts";
import { frameMarks } from "./frame.ts";
import { gridMarks } from "./grid.ts";
import { type LabelWish, placedLabels } from "./labels.ts";
import { type ChartPage, type PagePoint, type PageProjection, projectionOf, reachRad } from "./page.ts";
import type { ChartMark, LineStyle, Sign, TextStyle } from "./types.ts";

export interface ChartContent {
  readonly blocks: readonly StarBlock[];
  readonly names: readonly NamedStar[];
  readonly segments: readonly FigureSegment[];
  readonly figures: readonly { readonly name: string; readonly centre: Dir }[];
  readonly objects: readonly SkyObject[];
  readonly anchor: Dir | null;
  /** The target's sign stands where the object is; `kind` chooses it. */
  readonly target: { readonly dir: Dir; readonly object: SkyObject | null } | null;
  /** The ways to print, each from mark to mark; only where the lesson shows them. */
  readonly ways: readonly (readonly Dir[])[];
  readonly words: { readonly anchor: string; readonly target: string };
}

/** Radius of a star's dot for a chart that ends at a limit: linear in magnitude, in steps of half a magnitude, px. */
export function dotRadiusPx(magV: number, limitMag: number): number {
  const half = Math.round(magV * 2) / 2;
  return Math.max(0.6, 0.72 + 0.62 * (limitMag - half));
}

const CLEAR_OF_STAR_PX = 8;

function dotsOf(page: ChartPage, content: ChartContent, projection: PageProjection): ChartMark[] {
  const dots: (ChartMark & { kind: "dot" })[] = [];
  const point: PagePoint = { x: 0, y: 0 };
  const cosReach = Math.cos(reachRad(page));
  const [cx, cy, cz] = page.centre;
  for (const { dirs, milliMag, count, invented } of content.blocks) {
    if (invented) continue;
    for (let i = 0; i < count && milliMag[i]! <= page.limitMag * 1000; i++) {
      const [x, y, z] = [dirs[3 * i]!, dirs[3 * i + 1]!, dirs[3 * i + 2]!];
      if (x * cx + y * cy + z * cz < cosReach || !projection.project([x, y, z], point)) continue;
      const magV = milliMag[i]! / 1000;
      const r = dotRadiusPx(magV, page.limitMag);
      if (projection.holds(point, r)) dots.push({ kind: "dot", x: point.x, y: point.y, r, magV });
    }
  }
  return dots.sort((a, b) => b.magV - a.magV);
}

/** A line from star to star that stops short of both; null where it lies off the page. */
function shortLine(
  from: Dir,
  to: Dir,
  style: LineStyle,
  projection: PageProjection,
  shortPx: number,
): ChartMark | null {
  const [a, b] = [
    { x: 0, y: 0 },
    { x: 0, y: 0 },
  ];
  if (!projection.project(from, a) || !projection.project(to, b)) return null;
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  if (length < 2 * shortPx + 2) return null;
  const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length];
  const ends = [
    { x: a.x + ux * shortPx, y: a.y + uy * shortPx },
    { x: b.x - ux * shortPx, y: b.y - uy * shortPx },
  ] as const;
  const clipped = clippedTo(projection, ends[0], ends[1]);
  return clipped && { kind: "line", style, points: clipped };
}

/** The part of a line within the frame, by halving: lines are few. */
export function clippedTo(projection: PageProjection, a: PagePoint, b: PagePoint): number[] | null {
  const at = (t: number) => ({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t });
  const inside = Array.from({ length: 65 }, (_, i) => i / 64).filter((t) => projection.holds(at(t)));
  const [first, last] = [inside[0], inside.at(-1)];
  if (first === undefined || last === undefined || last <= first) return null;
  const [from, to] = [at(first), at(last)];
  return [from.x, from.y, to.x, to.y];
}

const signOf = (sign: Sign, dir: Dir, projection: PageProjection, r: number, object: SkyObject | null): ChartMark[] => {
  const point = { x: 0, y: 0 };
  if (!projection.project(dir, point) || !projection.holds(point, r)) return [];
  const axisRad = object ? (object.axisDeg * Math.PI) / 180 : 0;
  const flat = object && object.majorArcmin > 0 ? Math.max(0.3, object.minorArcmin / object.majorArcmin) : 1;
  return [{ kind: "sign", sign, x: point.x, y: point.y, r, axisRad, flat }];
};

const RADIUS_OF_SIGN: Readonly<Record<ObjectKind, number>> = {
  openCluster: 9,
  globularCluster: 8,
  planetaryNebula: 5.5,
  brightNebula: 7,
  darkNebula: 7,
  galaxy: 8,
  doubleStar: 5,
  asterism: 9,
};

function signsOf(content: ChartContent, projection: PageProjection): ChartMark[] {
  const { anchor, target, objects } = content;
  const others = objects
    .filter(({ id }) => id !== target?.object?.id)
    .flatMap((object) => signOf(object.kind, object.dir, projection, RADIUS_OF_SIGN[object.kind], object));
  const kind = target?.object?.kind ?? "target";
  const radius = target?.object ? RADIUS_OF_SIGN[target.object.kind] : 9.5;
  return [
    ...others,
    ...(anchor ? signOf("anchor", anchor, projection, 9.5, null) : []),
    ...(target ? signOf(kind, target.dir, projection, radius, target.object) : []),
  ];
}

/** Names wished for, the most wanted first: what the hop needs, then bright stars, then figures. */
function wishesOf(page: ChartPage, content: ChartContent, projection: PageProjection): LabelWish[] {
  const point = { x: 0, y: 0 };
  const at = (dir: Dir, r: number, style: TextStyle, text: string): LabelWish[] =>
    text && projection.project(dir, point) && projection.holds(point, 12)
      ? [{ x: point.x, y: point.y, r, style, text }]
      : [];
  const { anchor, target, words } = content;
  const stars = content.names.filter(({ magV }) => magV <= page.limitMag).sort((a, b) => a.magV - b.magV);
  return [
    ...(anchor ? at(anchor, 10, "word", words.anchor) : []),
    ...(target ? at(target.dir, 11, "word", words.target) : []),
    ...stars.flatMap(({ dir, magV, proper, label }) => {
      const r = dotRadiusPx(magV, page.limitMag);
      if (proper && magV < 2.6) return at(dir, r, "starName", proper);
      return at(dir, r, /^\d/.test(label) ? "number" : "greek", label);
    }),
    ...content.figures.flatMap(({ centre, name }) => at(centre, 0, "figureName", name.toUpperCase())),
  ];
}

/**
 * All that is printed on a page, in drawing order.
 * @param page paper, scale and limit
 * @param content stars come as blocks; invented ones are never printed
 */
export function chartMarks(page: ChartPage, content: ChartContent): ChartMark[] {
  const projection = projectionOf(page);
  const grid = gridMarks(page, projection);
  const lines = content.segments
    .map(({ from, to }) => shortLine(from, to, "figure", projection, CLEAR_OF_STAR_PX))
    .filter((mark) => mark !== null);
  const ways = content.ways.flatMap((way) =>
    way.slice(1).map((dir, i) => shortLine(way[i]!, dir, "way", projection, 11)),
  );
  const dots = dotsOf(page, content, projection);
  const signs = signsOf(content, projection);
  const labels = placedLabels(page, wishesOf(page, content, projection), [...dots, ...signs, ...grid]);
  return [
    ...frameMarks(page),
    ...grid,
    ...lines,
    ...ways.filter((mark) => mark !== null),
    ...dots,
    ...signs,
    ...labels,
  ];
}

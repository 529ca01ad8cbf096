/** A chart as marks: what is printed, in px from the page's centre (x right, y down), faint stars first. */
import type { Dir, ObjectKind, SkyObject, StarBlock } from "#core/seams/index.ts";
import type { FigureSegment, NamedStar } from "#core/sky/names/types.ts";
import { clippedToFrame } from "./clip.ts";
import { frameMarks } from "./frame.ts";
import { gridMarks } from "./grid.ts";
import { type LabelWish, roughWidth } from "./labels.ts";
import { layLetters } from "./letters.ts";
import { type ChartPage, type PagePoint, type PageProjection, projectionOf, reachRad } from "./page.ts";
import { PLAIN_VIEW } from "./sheetView.ts";
import type { ChartMark, DotMark, LineMark, LineStyle, SignMark, TextMark, TextStyle } from "./types.ts";

export interface ChartContent {
  readonly blocks: readonly StarBlock[];
  readonly names: readonly NamedStar[];
  readonly segments: readonly FigureSegment[];
  readonly figures: readonly { readonly abbr?: string; readonly name: string; readonly centre: Dir }[];
  /** Small figures that a hop steers by, each from star to star. */
  readonly asterisms?: readonly (readonly Dir[])[];
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
const ANCHOR_RADIUS_PX = 9.5;
/** Within some 10 arcseconds: the anchor by its name. */
const COS_SAME_STAR = 1 - 1.2e-9;

function dotsOf(page: ChartPage, content: ChartContent, projection: PageProjection): DotMark[] {
  const dots: DotMark[] = [];
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
  page: ChartPage,
  from: Dir,
  to: Dir,
  style: LineStyle,
  projection: PageProjection,
  shortPx: number,
): LineMark | null {
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
  const clipped = clippedToFrame(page, ends[0], ends[1]);
  return clipped && { kind: "line", style, points: clipped };
}

function signOf(
  what: Pick<SignMark, "sign" | "role" | "r">,
  dir: Dir,
  projection: PageProjection,
  object: SkyObject | null,
): SignMark[] {
  const point = { x: 0, y: 0 };
  if (!projection.project(dir, point) || !projection.holds(point, what.r)) return [];
  const axisRad = object ? (object.axisDeg * Math.PI) / 180 : 0;
  const flat = object && object.majorArcmin > 0 ? Math.max(0.3, object.minorArcmin / object.majorArcmin) : 1;
  return [{ kind: "sign", ...what, x: point.x, y: point.y, axisRad, flat }];
}

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

function signsOf(content: ChartContent, projection: PageProjection): SignMark[] {
  const { anchor, target, objects } = content;
  const others = objects
    .filter(({ id }) => id !== target?.object?.id)
    .flatMap((object) => signOf({ sign: object.kind, r: RADIUS_OF_SIGN[object.kind] }, object.dir, projection, object));
  const kind = target?.object?.kind;
  const targetSign = {
    sign: kind ?? ("target" as const),
    role: "target" as const,
    r: kind ? RADIUS_OF_SIGN[kind] : 9.5,
  };
  return [
    ...others,
    ...(anchor ? signOf({ sign: "anchor", role: "anchor", r: ANCHOR_RADIUS_PX }, anchor, projection, null) : []),
    ...(target ? signOf(targetSign, target.dir, projection, target.object) : []),
  ];
}

/** Where a figure's name stands: at its middle, or, where that is off the page, amid what the page shows of it. */
function nameDir(page: ChartPage, content: ChartContent, projection: PageProjection, i: number): PagePoint | null {
  const { abbr, centre } = content.figures[i]!;
  const point: PagePoint = { x: 0, y: 0 };
  const onPage = (dir: Dir) => separationCos(dir, page.centre) > 0.5 && projection.project(dir, point);
  if (onPage(centre) && projection.holds(point, 24)) return point;
  const shown = content.segments.filter(({ figure }) => figure === abbr).flatMap(({ from, to }) => [from, to]);
  const places = shown
    .filter((dir) => onPage(dir) && projection.holds(point))
    .map((dir) => {
      projection.project(dir, point);
      return { ...point };
    });
  if (places.length === 0) return null;
  const mean = (axis: "x" | "y") => places.reduce((sum, place) => sum + place[axis], 0) / places.length;
  // Off the star itself, towards the middle of the page.
  return { x: mean("x") * 0.8, y: mean("y") * 0.8 - 14 };
}

const separationCos = (a: Dir, b: Dir) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Names wished for, the most wanted first: what the hop needs, then bright stars, then figures. */
function wishesOf(page: ChartPage, content: ChartContent, projection: PageProjection): LabelWish[] {
  const point = { x: 0, y: 0 };
  const at = (dir: Dir, r: number, style: TextStyle, text: string): LabelWish[] =>
    text && projection.project(dir, point) && projection.holds(point, 12)
      ? [{ x: point.x, y: point.y, r, style, text }]
      : [];
  const { anchor, target, words } = content;
  const stars = content.names.filter(({ magV }) => magV <= page.limitMag).sort((a, b) => a.magV - b.magV);
  const atAnchor = (dir: Dir) => anchor !== null && separationCos(dir, anchor) > COS_SAME_STAR;
  return [
    ...(anchor ? at(anchor, ANCHOR_RADIUS_PX, "word", words.anchor) : []),
    ...(target ? at(target.dir, 11, "word", words.target) : []),
    ...stars.flatMap(({ dir, magV, proper, label }) => {
      const r = atAnchor(dir) ? ANCHOR_RADIUS_PX : dotRadiusPx(magV, page.limitMag);
      if (proper && magV < 2.6) return at(dir, r, "starName", proper);
      return at(dir, r, /^\d/.test(label) ? "number" : "greek", label);
    }),
    ...content.figures.flatMap(({ name }, i): LabelWish[] => {
      const place = nameDir(page, content, projection, i);
      return place ? [{ ...place, r: 0, style: "figureName", text: name.toUpperCase() }] : [];
    }),
  ];
}

/** All the page's lettering, placed north up or marked as without a place. */
function textsOf(page: ChartPage, printed: readonly ChartMark[], wishes: readonly LabelWish[]): TextMark[] {
  const texts = wishes.map(
    ({ x, y, r, style, text }): TextMark => ({
      kind: "text",
      style,
      x,
      y,
      align: "middle",
      text,
      of: { x, y, r },
      placed: false,
    }),
  );
  const options = { measure: roughWidth, pxPerPagePx: 1, typeScale: 1, lit: null };
  const laid = layLetters(page, [...printed, ...texts], PLAIN_VIEW, options);
  const key = ({ style, text, of }: TextMark) => `${style} ${text} ${of.x} ${of.y}`;
  const placed = new Map(laid.map((text) => [key(text), text]));
  const figures = laid.filter(({ style }) => style === "gridFigure");
  return [...figures, ...texts.map((text) => placed.get(key(text)) ?? text)];
}

/**
 * All that is printed on a page, in drawing order.
 * @param page paper, scale and limit
 * @param content stars come as blocks; invented ones are never printed
 */
export function chartMarks(page: ChartPage, content: ChartContent): ChartMark[] {
  const projection = projectionOf(page);
  const grid = gridMarks(page, projection);
  const joined = (content.asterisms ?? []).flatMap((stars) =>
    stars.slice(1).map((to, i) => shortLine(page, stars[i]!, to, "asterism", projection, CLEAR_OF_STAR_PX)),
  );
  const lines = [
    ...content.segments.map(({ from, to }) => shortLine(page, from, to, "figure", projection, CLEAR_OF_STAR_PX)),
    ...joined,
  ].filter((mark) => mark !== null);
  const ways = content.ways.flatMap((way) =>
    way.slice(1).map((dir, i) => shortLine(page, way[i]!, dir, "way", projection, 11)),
  );
  const dots = dotsOf(page, content, projection);
  const signs = signsOf(content, projection);
  const printed = [...grid, ...lines, ...ways.filter((mark) => mark !== null), ...dots, ...signs];
  return [...frameMarks(page), ...printed, ...textsOf(page, printed, wishesOf(page, content, projection))];
}

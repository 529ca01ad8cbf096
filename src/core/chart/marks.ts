/** A chart as marks: what is printed, in px from the page's centre (x right, y down), faint stars first. */
import type { Dir, ObjectKind, SkyObject } from "#core/seams/index.ts";
import { asOneStar } from "#core/sky/closePairs/asOneStar.ts";
import { borderMarks } from "./borders.ts";
import { clippedToFrame } from "./clip.ts";
import { ANCHOR_RADIUS_PX, type ChartContent, dotRadiusPx } from "./content.ts";
import { frameMarks } from "./frame.ts";
import { gridMarks } from "./grid.ts";
import { type ChartPage, type PagePoint, type PageProjection, projectionOf, reachRad } from "./page.ts";
import { textsOf } from "./texts.ts";
import type { ChartMark, DotMark, LineMark, LineStyle, SignMark } from "./types.ts";

const CLEAR_OF_STAR_PX = 8;

function dotsOf(page: ChartPage, content: ChartContent, projection: PageProjection): DotMark[] {
  const dots: DotMark[] = [];
  const point: PagePoint = { x: 0, y: 0 };
  const cosReach = Math.cos(reachRad(page));
  const [cx, cy, cz] = page.centre;
  const blocks = page.byEye ? asOneStar(content.blocks) : content.blocks;
  for (const { dirs, milliMag, count, invented } of blocks) {
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
  emissionNebula: 7,
  reflectionNebula: 7,
  supernovaRemnant: 7,
  darkNebula: 7,
  galaxy: 8,
  doubleStar: 5,
  asterism: 9,
  comet: 6,
  minorPlanet: 6,
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
  const borders = borderMarks(page, projection, content.borders ?? []);
  return [...frameMarks(page), ...borders, ...printed, ...textsOf(page, content, projection, printed)];
}

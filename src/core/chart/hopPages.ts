/** The sheet's two pages: a wide one for the eye, to find the anchor on, and the hop's own. */

import { DEG, dirFromMas, dot, normalise, separationRad } from "#core/celestial/vector.ts";
import type { CompiledAttempt, Dir, SkyObject, StarBlock } from "#core/seams/index.ts";
import type { SkyNames } from "#core/sky/names/types.ts";
import type { ChartContent } from "./content.ts";
import { chartMarks } from "./marks.ts";
import { type ChartPage, reachRad } from "./page.ts";
import type { ChartMark } from "./types.ts";

const WIDTH_PX = 424;
const HEIGHT_PX = 520;
const MARGIN_PX = 18;
/** A page of a hop has room for the way and this many fields about it, within so many px. */
const FIELDS_ABOUT = 1.3;
const WAY_ROOM_PX = 400;
const MOST_PX_PER_DEG = 52;
const WIDE_PX_PER_DEG = 9.5;
/** Pages end half a magnitude beyond what the instrument shows, or earlier where dots would become fog. */
const BEYOND_MAG = 0.5;
const MOST_DOTS = 520;
const HALF_MAG = 0.5;
const BRIGHTEST_PAGE_MAG = 6;

const limitOf = (compiled: CompiledAttempt, gear: string) =>
  (compiled.limits.find((limit) => limit.gear === gear)?.avertedMilliMag ?? 6000) / 1000 + BEYOND_MAG;

/** Stars of the page's circle down to a limit. */
function countStars(blocks: readonly StarBlock[], centre: Dir, radiusRad: number, limitMag: number): number {
  const cosReach = Math.cos(radiusRad);
  let count = 0;
  for (const { dirs, milliMag, count: size, invented } of blocks) {
    if (invented) continue;
    for (let i = 0; i < size && milliMag[i]! <= limitMag * 1000; i++)
      if (dirs[3 * i]! * centre[0] + dirs[3 * i + 1]! * centre[1] + dirs[3 * i + 2]! * centre[2] >= cosReach) count++;
  }
  return count;
}

/** The deepest limit, in half magnitudes, at which the page is still a chart and no fog. */
function readableLimit(page: ChartPage, blocks: readonly StarBlock[]): number {
  let limitMag = Math.floor(page.limitMag / HALF_MAG) * HALF_MAG;
  while (limitMag > BRIGHTEST_PAGE_MAG && countStars(blocks, page.centre, reachRad(page), limitMag) > MOST_DOTS)
    limitMag -= HALF_MAG;
  return limitMag;
}

const middle = (a: Dir, b: Dir): Dir => normalise([a[0] + b[0], a[1] + b[1], a[2] + b[2]]);

/** The page for hopping: anchor, target and every way with room for the field's ring. */
export function hopPage(compiled: CompiledAttempt, blocks: readonly StarBlock[]): ChartPage {
  const { spec } = compiled;
  const [anchor, target] = [dirFromMas(spec.anchor), dirFromMas(spec.targets[0]!.dir)];
  const fieldDeg = compiled.hoppingFieldDas / 36_000;
  const spanDeg = separationRad(anchor, target) / DEG + FIELDS_ABOUT * fieldDeg;
  const page = {
    centre: middle(anchor, target),
    widthPx: WIDTH_PX,
    heightPx: HEIGHT_PX,
    marginPx: MARGIN_PX,
    pxPerDeg: Math.min(MOST_PX_PER_DEG, WAY_ROOM_PX / spanDeg),
    limitMag: limitOf(compiled, spec.hoppingGear),
  };
  return { ...page, limitMag: readableLimit(page, blocks) };
}

/** The page for finding the anchor with the naked eye. */
export function widePage(compiled: CompiledAttempt, blocks: readonly StarBlock[]): ChartPage {
  const page = {
    centre: dirFromMas(compiled.spec.anchor),
    widthPx: WIDTH_PX,
    heightPx: HEIGHT_PX,
    marginPx: MARGIN_PX,
    pxPerDeg: WIDE_PX_PER_DEG,
    limitMag: limitOf(compiled, compiled.spec.gear[0]!),
    byEye: true as const,
  };
  return { ...page, limitMag: readableLimit(page, blocks) };
}

/** How far a page's stars reach from its centre: what has to be resident before it is printed. */
export const pageCone = (page: ChartPage) => ({ centre: page.centre, radiusRad: reachRad(page) });

/** What of a sky is printed besides its stars. */
export interface PrintedSky {
  readonly names: SkyNames;
  readonly objects: readonly SkyObject[];
  readonly borders?: readonly (readonly Dir[])[];
}

export interface Printing {
  readonly words: ChartContent["words"];
  /** Whether the ways themselves are printed: guided lessons, and after the line was shown. */
  readonly ways: boolean;
  /** Nothing is sought: no target is printed. */
  readonly bare?: boolean;
}

const near = (page: ChartPage, dir: Dir) => dot(page.centre, dir) > Math.cos(reachRad(page) + 0.05);

/** Prints a page of an attempt's sky. */
export function printPage(
  page: ChartPage,
  compiled: CompiledAttempt,
  sky: PrintedSky,
  blocks: readonly StarBlock[],
  how: Printing,
): ChartMark[] {
  const { spec } = compiled;
  const target = spec.targets[0]!;
  return chartMarks(page, {
    blocks,
    names: sky.names.stars.filter(({ dir }) => near(page, dir)),
    segments: sky.names.segments.filter(({ from, to }) => near(page, from) || near(page, to)),
    figures: sky.names.figures.filter(({ centre }) => near(page, centre)),
    borders: sky.borders ?? [],
    objects: [],
    anchor: dirFromMas(spec.anchor),
    target: how.bare
      ? null
      : { dir: dirFromMas(target.dir), object: sky.objects.find(({ id }) => id === target.objectId) ?? null },
    ways: how.ways ? compiled.ways.map(({ marks }) => marks.map(({ dir }) => dirFromMas(dir))) : [],
    words: how.words,
  });
}

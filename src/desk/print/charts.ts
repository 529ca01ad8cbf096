/** The two charts of a hop sheet: a wide one for the eye, and the hop's own with fields and way. */
import { dirFromMas } from "#core/celestial/vector.ts";
import { barDeg } from "#core/chart/frame.ts";
import { hopPage, type PrintedSky, printPage, widePage } from "#core/chart/hopPages.ts";
import { type ChartPage, projectionOf, ringRadiusPx } from "#core/chart/page.ts";
import type { ChartMark, RingStyle } from "#core/chart/types.ts";
import { gearById, SIGHT_RINGS_DEG } from "#core/optics/gear.ts";
import type { CompiledAttempt, Dir, StarBlock } from "#core/seams/index.ts";
import { PAPER, pxOf } from "./paper.ts";

const MARGIN_PX = 8;
const WIDE = { heightMm: 56, pxPerDeg: 8.5, limitMag: 5 } as const;
/** Air between the outermost ring and the frame, px. */
const AIR_PX = 10;
const MOST_PX_PER_DEG = 64;
const HOP_MM = { most: 124, least: 66, legsFree: 1, perLeg: 9 } as const;

export interface PrintedChart {
  readonly page: ChartPage;
  readonly marks: readonly ChartMark[];
  readonly barDeg: number;
}

/** Height of the hop's chart: it gives way to a long list of legs. */
export const hopHeightMm = (legs: number): number =>
  Math.max(HOP_MM.least, HOP_MM.most - Math.max(0, legs - HOP_MM.legsFree) * HOP_MM.perLeg);

export const widePrintPage = (compiled: CompiledAttempt, blocks: readonly StarBlock[]): ChartPage => {
  const own = widePage(compiled, blocks);
  const size = { widthPx: pxOf(PAPER.leftMm), heightPx: pxOf(WIDE.heightMm), marginPx: MARGIN_PX };
  return { ...own, ...size, pxPerDeg: WIDE.pxPerDeg, limitMag: Math.min(own.limitMag, WIDE.limitMag) };
};

/** Every mark of every way, and the target. */
const marksOf = ({ ways, spec }: CompiledAttempt): Dir[] => [
  dirFromMas(spec.anchor),
  ...ways.flatMap(({ marks }) => marks.map(({ dir }) => dirFromMas(dir))),
  dirFromMas(spec.targets[0]!.dir),
];

/** The hop's page, as large as the rings of all its marks allow. */
export function hopPrintPage(compiled: CompiledAttempt, blocks: readonly StarBlock[], legs: number): ChartPage {
  const own = hopPage(compiled, blocks);
  const size = { widthPx: pxOf(PAPER.rightMm), heightPx: pxOf(hopHeightMm(legs)), marginPx: MARGIN_PX };
  const plain = { ...own, ...size, pxPerDeg: 10 };
  const box = boundsOf(plain, marksOf(compiled));
  const { unproject } = projectionOf(plain);
  const centre = unproject((box.left + box.right) / 2, (box.top + box.bottom) / 2);
  const centred = { ...plain, centre };
  const { left, right, top, bottom } = boundsOf(centred, marksOf(compiled));
  const ring = 2 * ringRadiusPx(centred, compiled.hoppingFieldDas / 36_000);
  const room = (px: number) => px - 2 * (MARGIN_PX + AIR_PX);
  const grow = Math.min(room(size.widthPx) / (right - left + ring), room(size.heightPx) / (bottom - top + ring));
  return { ...centred, pxPerDeg: Math.min(MOST_PX_PER_DEG, plain.pxPerDeg * grow) };
}

function boundsOf(page: ChartPage, dirs: readonly Dir[]) {
  const { project } = projectionOf(page);
  const points = dirs.map((dir) => {
    const at = { x: 0, y: 0 };
    project(dir, at);
    return at;
  });
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

function ringAt(page: ChartPage, dir: Dir, fieldDeg: number, style: RingStyle): ChartMark[] {
  const at = { x: 0, y: 0 };
  if (!projectionOf(page).project(dir, at)) return [];
  return [{ kind: "ring", style, x: at.x, y: at.y, r: ringRadiusPx(page, fieldDeg) }];
}

interface Printing {
  readonly compiled: CompiledAttempt;
  readonly sky: PrintedSky;
  readonly blocks: readonly StarBlock[];
  readonly words: { readonly anchor: string; readonly target: string };
}

export const hasSight = ({ spec }: CompiledAttempt): boolean => spec.gear.some((id) => gearById(id).kind === "sight");

/** The ring about the anchor on the wide chart: the sight's outer one, or the hopping field. */
export const wideRingDeg = (compiled: CompiledAttempt): number =>
  hasSight(compiled) ? Math.max(...SIGHT_RINGS_DEG) : compiled.hoppingFieldDas / 36_000;

/** The wide chart, with a ring about the anchor. */
export function wideChart({ compiled, sky, blocks, words }: Printing): PrintedChart {
  const page = widePrintPage(compiled, blocks);
  const ring = ringAt(page, dirFromMas(compiled.spec.anchor), wideRingDeg(compiled), "fieldRing");
  const marks = [...ring, ...printPage(page, compiled, sky, blocks, { words, ways: false })];
  return { page, marks, barDeg: barDeg(page) };
}

/**
 * The hop's chart: a ring of the hopping field about each mark of the first way (about both ends where the way is not
 * printed), and the claim instrument's about the target.
 * @param ways whether the ways are printed
 */
export function hopChart({ compiled, sky, blocks, words }: Printing, ways: boolean): PrintedChart {
  const { spec, hoppingFieldDas } = compiled;
  const page = hopPrintPage(compiled, blocks, compiled.ways[0]!.marks.length - 1);
  const target = dirFromMas(spec.targets[0]!.dir);
  const stops = ways ? compiled.ways[0]!.marks.map(({ dir }) => dirFromMas(dir)) : [dirFromMas(spec.anchor), target];
  const claim = compiled.limits.find(({ gear }) => gear === spec.claimGear);
  const rings = [
    ...stops.flatMap((dir) => ringAt(page, dir, hoppingFieldDas / 36_000, "fieldRing")),
    ...(claim && spec.claimGear !== spec.hoppingGear
      ? ringAt(page, target, claim.fieldDas / 36_000, "eyepieceRing")
      : []),
  ];
  const marks = [...rings, ...printPage(page, compiled, sky, blocks, { words, ways })];
  return { page, marks, barDeg: barDeg(page) };
}

/** The report's page: north up, with room for the ways and for all of the trail. */
import { dirFromMas } from "#core/celestial/vector.ts";
import { hopPage } from "#core/chart/hopPages.ts";
import { type ChartPage, projectionOf } from "#core/chart/page.ts";
import type { CompiledAttempt, Dir, StarBlock } from "#core/seams/index.ts";
import { SET_ELSEWHERE } from "#core/session/trail.ts";

export const REPORT_PAGE = { widthPx: 700, heightPx: 812, marginPx: 18 } as const;
/** Room about what was gone, for rings and words, px. */
const ABOUT_PX = 76;
const MOST_PX_PER_DEG = 92;

/** The box about places on a page, px. */
function boundsOf(page: ChartPage, dirs: readonly Dir[]) {
  const { project } = projectionOf(page);
  const at = { x: 0, y: 0 };
  const box = { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity };
  for (const dir of dirs) {
    if (!project(dir, at)) continue;
    box.left = Math.min(box.left, at.x);
    box.right = Math.max(box.right, at.x);
    box.top = Math.min(box.top, at.y);
    box.bottom = Math.max(box.bottom, at.y);
  }
  return box;
}

/**
 * Lays out the page; its limit is the hop's own page's, so that the same stars are printed.
 * @param trail where the tube pointed, in order
 */
export function reportPage(compiled: CompiledAttempt, trail: readonly Dir[], blocks: readonly StarBlock[]): ChartPage {
  const own = hopPage(compiled, blocks);
  const marks = compiled.ways.flatMap((way) => way.marks.map(({ dir }) => dirFromMas(dir)));
  const places = [...marks, dirFromMas(compiled.spec.targets[0]!.dir), ...trail];
  const plain: ChartPage = { ...own, ...REPORT_PAGE, pxPerDeg: 10 };
  const first = boundsOf(plain, places);
  const middle = projectionOf(plain).unproject((first.left + first.right) / 2, (first.top + first.bottom) / 2);
  const { left, right, top, bottom } = boundsOf({ ...plain, centre: middle }, places);
  const roomX = REPORT_PAGE.widthPx - 2 * (REPORT_PAGE.marginPx + ABOUT_PX);
  const roomY = REPORT_PAGE.heightPx - 2 * (REPORT_PAGE.marginPx + ABOUT_PX);
  const grow = Math.min(roomX / Math.max(1, right - left), roomY / Math.max(1, bottom - top));
  return { ...plain, centre: middle, pxPerDeg: Math.min(MOST_PX_PER_DEG, plain.pxPerDeg * grow) };
}

/** The trail in pieces: it is broken wherever the tube was set elsewhere at a stroke. */
export function trailPieces(dirs: readonly Dir[], mark: ArrayLike<number>): Dir[][] {
  const pieces: Dir[][] = [[]];
  dirs.forEach((dir, i) => {
    if (mark[i] === SET_ELSEWHERE && i > 0) pieces.push([]);
    pieces.at(-1)!.push(dir);
  });
  return pieces.filter((piece) => piece.length > 1);
}

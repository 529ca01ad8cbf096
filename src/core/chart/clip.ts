/** Straight lines cut at the frame. */
import type { ChartPage, PagePoint } from "./page.ts";

/** The part of a line within the frame of a page, as x, y of both ends; null where there is none (Liang & Barsky 1984). */
export function clippedToFrame(page: ChartPage, a: PagePoint, b: PagePoint): number[] | null {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const [halfX, halfY] = [page.widthPx / 2 - page.marginPx, page.heightPx / 2 - page.marginPx];
  let [from, to] = [0, 1];
  for (const [step, room] of [
    [-dx, a.x + halfX],
    [dx, halfX - a.x],
    [-dy, a.y + halfY],
    [dy, halfY - a.y],
  ] as const) {
    if (step === 0 && room < 0) return null;
    if (step < 0) from = Math.max(from, room / step);
    if (step > 0) to = Math.min(to, room / step);
  }
  return to > from ? [a.x + dx * from, a.y + dy * from, a.x + dx * to, a.y + dy * to] : null;
}

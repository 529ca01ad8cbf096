/** What the search and the sheet tell each other. The search itself comes when it is first asked for. */
import { effect, signal } from "@preact/signals";
import type { ChartPage } from "#core/chart/page.ts";
import { projectionOf } from "#core/chart/page.ts";
import type { Dir } from "#core/seams/index.ts";
import { screen } from "../app/state.ts";

export const searchShown = signal(false);
/** What was chosen, to be ringed on the sheet; null where nothing is. */
export const found = signal<{ readonly dir: Dir } | null>(null);
/** The sheet that lies on the table. */
export const sheetPage = signal<ChartPage | null>(null);

effect(() => {
  screen.value;
  searchShown.value = false;
  found.value = null;
});

/** Whether a page's print holds a direction. */
export function pageHolds(page: ChartPage, dir: Dir): boolean {
  const point = { x: 0, y: 0 };
  const projection = projectionOf(page);
  return projection.project(dir, point) && projection.holds(point);
}

const RING_PX = 32;
/** The ring about what was found, as the sheet prints rings; none where it lies beyond the page. */
export function foundRings(page: ChartPage) {
  const dir = found.value?.dir;
  if (!dir || !pageHolds(page, dir)) return [];
  return [{ at: dir, fieldDeg: RING_PX / page.pxPerDeg, style: "eyepieceRing" as const }];
}

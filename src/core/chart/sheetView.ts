/**
 * How a sheet lies: its print nearer and moved within the frame, then the paper flipped about its long edge, then turned.
 * Three places: on the page (px at scale 1, as marks have them), on the paper (px from its middle, what is printed there
 * now), on the screen (px from the sheet's middle).
 */
import type { ChartPage, PagePoint } from "./page.ts";

export interface SheetView {
  /** Clockwise from north up. */
  readonly turnRad: number;
  readonly flipped: boolean;
  /** 1: the whole page; never less. */
  readonly scale: number;
  /** The place on the page that is printed in the middle of the paper. */
  readonly panX: number;
  readonly panY: number;
}

export const PLAIN_VIEW: SheetView = { turnRad: 0, flipped: false, scale: 1, panX: 0, panY: 0 };
export const MOST_SCALE = 4;

/** From the page to the screen. @param pxPerPagePx size of the sheet on the screen by the size of the page */
export function screenFromPage(
  view: SheetView,
  pxPerPagePx: number,
  x: number,
  y: number,
  out: PagePoint = { x: 0, y: 0 },
): PagePoint {
  const grown = view.scale * pxPerPagePx;
  const px = (x - view.panX) * grown * (view.flipped ? -1 : 1);
  const py = (y - view.panY) * grown;
  const [c, s] = [Math.cos(view.turnRad), Math.sin(view.turnRad)];
  out.x = px * c - py * s;
  out.y = px * s + py * c;
  return out;
}

/** From the screen to the page. */
export function pageFromScreen(
  view: SheetView,
  pxPerPagePx: number,
  x: number,
  y: number,
  out: PagePoint = { x: 0, y: 0 },
): PagePoint {
  const grown = view.scale * pxPerPagePx;
  const [c, s] = [Math.cos(view.turnRad), Math.sin(view.turnRad)];
  out.x = ((x * c + y * s) / grown) * (view.flipped ? -1 : 1) + view.panX;
  out.y = (y * c - x * s) / grown + view.panY;
  return out;
}

/** Dots grow less than the page does: what is nearer comes apart. */
export const printedRadius = (r: number, scale: number): number => r * scale ** 0.35;

/** A view whose scale is allowed and whose window stays on the page. */
export function clampedView(page: ChartPage, view: SheetView): SheetView {
  const scale = Math.min(MOST_SCALE, Math.max(1, view.scale));
  const [reachX, reachY] = [
    (page.widthPx / 2 - page.marginPx) * (1 - 1 / scale),
    (page.heightPx / 2 - page.marginPx) * (1 - 1 / scale),
  ];
  const held = (value: number, reach: number) => Math.min(reach, Math.max(-reach, value)) + 0;
  return { ...view, scale, panX: held(view.panX, reachX), panY: held(view.panY, reachY) };
}

/** The view at another scale, the place under a point of the screen staying there. */
export function zoomedAbout(
  page: ChartPage,
  view: SheetView,
  pxPerPagePx: number,
  x: number,
  y: number,
  scale: number,
): SheetView {
  const wanted = Math.min(MOST_SCALE, Math.max(1, scale));
  const before = pageFromScreen(view, pxPerPagePx, x, y);
  const after = pageFromScreen({ ...view, scale: wanted }, pxPerPagePx, x, y);
  return clampedView(page, {
    ...view,
    scale: wanted,
    panX: view.panX + before.x - after.x,
    panY: view.panY + before.y - after.y,
  });
}

/** The view with its print moved by a way on the screen, px. */
export function pannedBy(page: ChartPage, view: SheetView, pxPerPagePx: number, dx: number, dy: number): SheetView {
  const from = pageFromScreen(view, pxPerPagePx, 0, 0);
  const to = pageFromScreen(view, pxPerPagePx, dx, dy);
  return clampedView(page, { ...view, panX: view.panX + from.x - to.x, panY: view.panY + from.y - to.y });
}

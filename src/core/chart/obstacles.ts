/** What lettering keeps off, in px from the sheet's middle. */
import type { Obstacle } from "./labels.ts";
import type { PagePoint } from "./page.ts";
import { printedRadius, type SheetView, screenFromPage } from "./sheetView.ts";
import type { ChartMark, LineMark } from "./types.ts";

/** Lines of figures and ways as a chain of small boxes: so far apart, so large. */
const LINK_PX = 6;
const LINK_HALF_PX = 1.5;
const CROSSED_UNWILLINGLY: ReadonlySet<LineMark["style"]> = new Set(["figure", "asterism", "way"]);

function chainOf({ points }: LineMark, view: SheetView, pxPerPagePx: number): Obstacle[] {
  const from = screenFromPage(view, pxPerPagePx, points[0]!, points[1]!);
  const to = screenFromPage(view, pxPerPagePx, points.at(-2)!, points.at(-1)!);
  const links = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / LINK_PX));
  return Array.from({ length: links + 1 }, (_, i) => {
    const [x, y] = [from.x + ((to.x - from.x) * i) / links, from.y + ((to.y - from.y) * i) / links];
    const [left, right] = [x - LINK_HALF_PX, x + LINK_HALF_PX];
    return { left, right, top: y - LINK_HALF_PX, bottom: y + LINK_HALF_PX, line: true };
  });
}

/** A drawn line of many points: a small box wherever it has gone on by a link. */
export function trailChain(trail: readonly PagePoint[], view: SheetView, pxPerPagePx: number): Obstacle[] {
  const chain: Obstacle[] = [];
  const at = { x: 0, y: 0 };
  let last = { x: Number.POSITIVE_INFINITY, y: 0 };
  for (const { x, y } of trail) {
    screenFromPage(view, pxPerPagePx, x, y, at);
    const [dx, dy] = [at.x - last.x, at.y - last.y];
    const long = Math.hypot(dx, dy);
    if (long < LINK_PX) continue;
    const links = Number.isFinite(long) ? Math.ceil(long / LINK_PX) : 1;
    for (let i = 1; i <= links; i++) {
      const [cx, cy] = i === links ? [at.x, at.y] : [last.x + (dx * i) / links, last.y + (dy * i) / links];
      const [left, right] = [cx - LINK_HALF_PX, cx + LINK_HALF_PX];
      chain.push({ left, right, top: cy - LINK_HALF_PX, bottom: cy + LINK_HALF_PX, trail: true });
    }
    last = { x: at.x, y: at.y };
  }
  return chain;
}

/** What lettering keeps off: larger dots, signs, and the lines of figures and ways. */
export function obstaclesOf(marks: readonly ChartMark[], view: SheetView, pxPerPagePx: number): Obstacle[] {
  return marks.flatMap((mark) => {
    if (mark.kind === "line") return CROSSED_UNWILLINGLY.has(mark.style) ? chainOf(mark, view, pxPerPagePx) : [];
    if (!(mark.kind === "sign" || (mark.kind === "dot" && mark.r > 1.4))) return [];
    const { x, y } = screenFromPage(view, pxPerPagePx, mark.x, mark.y);
    const r = printedRadius(mark.r, view.scale) * pxPerPagePx;
    const box = { left: x - r, right: x + r, top: y - r, bottom: y + r };
    return [mark.kind === "dot" ? { ...box, dotR: r } : box];
  });
}

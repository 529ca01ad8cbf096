/** The lettering of a sheet as it lies: level and readable, each name beside its star, in px from the sheet's middle. */
import { type LabelWish, type PlacingOptions, placeLabels } from "./labels.ts";
import type { LetterOptions } from "./letterOptions.ts";
import { placeFigures } from "./netFigures.ts";
import { obstaclesOf, trailChain } from "./obstacles.ts";
import type { ChartPage } from "./page.ts";
import { pageFromScreen, printedRadius, type SheetView, screenFromPage } from "./sheetView.ts";
import type { ChartMark, TextMark } from "./types.ts";

/** A figure's name keeps this near to its middle, or a line's height. */
const ROAM = { deg: 3.5, leastPx: 18 } as const;
/** Figures of the net are read over dots up to this radius. */
const FIGURE_OVER_PX = 2;

/** Whether a box lies within the frame of the turned paper, in view, and where the lamp lets print be read. */
function withinSheet(
  page: ChartPage,
  view: SheetView,
  { pxPerPagePx, lit, shown }: LetterOptions,
): PlacingOptions["within"] {
  const halfX = page.widthPx / 2 - page.marginPx - 3;
  const halfY = page.heightPx / 2 - page.marginPx - 3;
  const onPaper = { ...view, scale: 1, panX: 0, panY: 0 };
  const at = { x: 0, y: 0 };
  const holds = (x: number, y: number) => {
    pageFromScreen(onPaper, pxPerPagePx, x, y, at);
    return Math.abs(at.x) <= halfX && Math.abs(at.y) <= halfY;
  };
  return ({ left, right, top, bottom }, tone) => {
    const light =
      !lit || tone === "hand" || Math.hypot((left + right) / 2 - lit.x, (top + bottom) / 2 - lit.y) <= lit.radiusPx;
    const inView = !shown || (left >= shown.left && right <= shown.right && top >= shown.top && bottom <= shown.bottom);
    return light && inView && holds(left, top) && holds(right, top) && holds(left, bottom) && holds(right, bottom);
  };
}

/**
 * Lays the lettering of a page for a view of it. Names that find no place are left out.
 * @param marks of the page: its net gives the figures at the edges, its text the names, laid in their order
 * @param extra more wishes of the moment (notes, ring names), in px on the page; they go before the page's own
 * @returns text in px from the sheet's middle on the screen, level
 */
export function layLetters(
  page: ChartPage,
  marks: readonly ChartMark[],
  view: SheetView,
  options: LetterOptions,
  extra: readonly LabelWish[] = [],
): TextMark[] {
  const { pxPerPagePx } = options;
  const within = withinSheet(page, view, options);
  const printed = [...obstaclesOf(marks, view, pxPerPagePx), ...trailChain(options.trail ?? [], view, pxPerPagePx)];
  const large = printed.filter(({ dotR = Number.POSITIVE_INFINITY, line }) => !line && dotR > FIGURE_OVER_PX);
  const figures = placeFigures(page, marks, view, options, { within, taken: large });
  const texts = marks.filter((mark) => mark.kind === "text" && mark.style !== "gridFigure") as TextMark[];
  const wishes = [...extra, ...texts.map(({ style, text, of }): LabelWish => ({ style, text, ...of }))].map((wish) => ({
    ...wish,
    ...screenFromPage(view, pxPerPagePx, wish.x, wish.y),
    r: printedRadius(wish.r, view.scale) * pxPerPagePx,
  }));
  const roamPx = Math.max(ROAM.leastPx, ROAM.deg * page.pxPerDeg * pxPerPagePx * view.scale);
  const placed = placeLabels(wishes, [...figures.boxes, ...printed], { ...options, roamPx, within });
  const names = wishes.flatMap(({ style, text, tone, x, y, r }, i): TextMark[] => {
    const place = placed[i];
    if (!place) return [];
    const name = { kind: "text" as const, style, text, x: place.x, y: place.y, align: place.align, placed: true };
    return [{ ...name, of: { x, y, r }, ...(tone ? { tone } : {}) }];
  });
  return [...figures.texts, ...names];
}

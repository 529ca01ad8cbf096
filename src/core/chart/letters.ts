/** The lettering of a sheet as it lies: level and readable, each name beside its star, in px from the sheet's middle. */
import {
  type Box,
  boxesMeet,
  type LabelWish,
  letterHeightPx,
  type Measure,
  type Obstacle,
  placeLabels,
  textBox,
} from "./labels.ts";
import type { ChartPage } from "./page.ts";
import { pageFromScreen, printedRadius, type SheetView, screenFromPage } from "./sheetView.ts";
import type { ChartMark, LineMark, TextMark } from "./types.ts";

export type LetterOptions = {
  readonly measure: Measure;
  /** Size of the sheet on the screen by the size of the page. */
  readonly pxPerPagePx: number;
  readonly typeScale: number;
  /** The part of the paper that is light enough to read by: px from the sheet's middle; null for all of it. */
  readonly lit: { readonly x: number; readonly y: number; readonly radiusPx: number } | null;
};
type Free = (box: Box) => boolean;
type Place = { readonly x: number; readonly y: number };
type FigureWish = { readonly text: string; readonly places: readonly Place[] };

/** A figure stands so far in from the frame, and so far above its line (kept level, so a little more than it needs). */
const FIGURE_INSET = { x: 19, y: 9 };
const FIGURE_CORNER_PX = 22;
/** Figures are read over dots up to this radius. */
const FIGURE_OVER_PX = 2;
/** Between the figures of two lines. */
const FIGURE_GAP_PX = 8;

/** Where a line of the net, as printed now, meets an edge; null where it does not. Points are x, y on the paper. */
function crossing(line: LineMark, view: SheetView, edge: "x" | "y", at: number, half: number): number | null {
  const { points } = line;
  const place = (i: number) => [
    (points[2 * i]! - view.panX) * view.scale,
    (points[2 * i + 1]! - view.panY) * view.scale,
  ];
  // A line that ends on the page's own frame misses it by a rounding.
  const reach = at + Math.sign(at) * -0.5;
  for (let i = 1; i < points.length / 2; i++) {
    const [a, b] = [place(i - 1), place(i)] as [number[], number[]];
    const [from, to] = edge === "x" ? [a[0]!, b[0]!] : [a[1]!, b[1]!];
    if (from === to || (from - reach) * (to - reach) > 0) continue;
    const t = (reach - from) / (to - from);
    const other = edge === "x" ? a[1]! + (b[1]! - a[1]!) * t : a[0]! + (b[0]! - a[0]!) * t;
    return Math.abs(other) < half ? other : null;
  }
  return null;
}

function figuresOf(page: ChartPage, marks: readonly ChartMark[], view: SheetView): FigureWish[] {
  const [halfX, halfY] = [page.widthPx / 2 - page.marginPx, page.heightPx / 2 - page.marginPx];
  // From behind, the edge that lies at the right is the paper's left one.
  const right = view.flipped ? -halfX : halfX;
  const inward = -Math.sign(right);
  return marks.flatMap((mark) => {
    if (mark.kind !== "line" || !mark.figure) return [];
    const { text, edge } = mark.figure;
    const wish = (...places: Place[]) => [{ text, places }];
    if (edge === "right") {
      const y = crossing(mark, view, "x", right, halfY - FIGURE_CORNER_PX);
      const x = right + inward * FIGURE_INSET.x;
      if (y === null) return [];
      const further = right + inward * FIGURE_INSET.x * 1.5;
      return wish(...[x, further].flatMap((at) => [-1, 1].map((side) => ({ x: at, y: y + side * FIGURE_INSET.y }))));
    }
    const x = crossing(mark, view, "y", halfY, halfX - FIGURE_CORNER_PX * 1.6);
    if (x === null) return [];
    const aside = FIGURE_INSET.x + 3;
    const ys = [1, 2, 2.8].map((times) => halfY - 2 - FIGURE_INSET.y * times);
    return wish(...ys.flatMap((y) => [-1, 1].map((side) => ({ x: x + side * inward * aside, y }))));
  });
}

/** Figures of the net stand on one side of their line or the other; one without a free place is left out. */
function placeFigures(
  page: ChartPage,
  marks: readonly ChartMark[],
  view: SheetView,
  options: LetterOptions,
  free: Free,
): { texts: TextMark[]; boxes: Box[] } {
  const { measure, pxPerPagePx, typeScale } = options;
  const onPaper = { ...view, scale: 1, panX: 0, panY: 0 };
  const height = letterHeightPx("gridFigure") * typeScale;
  const [texts, boxes]: [TextMark[], Box[]] = [[], []];
  for (const { text, places } of figuresOf(page, marks, view)) {
    const width = measure("gridFigure", text) * typeScale;
    for (const place of places) {
      const { x, y } = screenFromPage(onPaper, pxPerPagePx, place.x, place.y);
      const box = textBox(x, y + height * 0.35, "middle", width, height);
      const apart = textBox(x, y + height * 0.35, "middle", width + FIGURE_GAP_PX, height);
      if (!free(box) || boxes.some((other) => boxesMeet(apart, other))) continue;
      boxes.push(box);
      const of = { x, y, r: 0 };
      const baseline = y + height * 0.35;
      texts.push({ kind: "text", style: "gridFigure", x, y: baseline, align: "middle", text, of, placed: true });
      break;
    }
  }
  return { texts, boxes };
}

/** Dots that lettering must keep off, and signs. */
function takenBoxes(marks: readonly ChartMark[], view: SheetView, pxPerPagePx: number): Obstacle[] {
  return marks.flatMap((mark) => {
    if (!(mark.kind === "sign" || (mark.kind === "dot" && mark.r > 1.4))) return [];
    const { x, y } = screenFromPage(view, pxPerPagePx, mark.x, mark.y);
    const r = printedRadius(mark.r, view.scale) * pxPerPagePx;
    const box = { left: x - r, right: x + r, top: y - r, bottom: y + r };
    return [mark.kind === "dot" ? { ...box, dotR: r } : box];
  });
}

/** Whether a box lies within the frame of the turned paper, and where the lamp lets it be read. */
function withinSheet(page: ChartPage, view: SheetView, { pxPerPagePx, lit }: LetterOptions): Free {
  const halfX = page.widthPx / 2 - page.marginPx - 3;
  const halfY = page.heightPx / 2 - page.marginPx - 3;
  const onPaper = { ...view, scale: 1, panX: 0, panY: 0 };
  const at = { x: 0, y: 0 };
  const holds = (x: number, y: number) => {
    pageFromScreen(onPaper, pxPerPagePx, x, y, at);
    return Math.abs(at.x) <= halfX && Math.abs(at.y) <= halfY;
  };
  return ({ left, right, top, bottom }) => {
    const light = !lit || Math.hypot((left + right) / 2 - lit.x, (top + bottom) / 2 - lit.y) <= lit.radiusPx;
    return light && holds(left, top) && holds(right, top) && holds(left, bottom) && holds(right, bottom);
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
  const printed = takenBoxes(marks, view, pxPerPagePx);
  const large = printed.filter(({ dotR = Number.POSITIVE_INFINITY }) => dotR > FIGURE_OVER_PX);
  const clear: Free = (box) => within(box) && !large.some((other) => boxesMeet(box, other));
  const figures = placeFigures(page, marks, view, options, clear);
  const texts = marks.filter((mark) => mark.kind === "text" && mark.style !== "gridFigure") as TextMark[];
  const wishes = [...extra, ...texts.map(({ style, text, of }): LabelWish => ({ style, text, ...of }))].map((wish) => ({
    ...wish,
    ...screenFromPage(view, pxPerPagePx, wish.x, wish.y),
    r: printedRadius(wish.r, view.scale) * pxPerPagePx,
  }));
  const placed = placeLabels(wishes, [...figures.boxes, ...printed], { ...options, within });
  const names = wishes.flatMap(({ style, text, tone, x, y, r }, i): TextMark[] => {
    const place = placed[i];
    if (!place) return [];
    const name = { kind: "text" as const, style, text, x: place.x, y: place.y, align: place.align, placed: true };
    return [{ ...name, of: { x, y, r }, ...(tone ? { tone } : {}) }];
  });
  return [...figures.texts, ...names];
}

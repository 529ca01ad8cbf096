/** The figures of the net: at the edges that lie at the right and below, beside their lines. */
import { type Box, boxesMeet, letterHeightPx, textBox } from "./labels.ts";
import type { LetterOptions } from "./letterOptions.ts";
import type { ChartPage } from "./page.ts";
import { type SheetView, screenFromPage } from "./sheetView.ts";
import type { ChartMark, LineMark, TextMark } from "./types.ts";

type Place = { readonly x: number; readonly y: number };
/** Rows of places, the nearest to the edge first: the first row that lies within the frame is the one. */
type FigureWish = { readonly text: string; readonly rows: readonly (readonly Place[])[] };

/** A figure stands so far in from the frame, and so far above its line (kept level, so a little more than it needs). */
const FIGURE_INSET = { x: 19, y: 9 };
const FIGURE_CORNER_PX = 22;
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
    if (edge === "right") {
      const y = crossing(mark, view, "x", right, halfY - FIGURE_CORNER_PX);
      const x = right + inward * FIGURE_INSET.x;
      if (y === null) return [];
      const further = right + inward * FIGURE_INSET.x * 1.5;
      return [
        { text, rows: [x, further].map((at) => [-1, 1].map((side) => ({ x: at, y: y + side * FIGURE_INSET.y }))) },
      ];
    }
    const x = crossing(mark, view, "y", halfY, halfX - FIGURE_CORNER_PX * 1.6);
    if (x === null) return [];
    const aside = FIGURE_INSET.x + 3;
    const ys = [1, 2, 2.8].map((times) => halfY - 2 - FIGURE_INSET.y * times);
    return [{ text, rows: ys.map((y) => [-1, 1].map((side) => ({ x: x + side * inward * aside, y }))) }];
  });
}

/** Figures of the net stand on one side of their line or the other; one without a free place is left out. */
export function placeFigures(
  page: ChartPage,
  marks: readonly ChartMark[],
  view: SheetView,
  { measure, pxPerPagePx, typeScale }: LetterOptions,
  { within, taken }: { readonly within: (box: Box) => boolean; readonly taken: readonly Box[] },
): { texts: TextMark[]; boxes: Box[] } {
  const onPaper = { ...view, scale: 1, panX: 0, panY: 0 };
  const height = letterHeightPx("gridFigure") * typeScale;
  const [texts, boxes]: [TextMark[], Box[]] = [[], []];
  for (const { text, rows } of figuresOf(page, marks, view)) {
    const width = measure("gridFigure", text) * typeScale;
    const boxAt = ({ x, y }: Place, gapPx = 0) => textBox(x, y + height * 0.35, "middle", width + gapPx, height);
    const places = rows.map((row) => row.map(({ x, y }) => screenFromPage(onPaper, pxPerPagePx, x, y)));
    const row = places.find((some) => some.some((place) => within(boxAt(place)))) ?? [];
    const free = row.find(
      (place) =>
        within(boxAt(place)) &&
        !taken.some((other) => boxesMeet(boxAt(place), other)) &&
        !boxes.some((other) => boxesMeet(boxAt(place, FIGURE_GAP_PX), other)),
    );
    if (!free) continue;
    boxes.push(boxAt(free));
    const at = { x: free.x, y: free.y + height * 0.35 };
    texts.push({
      kind: "text",
      style: "gridFigure",
      ...at,
      align: "middle",
      text,
      of: { ...free, r: 0 },
      placed: true,
    });
  }
  return { texts, boxes };
}

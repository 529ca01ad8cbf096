/** The print: marks onto a canvas, in ink, north up and seen from the front. */
import { frameMarks } from "#core/chart/frame.ts";
import type { ChartPage } from "#core/chart/page.ts";
import { printedRadius, type SheetView } from "#core/chart/sheetView.ts";
import { signPath } from "#core/chart/signs.ts";
import type { ChartMark, DotMark, LineMark, LineStyle, RingMark, SignMark } from "#core/chart/types.ts";

type Ctx = CanvasRenderingContext2D;
type Print = {
  readonly ctx: Ctx;
  readonly view: SheetView;
  readonly ink: string;
  readonly paper: string;
  /** Whether a place on the paper is light enough for edges and clearings in the paper's own tone. */
  readonly lit: (x: number, y: number) => boolean;
};
const PEN: Readonly<Record<LineStyle, { width: number; alpha: number; dash: readonly number[] }>> = {
  frame: { width: 1, alpha: 1, dash: [] },
  frameInner: { width: 0.6, alpha: 1, dash: [] },
  bar: { width: 2.6, alpha: 1, dash: [] },
  grid: { width: 0.5, alpha: 0.42, dash: [] },
  border: { width: 0.8, alpha: 0.55, dash: [0.8, 2.6] },
  figure: { width: 0.9, alpha: 0.85, dash: [] },
  asterism: { width: 1.2, alpha: 0.9, dash: [1.2, 3.6] },
  way: { width: 2.6, alpha: 1, dash: [9, 5] },
};
/** Dots from this radius on keep an edge of paper, so that close pairs stay two. */
const EDGED_FROM_PX = 1.5;
const EDGE_PX = 0.45;
const CLEARING_PX = 11;

function drawLine({ ctx, view, ink }: Print, { style, points }: LineMark, zoomed: boolean): void {
  const { width, alpha, dash } = PEN[style];
  const [scale, panX, panY] = zoomed ? [view.scale, view.panX, view.panY] : [1, 0, 0];
  ctx.beginPath();
  for (let i = 0; i < points.length; i += 2) ctx.lineTo((points[i]! - panX) * scale, (points[i + 1]! - panY) * scale);
  ctx.lineWidth = width;
  ctx.globalAlpha = alpha;
  ctx.setLineDash([...dash]);
  ctx.strokeStyle = ink;
  ctx.stroke();
  ctx.globalAlpha = 1;
  ctx.setLineDash([]);
}

function drawDot({ ctx, view, ink, paper, lit }: Print, mark: DotMark): void {
  const r = printedRadius(mark.r, view.scale);
  const [x, y] = [(mark.x - view.panX) * view.scale, (mark.y - view.panY) * view.scale];
  if (mark.r > EDGED_FROM_PX && lit(x, y)) {
    ctx.fillStyle = paper;
    ctx.beginPath();
    ctx.arc(x, y, r + EDGE_PX, 0, 2 * Math.PI);
    ctx.fill();
  }
  ctx.fillStyle = ink;
  ctx.beginPath();
  ctx.arc(x, y, r, 0, 2 * Math.PI);
  ctx.fill();
}

function drawSign({ ctx, view, ink, paper, lit }: Print, mark: SignMark): void {
  const [x, y] = [(mark.x - view.panX) * view.scale, (mark.y - view.panY) * view.scale];
  ctx.save();
  ctx.translate(x, y);
  const grown = printedRadius(1, view.scale);
  ctx.scale(grown, grown);
  if (mark.role === "target" && lit(x, y)) {
    ctx.globalAlpha = 0.75;
    ctx.fillStyle = paper;
    ctx.beginPath();
    ctx.arc(0, 0, CLEARING_PX, 0, 2 * Math.PI);
    ctx.fill();
    ctx.globalAlpha = 1;
  }
  ctx.strokeStyle = ink;
  ctx.lineWidth = mark.role === "target" ? 1.5 : mark.role === "anchor" ? 1.1 : 1.3;
  ctx.stroke(new Path2D(signPath(mark)));
  if (mark.sign === "doubleStar") {
    ctx.fillStyle = ink;
    ctx.beginPath();
    ctx.arc(0, 0, mark.r, 0, 2 * Math.PI);
    ctx.fill();
  }
  ctx.restore();
}

function drawRing({ ctx, view, ink }: Print, { style, x, y, r }: RingMark): void {
  ctx.beginPath();
  ctx.arc((x - view.panX) * view.scale, (y - view.panY) * view.scale, r * view.scale, 0, 2 * Math.PI);
  ctx.lineWidth = style === "fieldRing" ? 1 : 1.1;
  ctx.setLineDash(style === "fieldRing" ? [2, 5] : []);
  ctx.strokeStyle = ink;
  ctx.stroke();
  ctx.setLineDash([]);
}

/**
 * Prints a page over what the canvas holds. The canvas is the whole paper.
 * @param marks in drawing order; frame and bars are drawn anew for the scale, text is another layer's
 * @param perPagePx device px to a px of the page
 */
export function paintPrint(
  ctx: Ctx,
  page: ChartPage,
  marks: readonly ChartMark[],
  view: SheetView,
  perPagePx: number,
  look: Pick<Print, "ink" | "paper" | "lit">,
): void {
  const print: Print = { ctx, view, ...look };
  const [halfX, halfY] = [page.widthPx / 2 - page.marginPx, page.heightPx / 2 - page.marginPx];
  ctx.save();
  ctx.translate(ctx.canvas.width / 2, ctx.canvas.height / 2);
  ctx.scale(perPagePx, perPagePx);
  ctx.save();
  ctx.beginPath();
  ctx.rect(-halfX, -halfY, 2 * halfX, 2 * halfY);
  ctx.clip();
  for (const mark of marks) {
    if (mark.kind === "dot") drawDot(print, mark);
    else if (mark.kind === "sign") drawSign(print, mark);
    else if (mark.kind === "ring") drawRing(print, mark);
    else if (mark.kind === "line" && !FRAME.has(mark.style)) drawLine(print, mark, true);
  }
  ctx.restore();
  for (const mark of frameMarks({ ...page, pxPerDeg: page.pxPerDeg * view.scale }))
    if (mark.kind === "line") drawLine(print, mark, false);
  ctx.restore();
}

const FRAME: ReadonlySet<LineStyle> = new Set(["frame", "frameInner", "bar"]);

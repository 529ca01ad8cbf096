/** The frame is a ruler: one bar is one degree at the page's scale (five on wide pages, a quarter on narrow ones). */

import type { ChartPage } from "./page.ts";
import type { ChartMark } from "./types.ts";

/** Degrees in one bar of the frame: so that a bar is neither a hair nor half the page. */
export function barDeg({ pxPerDeg }: ChartPage): number {
  if (pxPerDeg < 12) return 5;
  return pxPerDeg > 160 ? 0.25 : 1;
}

const box = (style: "frame" | "frameInner", halfWidth: number, halfHeight: number): ChartMark => ({
  kind: "line",
  style,
  points: [
    -halfWidth,
    -halfHeight,
    halfWidth,
    -halfHeight,
    halfWidth,
    halfHeight,
    -halfWidth,
    halfHeight,
    -halfWidth,
    -halfHeight,
  ],
});

/** Bars along one side, every other one printed, counted from the middle. */
function barsAlong(half: number, step: number, place: (from: number, to: number) => readonly number[]): ChartMark[] {
  const bars: ChartMark[] = [];
  for (let i = -Math.ceil(half / step); i < half / step; i++) {
    if (((i % 2) + 2) % 2 === 1) continue;
    const [from, to] = [Math.max(-half, i * step), Math.min(half, (i + 1) * step)];
    if (to > from) bars.push({ kind: "line", style: "bar", points: place(from, to) });
  }
  return bars;
}

/** The double frame with its bars between. */
export function frameMarks(page: ChartPage): ChartMark[] {
  const halfWidth = page.widthPx / 2 - page.marginPx;
  const halfHeight = page.heightPx / 2 - page.marginPx;
  const step = barDeg(page) * page.pxPerDeg;
  const [outX, outY] = [halfWidth + 2.5, halfHeight + 2.5];
  return [
    box("frame", halfWidth, halfHeight),
    box("frameInner", halfWidth + 5, halfHeight + 5),
    ...[-outY, outY].flatMap((y) => barsAlong(halfWidth, step, (from, to) => [from, y, to, y])),
    ...[-outX, outX].flatMap((x) => barsAlong(halfHeight, step, (from, to) => [x, from, x, to])),
  ];
}

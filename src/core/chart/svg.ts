/** Marks as SVG text: for printing, and for anything that wants a chart without a canvas. Black on nothing. */
import type { ChartPage } from "./page.ts";
import { signPath } from "./signs.ts";
import type { ChartMark, LineStyle, TextStyle } from "./types.ts";

const STROKE: Readonly<Record<LineStyle, string>> = {
  frame: 'stroke-width="1"',
  frameInner: 'stroke-width=".6"',
  bar: 'stroke-width="2.6"',
  grid: 'stroke-width=".5" stroke-opacity=".42"',
  figure: 'stroke-width=".9"',
  asterism: 'stroke-width="1.2" stroke-dasharray="1.2 3.6"',
  way: 'stroke-width="2.6" stroke-dasharray="9 5"',
};
const LETTERS: Readonly<Record<TextStyle, string>> = {
  starName: 'font-family="Brygada 1918, serif" font-style="italic" font-weight="500" font-size="15"',
  greek: 'font-family="Brygada 1918, serif" font-style="italic" font-weight="500" font-size="16"',
  number: 'font-family="Commissioner, sans-serif" font-weight="600" font-size="12.5"',
  figureName: 'font-family="Brygada 1918, serif" font-weight="500" font-size="13" letter-spacing=".34em"',
  gridFigure: 'font-family="Commissioner, sans-serif" font-weight="500" font-size="11.5"',
  word: 'font-family="Commissioner, sans-serif" font-weight="600" font-size="14"',
};

const escaped = (text: string) => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
const px = (value: number) => String(Math.round(value * 100) / 100);

function elementOf(mark: ChartMark): string {
  switch (mark.kind) {
    case "dot":
      return `<circle cx="${px(mark.x)}" cy="${px(mark.y)}" r="${px(mark.r)}"/>`;
    case "line":
      return `<polyline fill="none" stroke="currentColor" ${STROKE[mark.style]} points="${mark.points.map(px).join(" ")}"/>`;
    case "ring": {
      const dash = mark.style === "fieldRing" ? ' stroke-dasharray="2 5"' : "";
      return `<circle fill="none" stroke="currentColor" stroke-width="1"${dash} cx="${px(mark.x)}" cy="${px(mark.y)}" r="${px(mark.r)}"/>`;
    }
    case "sign":
      return `<path fill="none" stroke="currentColor" stroke-width="1.1" transform="translate(${px(mark.x)} ${px(mark.y)})" d="${signPath(mark)}"/>`;
    case "text":
      return `<text x="${px(mark.x)}" y="${px(mark.y)}" text-anchor="${mark.align}" ${LETTERS[mark.style]}>${escaped(mark.text)}</text>`;
  }
}

/**
 * A whole page as an SVG document.
 * @param title said by a screen reader; plain text
 */
export function marksToSvg(page: ChartPage, marks: readonly ChartMark[], title: string): string {
  const [halfWidth, halfHeight] = [page.widthPx / 2, page.heightPx / 2];
  const box = `${px(-halfWidth)} ${px(-halfHeight)} ${px(page.widthPx)} ${px(page.heightPx)}`;
  const body = marks.map(elementOf).join("\n");
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${box}" role="img"><title>${escaped(title)}</title>\n${body}\n</svg>\n`;
}

/**
 * Marks as SVG text: for printing, and for anything that wants a chart without a canvas. Ink is the current colour, edges
 * and halos are the custom property `--paper`, white where nobody set it.
 */
import type { ChartPage } from "./page.ts";
import { signPath } from "./signs.ts";
import type { ChartMark, LineStyle, SignMark, TextMark, TextStyle } from "./types.ts";

const STROKE: Readonly<Record<LineStyle, string>> = {
  frame: 'stroke-width="1"',
  frameInner: 'stroke-width=".6"',
  bar: 'stroke-width="2.6"',
  grid: 'stroke-width=".5" stroke-opacity=".42"',
  border: 'stroke-width=".8" stroke-opacity=".55" stroke-dasharray=".8 2.6"',
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
  note: 'font-family="Brygada 1918, serif" font-style="italic" font-weight="500" font-size="15"',
};

const escaped = (text: string) => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
const px = (value: number) => String(Math.round(value * 100) / 100);
const PAPER = 'stroke="var(--paper, #fff)"';
/** Dots from this radius on keep an edge of paper, so that close pairs stay two. */
const EDGED_FROM_PX = 1.5;
const CLEARING_PX = 11;

function signElement(mark: SignMark): string {
  const at = `translate(${px(mark.x)} ${px(mark.y)})`;
  const clearing =
    mark.role === "target"
      ? `<circle r="${CLEARING_PX}" fill="var(--paper, #fff)" fill-opacity=".75" transform="${at}"/>`
      : "";
  const fill = mark.sign === "doubleStar" ? `<circle r="${px(mark.r)}" transform="${at}"/>` : "";
  const path = `<path fill="none" stroke="currentColor" stroke-width="1.1" transform="${at}" d="${signPath(mark)}"/>`;
  return clearing + path + fill;
}

function textElement({ x, y, align, style, text }: TextMark): string {
  const halo = `${PAPER} stroke-opacity=".55" stroke-width="3.2" stroke-linejoin="round" paint-order="stroke"`;
  return `<text x="${px(x)}" y="${px(y)}" text-anchor="${align}" ${LETTERS[style]} ${halo}>${escaped(text)}</text>`;
}

function elementOf(mark: ChartMark): string {
  switch (mark.kind) {
    case "dot": {
      const edge = mark.r > EDGED_FROM_PX ? ` ${PAPER} stroke-width=".9" paint-order="stroke"` : "";
      return `<circle cx="${px(mark.x)}" cy="${px(mark.y)}" r="${px(mark.r)}"${edge}/>`;
    }
    case "line":
      return `<polyline fill="none" stroke="currentColor" ${STROKE[mark.style]} points="${mark.points.map(px).join(" ")}"/>`;
    case "ring": {
      const pen = mark.style === "fieldRing" ? 'stroke-width="1" stroke-dasharray="2 5"' : 'stroke-width="1.1"';
      return `<circle fill="none" stroke="currentColor" ${pen} cx="${px(mark.x)}" cy="${px(mark.y)}" r="${px(mark.r)}"/>`;
    }
    case "sign":
      return signElement(mark);
    case "text":
      return mark.placed ? textElement(mark) : "";
  }
}

/**
 * A whole page as an SVG document.
 * @param title said by a screen reader; plain text
 */
export function marksToSvg(page: ChartPage, marks: readonly ChartMark[], title: string): string {
  const [halfWidth, halfHeight] = [page.widthPx / 2, page.heightPx / 2];
  const box = `${px(-halfWidth)} ${px(-halfHeight)} ${px(page.widthPx)} ${px(page.heightPx)}`;
  const body = marks.map(elementOf).filter(Boolean).join("\n");
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${box}" role="img" fill="currentColor"><title>${escaped(title)}</title>\n${body}\n</svg>\n`;
}

/** Lettering that finds a free place beside its star, or stays away. */

import type { ChartPage } from "./page.ts";
import type { ChartMark, TextStyle } from "./types.ts";

/** A name wished at a place; `r` is the radius of what it stands beside, px. */
export type LabelWish = {
  readonly x: number;
  readonly y: number;
  readonly r: number;
  readonly style: TextStyle;
  readonly text: string;
};

type Box = { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };

/** Height of a style's letters and their mean width, px: enough to keep boxes apart without measuring type. */
const SIZE: Readonly<Record<TextStyle, { height: number; width: number }>> = {
  starName: { height: 15, width: 7.2 },
  greek: { height: 16, width: 8.5 },
  number: { height: 12.5, width: 7 },
  figureName: { height: 13, width: 13.2 },
  gridFigure: { height: 11.5, width: 6.4 },
  word: { height: 14, width: 7.6 },
};

const meets = (a: Box, b: Box) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const boxOf = (x: number, y: number, align: "start" | "middle" | "end", style: TextStyle, text: string): Box => {
  const { height, width } = SIZE[style];
  const long = width * text.length;
  const left = align === "start" ? x : align === "end" ? x - long : x - long / 2;
  return { left, right: left + long, top: y - height * 0.78, bottom: y + height * 0.24 };
};

type Place = { readonly x: number; readonly y: number; readonly align: "start" | "middle" | "end" };

/** Places to try about a star: right, left, above, below, then the corners. */
function placesFor({ x, y, r, style }: LabelWish): Place[] {
  const gap = r + 4;
  const { height } = SIZE[style];
  if (style === "figureName") return [0, 18, -18, 36, -36].map((dy) => ({ x, y: y + dy, align: "middle" as const }));
  return [
    { x: x + gap, y: y + height * 0.3, align: "start" },
    { x: x - gap, y: y + height * 0.3, align: "end" },
    { x, y: y - gap, align: "middle" },
    { x, y: y + gap + height * 0.7, align: "middle" },
    { x: x + gap * 0.75, y: y - gap * 0.6, align: "start" },
    { x: x + gap * 0.75, y: y + gap * 0.6 + height * 0.6, align: "start" },
    { x: x - gap * 0.75, y: y - gap * 0.6, align: "end" },
    { x: x - gap * 0.75, y: y + gap * 0.6 + height * 0.6, align: "end" },
  ];
}

function boxesOf(marks: readonly ChartMark[]): Box[] {
  return marks.flatMap((mark) => {
    if (mark.kind === "text") return [boxOf(mark.x, mark.y, mark.align, mark.style, mark.text)];
    if ((mark.kind === "dot" && mark.r > 1.4) || mark.kind === "sign")
      return [{ left: mark.x - mark.r, right: mark.x + mark.r, top: mark.y - mark.r, bottom: mark.y + mark.r }];
    return [];
  });
}

/**
 * Places wishes in their order; one that finds no free place is left out.
 * @param taken marks whose boxes are taken already: larger dots, signs, figures of the grid
 */
export function placedLabels(page: ChartPage, wishes: readonly LabelWish[], taken: readonly ChartMark[]): ChartMark[] {
  const boxes = boxesOf(taken);
  const halfWidth = page.widthPx / 2 - page.marginPx - 4;
  const halfHeight = page.heightPx / 2 - page.marginPx - 4;
  const within = (box: Box) =>
    box.left > -halfWidth && box.right < halfWidth && box.top > -halfHeight && box.bottom < halfHeight;
  const placed: ChartMark[] = [];
  for (const wish of wishes) {
    for (const { x, y, align } of placesFor(wish)) {
      const box = boxOf(x, y, align, wish.style, wish.text);
      if (!within(box) || boxes.some((other) => meets(box, other))) continue;
      boxes.push(box);
      placed.push({ kind: "text", style: wish.style, x, y, align, text: wish.text });
      break;
    }
  }
  return placed;
}

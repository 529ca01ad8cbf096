/** What the print means: the scale of the dots, the signs used, the rings of the instruments, and a ruler. */
import { DEG, separationRad } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { dotRadiusPx } from "./content.ts";
import { barDeg } from "./frame.ts";
import { type ChartPage, ringRadiusPx } from "./page.ts";
import type { ChartMark, LineStyle, Sign } from "./types.ts";

const EXPLAINED_LINES: readonly LineStyle[] = ["figure", "asterism", "border", "way"];

export interface Legend {
  /** Whole magnitudes with the radius of their dots, the brightest first. */
  readonly dots: readonly { readonly magV: number; readonly r: number }[];
  /** Signs that stand on the page, each once, in the order of their first mark. */
  readonly signs: readonly Sign[];
  readonly lines: readonly LineStyle[];
  /** One bar of the frame, degrees and px. */
  readonly bar: { readonly deg: number; readonly px: number };
}

/** The legend of a page: only what the page uses. */
export function legendOf(page: ChartPage, marks: readonly ChartMark[]): Legend {
  const brightest = marks.reduce((least, mark) => (mark.kind === "dot" ? Math.min(least, mark.magV) : least), Infinity);
  const faintest = Math.floor(page.limitMag);
  const first = Math.max(-1, Math.min(faintest - 3, Math.round(brightest)));
  const dots = Array.from({ length: faintest - first + 1 }, (_, i) => first + i);
  const deg = barDeg(page);
  return {
    dots: dots.map((magV) => ({ magV, r: dotRadiusPx(magV, page.limitMag) })),
    signs: [...new Set(marks.flatMap((mark) => (mark.kind === "sign" ? [mark.sign] : [])))],
    lines: EXPLAINED_LINES.filter((style) => marks.some((mark) => mark.kind === "line" && mark.style === style)),
    bar: { deg, px: deg * page.pxPerDeg },
  };
}

/** The rings of those fields that the page holds whole, widest first; radii in px of the page. */
export function fieldRings<Field extends { readonly fieldDeg: number }>(
  page: ChartPage,
  fields: readonly Field[],
): (Field & { readonly r: number })[] {
  const room = Math.min(page.widthPx, page.heightPx) / 2 - page.marginPx;
  return fields
    .map((field) => ({ ...field, r: ringRadiusPx(page, field.fieldDeg) }))
    .filter(({ r }) => r <= room)
    .sort((a, b) => b.r - a.r);
}

/** A distance as a ruler reads it: degrees, and widths of a field. */
export function rulerReading(from: Dir, to: Dir, fieldDeg: number): { readonly deg: number; readonly fields: number } {
  const deg = separationRad(from, to) / DEG;
  return { deg, fields: deg / fieldDeg };
}

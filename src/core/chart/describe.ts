/** A sheet in words' stead: what is printed, and where it lies from the anchor, for those who hear the sheet. */
import { DEG, separationRad } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { type ChartPage, projectionOf } from "./page.ts";
import { type SheetView, screenFromPage } from "./sheetView.ts";
import type { ChartMark, DotMark, Sign } from "./types.ts";

export interface SheetThing {
  readonly what: "anchor" | "target" | "star" | "object";
  /** The printed name, or "". */
  readonly name: string;
  readonly sign?: Sign;
  readonly magV?: number;
  /** Distance in widths of the field, and the way there on the sheet as it lies: hours of a clock, 12 at the top. */
  readonly fields: number;
  readonly hour: number;
  readonly dir: Dir;
}

const BRIGHTEST_TOLD = 12;
const NEAR_TARGET_TOLD = 6;

/** Hours of a clock, 1 to 12, for a way on the screen (x right, y down). */
export function clockHour(dx: number, dy: number): number {
  const hour = Math.round((Math.atan2(dx, -dy) / (2 * Math.PI)) * 12);
  return ((hour + 11) % 12) + 1;
}

const apart = (a: { x: number; y: number }, b: { x: number; y: number }) => Math.hypot(a.x - b.x, a.y - b.y);

/** The dots worth telling of: the brightest of the page and the brightest about the target. */
function toldDots(page: ChartPage, marks: readonly ChartMark[], fieldDeg: number): DotMark[] {
  const dots = marks.filter((mark) => mark.kind === "dot").sort((a, b) => a.magV - b.magV);
  const target = marks.find((mark) => mark.kind === "sign" && mark.role === "target");
  const told = new Set(dots.slice(0, BRIGHTEST_TOLD));
  if (target?.kind === "sign") {
    const near = dots.filter((dot) => apart(dot, target) < (fieldDeg / 2) * page.pxPerDeg);
    for (const dot of near.slice(0, NEAR_TARGET_TOLD)) told.add(dot);
  }
  return [...told];
}

/**
 * What is printed, nearest first, measured from `from` (the anchor where the page has one, else the middle of the page).
 * @param fieldDeg the field that counts as one width
 */
export function describeSheet(
  page: ChartPage,
  marks: readonly ChartMark[],
  view: SheetView,
  fieldDeg: number,
  from?: { readonly x: number; readonly y: number },
): SheetThing[] {
  const { unproject } = projectionOf(page);
  const anchor = marks.find((mark) => mark.kind === "sign" && mark.role === "anchor");
  const origin = from ?? (anchor?.kind === "sign" ? anchor : { x: 0, y: 0 });
  const originDir = unproject(origin.x, origin.y);
  const start = screenFromPage(view, 1, origin.x, origin.y);
  const texts = marks.filter((mark) => mark.kind === "text" && mark.style !== "figureName" && mark.style !== "word");
  const nameAt = (mark: { x: number; y: number }) => {
    const text = texts.find((one) => one.kind === "text" && apart(one.of, mark) < 2.5);
    return text?.kind === "text" ? text.text : "";
  };
  const placed = (mark: { x: number; y: number }) => {
    const dir = unproject(mark.x, mark.y);
    const end = screenFromPage(view, 1, mark.x, mark.y);
    const fields = separationRad(originDir, dir) / DEG / fieldDeg;
    return { dir, fields, hour: clockHour(end.x - start.x, end.y - start.y), name: nameAt(mark) };
  };
  const signs = marks.flatMap((mark): SheetThing[] =>
    mark.kind === "sign" ? [{ what: mark.role ?? "object", sign: mark.sign, ...placed(mark) }] : [],
  );
  const stars = toldDots(page, marks, fieldDeg).map(
    (dot): SheetThing => ({ what: "star", magV: dot.magV, ...placed(dot) }),
  );
  const anchorDot = (thing: SheetThing) => thing.what === "star" && thing.fields < 0.01 && anchor && !from;
  return [...signs, ...stars].filter((thing) => !anchorDot(thing)).sort((a, b) => a.fields - b.fields);
}

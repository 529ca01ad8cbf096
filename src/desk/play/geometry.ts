/** Where things lie on the table: the play screen's layouts as plain numbers, CSS px of the window. */
import type { Box } from "./arcs.ts";

/**
 * `wide`: everything beside each other; `column`: barrel beside one column; `tall`: barrel over two columns; `phone`: one
 * thing at a time; `lying`: the field stays, beside it one thing at a time.
 */
export type LayoutKind = "wide" | "column" | "tall" | "phone" | "lying";
export type Page = "field" | "sheet";
/** Whose room the words have: before a hop nobody else's is needed, on a phone rows of help take the ladder's. */
export type Room = "usual" | "rows" | "briefing";
export interface Barrel {
  readonly x: number;
  readonly y: number;
  readonly fieldPx: number;
  readonly rimPx: number;
}
export interface PlayLayout {
  readonly kind: LayoutKind;
  /** Scale of barrel, ladder and sheet against the drawing of 1440 x 900. */
  readonly scale: number;
  /** Scale of lettering: never under .85. */
  readonly type: number;
  readonly barrel: Barrel;
  /** Null: the instruments stand as a row of names. `half`: the lower half lies beyond the window's edge. */
  readonly ladder: { readonly x: number; readonly y: number; readonly r: number; readonly half: boolean } | null;
  /** Unturned; its middle is what it turns about. */
  readonly sheet: Box;
  /** Words, hints and what else stands in lines. */
  readonly words: Box;
  /** One thing at a time: words and sheet share a place. */
  readonly turnsPages: boolean;
}
const DRAWN = { width: 1440, height: 900 } as const;
const LEAST_TYPE = 0.85;
const SHEET = { width: 424, height: 520 } as const;
/** Under this radius of the field the rim says less, and the claim takes more of it. */
export const SHORT_UNDER_PX = 210;
/** Half of the claim's arc, degrees, and its middle. */
export const CLAIM = { atDeg: 180, halfDeg: 21, phoneHalfDeg: 34 } as const;

export function layoutKind(width: number, height: number): LayoutKind {
  if (height < 620 && width > height * 1.15) return "lying";
  if (width < 760) return "phone";
  if (width < height) return "tall";
  return width < 1100 || width < height * 1.3 ? "column" : "wide";
}

const boxAt = (x: number, y: number, width: number, height: number): Box => ({
  x: Math.round(x),
  y: Math.round(y),
  width: Math.round(width),
  height: Math.round(height),
});
const barrelAt = (x: number, y: number, fieldPx: number, rimPx: number): Barrel => ({
  x: Math.round(x),
  y: Math.round(y),
  fieldPx: Math.round(fieldPx),
  rimPx: Math.round(rimPx),
});
const sheetAbout = (x: number, y: number, scale: number): Box =>
  boxAt(x - (SHEET.width * scale) / 2, y - (SHEET.height * scale) / 2, SHEET.width * scale, SHEET.height * scale);

function wide(width: number, height: number, room: Room): PlayLayout {
  const scale = Math.min(height / DRAWN.height, width / DRAWN.width);
  const type = Math.max(LEAST_TYPE, scale);
  const left = (width - DRAWN.width * scale) / 2;
  const top = (height - DRAWN.height * scale) / 2;
  const at = (x: number, y: number) => [left + x * scale, top + y * scale] as const;
  const wordsTop = top + (room === "briefing" ? 539 : 598) * scale;
  return {
    kind: "wide",
    scale,
    type,
    barrel: barrelAt(...at(452, 450), 372 * scale, 52 * scale),
    ladder: { x: Math.round(left + 919 * scale), y: Math.round(top + 748 * scale), r: 124 * scale, half: false },
    sheet: sheetAbout(...at(1190, 272), scale),
    words: boxAt(
      left + 1070 * scale,
      wordsTop,
      width - 30 * scale - left / 2 - (left + 1070 * scale),
      height - 12 - wordsTop,
    ),
    turnsPages: false,
  };
}

/** Room for the sheet's tools and the line that says how it lies, px; before the hop there are none. */
const SIDE_PX = 66;
const NO_SIDE_PX = 24;
const sidePx = (room: Room) => (room === "briefing" ? NO_SIDE_PX : SIDE_PX);

/** Under 1100 px: the barrel, and beside it sheet, instruments and words in one column. */
function column(width: number, height: number, room: Room): PlayLayout {
  const outer = Math.min((width - 24) * 0.31, (height - 150) / 2);
  const scale = outer / 424;
  const right = 24 + 2 * outer + 28;
  const sheetScale = Math.min((height * 0.4) / SHEET.height, (width - right + 30) / SHEET.width);
  const sheetRoom = SHEET.height * sheetScale;
  const wordsTop = sheetRoom + sidePx(room);
  return {
    kind: "column",
    scale,
    type: Math.max(LEAST_TYPE, scale),
    barrel: barrelAt(20 + outer, 84 + outer, 372 * scale, 52 * scale),
    ladder: null,
    sheet: sheetAbout((right + width) / 2, sheetRoom / 2 - 12, sheetScale),
    words: boxAt(right, wordsTop, width - 24 - right, height - 20 - wordsTop),
    turnsPages: false,
  };
}

/** A sheet of paper held upright: the barrel above, words and sheet below it. */
function tall(width: number, height: number): PlayLayout {
  const outer = Math.min((width - 40) / 2, height * 0.29);
  const scale = outer / 424;
  const below = 76 + 2 * outer + 20;
  const wordsWidth = width * 0.48;
  const sheetScale = Math.min((width - wordsWidth - 30) / SHEET.width, (height - below - SIDE_PX) / SHEET.height);
  return {
    kind: "tall",
    scale,
    type: Math.max(LEAST_TYPE, scale),
    barrel: barrelAt(width / 2, 76 + outer, 372 * scale, 52 * scale),
    ladder: null,
    sheet: sheetAbout(
      width - (SHEET.width * sheetScale) / 2 - 12,
      below + (SHEET.height * sheetScale) / 2 - 14,
      sheetScale,
    ),
    words: boxAt(24, below, wordsWidth - 12, height - below - 16),
    turnsPages: false,
  };
}

const PHONE = { width: 390, height: 844 } as const;

/** Room for the buttons at the ladder's sides, and for those at the window's edge where there is no ladder, px. */
const PHONE_TOOLS = { usual: 206, rows: 76, briefing: 16 } as const;

function phone(width: number, height: number, page: Page, room: Room): PlayLayout {
  const roomy = room !== "usual";
  const k = Math.min(width / PHONE.width, height / PHONE.height);
  const middle = width / 2;
  const ladderR = Math.min(196 * k, 240);
  const wordsTop = 448 * k;
  const open = page === "sheet";
  const sheetScale = Math.min((452 * width) / PHONE.width / SHEET.width, (560 * height) / PHONE.height / SHEET.height);
  const lowY = height - 144 * k;
  return {
    kind: "phone",
    scale: k,
    type: Math.max(LEAST_TYPE, Math.min(1.15, k)),
    barrel: open ? barrelAt(14 * k, lowY, 92 * k, 34 * k) : barrelAt(middle, 248 * k, 145 * k, 44 * k),
    ladder: roomy ? null : { x: Math.round(middle), y: Math.round(height + 8 * k), r: ladderR, half: true },
    sheet: sheetAbout(middle + 9 * k, 306 * (height / PHONE.height), sheetScale),
    words: boxAt(20, wordsTop, width - 40, height - wordsTop - PHONE_TOOLS[room] * (roomy ? 1 : k)),
    turnsPages: true,
  };
}

/** A phone lying down, or a large window at 200 %: the field at the left, and beside it words or sheet. */
function lying(width: number, height: number, room: Room): PlayLayout {
  const outer = Math.min(height / 2 - 5, width * 0.26);
  const rim = Math.min(52, Math.max(36, outer * 0.2));
  const right = 2 * outer + 34;
  const sheetScale = Math.min((height + 60) / SHEET.height, (width - right + 40) / SHEET.width);
  return {
    kind: "lying",
    scale: outer / 424,
    type: 1,
    barrel: barrelAt(10 + outer, height / 2, outer - rim, rim),
    ladder: null,
    sheet: sheetAbout((right + width) / 2, height / 2, sheetScale),
    words: boxAt(right, 50, width - 18 - right, height - 50 - (room === "briefing" ? 16 : 58)),
    turnsPages: true,
  };
}

/**
 * Lays out the play screen for a window and, where things come one at a time, for what is open.
 * @param room what the words have the room of
 */
export function playLayout(width: number, height: number, page: Page = "field", room: Room = "usual"): PlayLayout {
  const kind = layoutKind(width, height);
  if (kind === "wide") return wide(width, height, room);
  if (kind === "column") return column(width, height, room);
  if (kind === "tall") return tall(width, height);
  return kind === "phone" ? phone(width, height, page, room) : lying(width, height, room);
}

/** Lettering that finds a free place beside its star, or stays away. */
import type { Align, TextStyle } from "./types.ts";

/** A name wished at a place; `r` is the radius of what it stands beside, px. */
export type LabelWish = {
  readonly x: number;
  readonly y: number;
  readonly r: number;
  readonly style: TextStyle;
  readonly text: string;
  /** Written by the hand, not printed. */
  readonly tone?: "hand";
};
export type Box = { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };
/**
 * Something printed that lettering keeps off: a star's dot by its radius, so that large letters may lie over small dots; a
 * bit of a printed line, which letters cross only where there is no other place; a bit of the hand's trail, which names never
 * cross: they would be lost under it.
 */
export type Obstacle = Box & { readonly dotR?: number; readonly line?: boolean; readonly trail?: boolean };
/** Width of a text in px at its style's own size. */
export type Measure = (style: TextStyle, text: string) => number;
export type Placed = { readonly x: number; readonly y: number; readonly align: Align; readonly box: Box };

/** Height of a style's letters and their mean width, px. */
const SIZE: Readonly<Record<TextStyle, { height: number; width: number }>> = {
  starName: { height: 15, width: 7.2 },
  greek: { height: 16, width: 8.5 },
  number: { height: 12.5, width: 7 },
  figureName: { height: 13, width: 13.2 },
  gridFigure: { height: 11.5, width: 6.4 },
  word: { height: 14, width: 7.6 },
  note: { height: 15, width: 7.2 },
};

/** Wide enough to keep boxes apart where nobody can measure type. */
export const roughWidth: Measure = (style, text) => SIZE[style].width * text.length;

export const letterHeightPx = (style: TextStyle): number => SIZE[style].height;

export const boxesMeet = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** The box that a line of text fills, its baseline at y. */
export function textBox(x: number, y: number, align: Align, widthPx: number, heightPx: number): Box {
  const left = align === "start" ? x : align === "end" ? x - widthPx : x - widthPx / 2;
  return { left, right: left + widthPx, top: y - heightPx * 0.78, bottom: y + heightPx * 0.24 };
}

type Place = { readonly x: number; readonly y: number; readonly align: Align };
/** A figure's name may wander about its middle, the nearer the better. */
const NAME_OFFSETS = [0, -18, 18, -36, 36, -54, 54]
  .flatMap((dy) => [0, -24, 24, -48, 48].map((dx) => [dx, dy] as const))
  .sort(([ax, ay], [bx, by]) => ax * ax + ay * ay - bx * bx - by * by);
/** Spaced capitals are read over dots up to this radius, px; words of the hop over any, where there is no free place. */
const CAPITALS_OVER_PX = 2.4;
/** The own name of a bright star may lie over the faintest dots rather than be left out. */
const STAR_NAMES_OVER_PX = 1.7;

/** Places to try: words of the hop keep below their sign, names go right, left, above, below, then to the corners. */
function placesFor({ x, y, r, style }: LabelWish, height: number, roamPx: number): Place[] {
  const gap = r + 4;
  if (style === "figureName")
    return NAME_OFFSETS.filter(([dx, dy]) => Math.hypot(dx, dy) <= roamPx).map(([dx, dy]) => ({
      x: x + dx,
      y: y + dy,
      align: "middle" as const,
    }));
  const beside: Place[] = [
    { x: x + gap, y: y + height * 0.3, align: "start" },
    { x: x - gap, y: y + height * 0.3, align: "end" },
    { x, y: y - gap, align: "middle" },
    { x, y: y + gap + height * 0.7, align: "middle" },
  ];
  const corners: Place[] = [
    { x: x + gap * 0.75, y: y + gap * 0.6 + height * 0.6, align: "start" },
    { x: x + gap * 0.75, y: y - gap * 0.6, align: "start" },
    { x: x - gap * 0.75, y: y + gap * 0.6 + height * 0.6, align: "end" },
    { x: x - gap * 0.75, y: y - gap * 0.6, align: "end" },
  ];
  return style === "word" ? [...corners, ...beside] : [...beside, ...corners];
}

export type PlacingOptions = {
  readonly measure: Measure;
  /** Letters at this many times their own size. */
  readonly typeScale: number;
  /** A figure's name wanders no further from its middle: beyond, it would name another part of the sky. */
  readonly roamPx: number;
  /** Whether a box may hold letters; what the hand wrote brings its own contrast, and so needs no light to be read by. */
  readonly within: (box: Box, tone?: "hand") => boolean;
};

/**
 * How hard a place is sought: clear of all, over lines, for words of the hop and names of bright stars over dots, and for
 * words and notes over the trail, by their halo, rather than leave them out.
 */
type Pass = "clear" | "overLines" | "overDots" | "overTrail";
const PASSES: readonly Pass[] = ["clear", "overLines"];
const HARDER_PASSES: Partial<Record<TextStyle, readonly Pass[]>> = {
  starName: [...PASSES, "overDots"],
  word: [...PASSES, "overDots", "overTrail"],
  note: [...PASSES, "overTrail"],
};
const passesOf = (style: TextStyle) => HARDER_PASSES[style] ?? PASSES;

function counts(style: TextStyle, { dotR, line, trail }: Obstacle, pass: Pass): boolean {
  if (trail) return pass !== "overTrail";
  if (line) return pass === "clear";
  if (dotR === undefined) return true;
  if (style === "starName" && pass === "overDots") return dotR > STAR_NAMES_OVER_PX;
  if (style === "figureName") return dotR > CAPITALS_OVER_PX;
  return pass === "clear" || pass === "overLines" || style === "note";
}

/**
 * Places wishes in their order; one that finds no free place is null.
 * @param taken what is printed already: larger dots, signs, other lettering
 */
export function placeLabels(
  wishes: readonly LabelWish[],
  taken: readonly Obstacle[],
  { measure, typeScale, roamPx, within }: PlacingOptions,
): (Placed | null)[] {
  const obstacles = [...taken];
  return wishes.map((wish) => {
    const [width, height] = [measure(wish.style, wish.text) * typeScale, letterHeightPx(wish.style) * typeScale];
    const places = placesFor(wish, height, roamPx);
    for (const pass of passesOf(wish.style)) {
      for (const { x, y, align } of places) {
        const box = textBox(x, y, align, width, height);
        if (!within(box, wish.tone)) continue;
        if (obstacles.some((other) => counts(wish.style, other, pass) && boxesMeet(box, other))) continue;
        obstacles.push(box);
        return { x, y, align, box };
      }
    }
    return null;
  });
}

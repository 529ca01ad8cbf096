/** What a chart is made of: marks in px from the page's centre, x right, y down. */
import type { ObjectKind } from "#core/seams/index.ts";

export type LineStyle = "frame" | "frameInner" | "bar" | "grid" | "border" | "figure" | "asterism" | "way";
export type RingStyle = "fieldRing" | "eyepieceRing";
export type TextStyle = "starName" | "greek" | "number" | "figureName" | "gridFigure" | "word" | "note";
export type Sign = ObjectKind | "anchor" | "target";
export type Align = "start" | "middle" | "end";

export type DotMark = {
  readonly kind: "dot";
  readonly x: number;
  readonly y: number;
  readonly r: number;
  readonly magV: number;
};
export type LineMark = {
  readonly kind: "line";
  readonly style: LineStyle;
  readonly points: readonly number[];
  /** What a line of the net is called, and at which edge of the page its figure stands. */
  readonly figure?: { readonly text: string; readonly edge: "right" | "bottom" };
};
export type RingMark = {
  readonly kind: "ring";
  readonly style: RingStyle;
  readonly x: number;
  readonly y: number;
  readonly r: number;
};
export type SignMark = {
  readonly kind: "sign";
  readonly sign: Sign;
  /** What the hop makes of it; absent for the other objects of the page. */
  readonly role?: "anchor" | "target";
  readonly x: number;
  readonly y: number;
  readonly r: number;
  readonly axisRad: number;
  readonly flat: number;
};
export type TextMark = {
  readonly kind: "text";
  readonly style: TextStyle;
  readonly x: number;
  readonly y: number;
  readonly align: Align;
  readonly text: string;
  /** What the text belongs to: a place and the radius to keep clear of; a turned sheet finds the text's place anew. */
  readonly of: { readonly x: number; readonly y: number; readonly r: number };
  /** False where the page, north up, has no room for it; a turned or nearer sheet may have. */
  readonly placed: boolean;
  /** Written by the hand, not printed. */
  readonly tone?: "hand";
};
export type ChartMark = DotMark | LineMark | RingMark | SignMark | TextMark;

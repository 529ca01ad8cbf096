/** What a chart is made of: marks in px from the page's centre, x right, y down. */
import type { ObjectKind } from "#core/seams/index.ts";

export type LineStyle = "frame" | "frameInner" | "bar" | "grid" | "figure" | "asterism" | "way";
export type TextStyle = "starName" | "greek" | "number" | "figureName" | "gridFigure" | "word";
export type Sign = ObjectKind | "anchor" | "target";
export type ChartMark =
  | { readonly kind: "dot"; readonly x: number; readonly y: number; readonly r: number; readonly magV: number }
  | { readonly kind: "line"; readonly style: LineStyle; readonly points: readonly number[] }
  | {
      readonly kind: "ring";
      readonly style: "fieldRing" | "eyepieceRing";
      readonly x: number;
      readonly y: number;
      readonly r: number;
    }
  | {
      readonly kind: "sign";
      readonly sign: Sign;
      readonly x: number;
      readonly y: number;
      readonly r: number;
      readonly axisRad: number;
      readonly flat: number;
    }
  | {
      readonly kind: "text";
      readonly style: TextStyle;
      readonly x: number;
      readonly y: number;
      readonly align: "start" | "middle" | "end";
      readonly text: string;
    };

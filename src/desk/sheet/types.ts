/** What the sheet is given, and what it tells. */
import type { Signal } from "@preact/signals";
import type { ChartPage } from "#core/chart/page.ts";
import type { SheetView } from "#core/chart/sheetView.ts";
import type { ChartMark, RingStyle } from "#core/chart/types.ts";
import type { Dir } from "#core/seams/index.ts";

export type { SheetView } from "#core/chart/sheetView.ts";
/** What a finger or the mouse does on the paper. */
export type SheetMode = "turn" | "pin" | "pencil" | "pan" | "ruler";

/** White on the paper: what the learner's hand did. */
export interface SheetHand {
  readonly ring?: { readonly dir: Dir; readonly fieldDeg: number } | null;
  readonly pointing?: Dir | null;
  readonly trail?: readonly Dir[];
  readonly pins: readonly { readonly at: Dir; readonly truth?: Dir | undefined }[];
  readonly pencil: readonly (readonly Dir[])[];
}
/** Words at a place: a stop of the trail (a dot and a letter), a leg of the way, or the trail's own name. */
export interface SheetNote {
  readonly at: Dir;
  readonly text: string;
  readonly kind: "stop" | "leg" | "trail";
}
export interface SheetProps {
  readonly page: ChartPage;
  readonly marks: readonly ChartMark[];
  /** Written by the sheet as well as by its host. */
  readonly view: Signal<SheetView>;
  readonly mode: Signal<SheetMode>;
  readonly hand: SheetHand;
  /** Ways printed in ink, each from mark to mark, and rings about places. */
  readonly ways?: readonly (readonly Dir[])[];
  readonly rings?: readonly { readonly at: Dir; readonly fieldDeg: number; readonly style: RingStyle }[];
  readonly notes?: readonly SheetNote[];
  /** Low while the hand is on the field. */
  readonly lamp: "low" | "full";
  readonly lettering: "level" | "withPaper";
  /** Size of the paper on the screen, CSS px; the page's own proportions. */
  readonly sizePx: { readonly width: number; readonly height: number };
  /** The hopping field: what distances are counted in. */
  readonly fieldDeg: number;
  /** What the page is about, for those who hear it. */
  readonly title: string;
  /** Stars that prove agreement, joined for a second; a new array is a new moment. */
  readonly proof?: readonly Dir[] | null;
  /** The legend lies open, with the rings of these instruments on the paper. */
  readonly legend?: Signal<boolean>;
  readonly instruments?: readonly { readonly name: string; readonly fieldDeg: number }[];
  readonly reducedMotion?: boolean;
  /** Called on every change by hand; `done` at the end of a gesture. */
  readonly onView?: (view: SheetView, done: boolean) => void;
  readonly onPin?: (dir: Dir) => void;
  readonly onPencil?: (dirs: readonly Dir[]) => void;
  readonly onRubOut?: () => void;
}

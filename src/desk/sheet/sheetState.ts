/** What a sheet on the screen holds between drawings, and what its parts share. */
import { type Signal, signal } from "@preact/signals";
import type { SheetThing } from "#core/chart/describe.ts";
import type { PagePoint } from "#core/chart/page.ts";
import { screenFromPage } from "#core/chart/sheetView.ts";
import type { TextMark } from "#core/chart/types.ts";
import type { SheetLook } from "./look.ts";
import type { SheetProps, SheetView } from "./types.ts";

export type Point = Readonly<PagePoint>;
export interface SheetState {
  /** How far the paper lies from its place, px of the screen: turning about a ring takes it along. */
  readonly offset: Signal<Point>;
  /** A gesture is under way. */
  readonly held: Signal<boolean>;
  /** The paper moves, by hand or by itself: lettering is away. */
  readonly moving: Signal<boolean>;
  /** The cross that keys move, and the line being drawn or measured; px of the page. */
  readonly cross: Signal<Point | null>;
  readonly stroke: Signal<readonly Point[] | null>;
  readonly letters: Signal<readonly TextMark[]>;
  readonly things: Signal<readonly SheetThing[]>;
  readonly look: Signal<SheetLook | null>;
  /** Where a dim lamp lights the paper: px from the paper's middle, as it lies north up. */
  readonly lampAt: Signal<Point>;
  /** What the sheet says aloud. */
  readonly said: Signal<string>;
}
const MIDDLE: Point = { x: 0, y: 0 };

export const createSheetState = (): SheetState => ({
  offset: signal(MIDDLE),
  held: signal(false),
  moving: signal(false),
  cross: signal<Point | null>(null),
  stroke: signal<readonly Point[] | null>(null),
  letters: signal<readonly TextMark[]>([]),
  things: signal<readonly SheetThing[]>([]),
  look: signal<SheetLook | null>(null),
  lampAt: signal(MIDDLE),
  said: signal(""),
});

/** Width of a page that the lamp's pools are given for, px. */
const POOL_PAGE_PX = 424;
const LEAST_TYPE_SCALE = 0.85;

export const pxPerPagePx = ({ sizePx, page }: Pick<SheetProps, "sizePx" | "page">): number =>
  sizePx.width / page.widthPx;
/** Px of the screen to a px of the lamp's pool. */
export const poolScale = ({ sizePx }: Pick<SheetProps, "sizePx">): number => sizePx.width / POOL_PAGE_PX;
/** Letters follow the sheet's size, but stay readable. */
export const typeScaleOf = (props: Pick<SheetProps, "sizePx" | "page">): number =>
  Math.max(LEAST_TYPE_SCALE, pxPerPagePx(props));

/** The view of the bare paper: as it lies, its print left out. */
export const paperView = ({ turnRad, flipped }: SheetView): SheetView => ({
  turnRad,
  flipped,
  scale: 1,
  panX: 0,
  panY: 0,
});
/** From the paper (px of the screen from its middle, north up) to the screen (px from the sheet's middle, unmoved). */
export const screenFromPaper = (view: SheetView, { x, y }: Point): Point => screenFromPage(paperView(view), 1, x, y);

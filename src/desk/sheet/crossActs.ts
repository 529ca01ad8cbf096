/** The cross that keys move over the paper: what it stands by is said, and Enter sets what the mode sets. */
import { describeSheet } from "#core/chart/describe.ts";
import { rulerReading } from "#core/chart/legend.ts";
import { projectionOf } from "#core/chart/page.ts";
import { pageFromScreen, screenFromPage } from "#core/chart/sheetView.ts";
import type { Dir } from "#core/seams/index.ts";
import { type Point, pxPerPagePx, type SheetState } from "./sheetState.ts";
import { crossWords, rulerWords } from "./sheetWords.ts";
import type { SheetProps } from "./types.ts";
import { saySheet } from "./words.ts";

/** Steps in fields: one press, and a key held down. */
const STEP = 0.05;
const RUN = 0.15;
/** A line shorter than this, px of the page, is only begun. */
const SHORTEST_PX = 1;

export const dirOnPage = ({ page }: Pick<SheetProps, "page">, { x, y }: Point): Dir =>
  projectionOf(page).unproject(x, y);

export interface Cross {
  /** A step right and down on the screen, whatever way the paper lies. */
  move(right: number, down: number, far: boolean): void;
  set(): void;
  /** Says how far two places of the page are apart. */
  read(from: Point, to: Point): void;
}

export function createCross(
  latest: () => SheetProps,
  state: SheetState,
  paper: { readonly printed: (at: Point) => boolean; readonly light: (at: Point) => void },
): Cross {
  const goTo = (to: Point) => {
    const { page, marks, view, fieldDeg } = latest();
    state.cross.value = to;
    const begun = state.stroke.value;
    if (begun?.length === 2) state.stroke.value = [begun[0]!, to];
    state.said.value = crossWords(describeSheet(page, marks, view.value, fieldDeg, to));
    const { x, y } = screenFromPage(view.value, pxPerPagePx(latest()), to.x, to.y);
    paper.light({ x: x + state.offset.value.x, y: y + state.offset.value.y });
  };
  /** Where it first stands: in the field's ring, or in the middle of what is printed. */
  const start = (): Point => {
    const { page, view, hand } = latest();
    const at = { x: view.value.panX, y: view.value.panY };
    if (hand.ring) projectionOf(page).project(hand.ring.dir, at);
    return at;
  };
  const pin = (at: Point) => {
    latest().onPin?.(dirOnPage(latest(), at));
    state.cross.value = null;
    state.said.value = saySheet("pinSet");
  };
  const line = (at: Point) => {
    const begun = state.stroke.value;
    if (begun?.length !== 2 || Math.hypot(begun[0]!.x - at.x, begun[0]!.y - at.y) < SHORTEST_PX) {
      state.stroke.value = [at, at];
      state.said.value = saySheet("lineBegun");
      return;
    }
    const from = begun[0]!;
    if (latest().mode.value === "ruler") {
      // A third place: the line is done, and the cross leaves it as it is.
      state.stroke.value = [from, at, at];
      read(from, at);
      return;
    }
    state.stroke.value = null;
    latest().onPencil?.([from, at].map((place) => dirOnPage(latest(), place)));
    state.said.value = saySheet("lineSet");
  };
  const read = (from: Point, to: Point) => {
    const [a, b] = [dirOnPage(latest(), from), dirOnPage(latest(), to)];
    state.said.value = rulerWords(rulerReading(a, b, latest().fieldDeg));
  };
  return {
    read,
    move(right, down, far) {
      const { page, view, fieldDeg } = latest();
      const k = pxPerPagePx(latest());
      const from = state.cross.value ?? start();
      const step = (far ? RUN : STEP) * fieldDeg * page.pxPerDeg * k * view.value.scale;
      const on = screenFromPage(view.value, k, from.x, from.y);
      const to = pageFromScreen(view.value, k, on.x + right * step, on.y + down * step);
      if (paper.printed(to)) goTo(to);
    },
    set() {
      const at = state.cross.value;
      if (!at) goTo(start());
      else if (latest().mode.value === "pin") pin(at);
      else line(at);
    },
  };
}

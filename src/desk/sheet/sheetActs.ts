/** What can be done with a sheet, by whatever means. */
import { projectionOf, ringRadiusPx } from "#core/chart/page.ts";
import { clampedView, pageFromScreen, pannedBy, screenFromPage, zoomedAbout } from "#core/chart/sheetView.ts";
import type { Dir } from "#core/seams/index.ts";
import { createCross, dirOnPage } from "./crossActs.ts";
import type { SheetKeyAct } from "./sheetKeys.ts";
import { type Point, paperView, pxPerPagePx, type SheetState } from "./sheetState.ts";
import type { SheetProps, SheetView } from "./types.ts";
import { saySheet } from "./words.ts";

export interface SheetActs {
  change(view: SheetView, done: boolean): void;
  pivot(): Point & { readonly r: number };
  canPan(): boolean;
  turnBy(angleRad: number, about: Point): void;
  zoomBy(factor: number, about: Point, done: boolean): void;
  panBy(dx: number, dy: number): void;
  held(on: boolean): void;
  tap(at: Point): void;
  stroke(points: readonly Point[] | null, done: boolean): void;
  key(act: SheetKeyAct): void;
  /** Brings a dim lamp to a place of the screen. */
  light(at: Point): void;
}
/** The paper keeps within so many px of its place when it is let go. */
const MOST_OFFSET_PX = 60;
/** Without a ring, the part of the paper's width about its middle in which a drag moves the print. */
const PAN_SHARE = 0.3;
const PAN_STEP_PX = 40;
export function createSheetActs(latest: () => SheetProps, state: SheetState): SheetActs {
  const k = () => pxPerPagePx(latest());
  const toPage = ({ x, y }: Point): Point => {
    const { offset } = state;
    return pageFromScreen(latest().view.value, k(), x - offset.value.x, y - offset.value.y);
  };
  const printed = ({ x, y }: Point): boolean => {
    const { page, view } = latest();
    const { scale, panX, panY } = view.value;
    const [halfX, halfY] = [page.widthPx / 2 - page.marginPx, page.heightPx / 2 - page.marginPx];
    return Math.abs(x - panX) * scale <= halfX && Math.abs(y - panY) * scale <= halfY;
  };
  const dirAt = (at: Point): Dir => dirOnPage(latest(), at);
  const cross = createCross(latest, state, { printed, light: (at) => acts.light(at) });

  const acts: SheetActs = {
    change(view, done) {
      const { page, view: signal, onView } = latest();
      signal.value = clampedView(page, view);
      onView?.(signal.value, done);
    },
    canPan: () => latest().view.value.scale > 1.01,
    pivot() {
      const { page, hand, view, sizePx } = latest();
      const offset = state.offset.value;
      if (!hand.ring) return { ...offset, r: PAN_SHARE * sizePx.width };
      const at = { x: 0, y: 0 };
      projectionOf(page).project(hand.ring.dir, at);
      const { x, y } = screenFromPage(view.value, k(), at.x, at.y);
      const r = ringRadiusPx(page, hand.ring.fieldDeg) * view.value.scale * k();
      return { x: x + offset.x, y: y + offset.y, r: Math.min(r, 0.45 * sizePx.width) };
    },
    turnBy(angleRad, about) {
      const { view } = latest();
      const { x, y } = state.offset.value;
      const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)];
      const [dx, dy] = [x - about.x, y - about.y];
      state.offset.value = { x: about.x + dx * c - dy * s, y: about.y + dx * s + dy * c };
      acts.change({ ...view.value, turnRad: view.value.turnRad + angleRad }, false);
    },
    zoomBy(factor, about, done) {
      const { page, view } = latest();
      const { x, y } = state.offset.value;
      acts.change(zoomedAbout(page, view.value, k(), about.x - x, about.y - y, view.value.scale * factor), done);
    },
    panBy(dx, dy) {
      const { page, view } = latest();
      acts.change(pannedBy(page, view.value, k(), dx, dy), false);
    },
    held(on) {
      if (!on) {
        const { x, y } = state.offset.value;
        const far = Math.hypot(x, y) / (MOST_OFFSET_PX * k());
        if (far > 1) state.offset.value = { x: x / far, y: y / far };
      }
      state.held.value = on;
      if (!on) acts.change(latest().view.value, true);
    },
    tap(at) {
      acts.light(at);
      const { mode, onPin } = latest();
      const place = toPage(at);
      if (mode.value !== "pin" || !printed(place)) return;
      onPin?.(dirAt(place));
      state.cross.value = null;
      state.said.value = saySheet("pinSet");
    },
    stroke(points, done) {
      const { mode, onPencil } = latest();
      const line = points?.map(toPage).filter(printed) ?? [];
      const ruler = mode.value === "ruler";
      // A reading stays until the next one; a pencil line goes to the host.
      state.stroke.value = line.length > 1 && (ruler || !done) ? line : null;
      if (line.length < 2) return;
      if (ruler) cross.read(line[0]!, line.at(-1)!);
      else if (done) {
        onPencil?.(line.map(dirAt));
        state.said.value = saySheet("lineSet");
      }
    },
    light(at) {
      if (!state.look.value?.dim) return;
      const { x, y } = state.offset.value;
      const { page, view } = latest();
      const place = pageFromScreen(paperView(view.value), k(), at.x - x, at.y - y);
      const within = Math.abs(place.x) < page.widthPx / 2 && Math.abs(place.y) < page.heightPx / 2;
      if (within) state.lampAt.value = { x: place.x * k(), y: place.y * k() };
    },
    key(act) {
      keyActs(act);
    },
  };

  function keyActs(act: SheetKeyAct) {
    const { view, mode, onRubOut } = latest();
    if (act.kind === "turn")
      acts.change({ ...view.value, turnRad: view.value.turnRad + (act.byDeg * Math.PI) / 180 }, true);
    else if (act.kind === "flip") acts.change({ ...view.value, flipped: !view.value.flipped }, true);
    else if (act.kind === "zoom") acts.zoomBy(act.factor, acts.pivot(), true);
    else if (act.kind === "pan") acts.panBy(-act.right * PAN_STEP_PX, -act.down * PAN_STEP_PX);
    else if (act.kind === "cross") cross.move(act.right, act.down, act.far);
    else if (act.kind === "set") cross.set();
    else if (act.kind === "rubOut") onRubOut?.();
    else mode.value = act.mode;
  }
  return acts;
}

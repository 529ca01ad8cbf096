/** The raster: paper and print on one canvas, painted when the print, its scale, the size or the light changes, never in a turn. */
import { useSignalEffect } from "@preact/signals";
import type { RefObject } from "preact";
import { useEffect, useLayoutEffect, useMemo, useRef } from "preact/hooks";
import { clippedToFrame } from "#core/chart/clip.ts";
import { projectionOf, ringRadiusPx } from "#core/chart/page.ts";
import type { ChartMark } from "#core/chart/types.ts";
import { readableShare, readLook, type SheetLook, sameLook } from "./look.ts";
import { paintGround } from "./paintGround.ts";
import { paintPrint } from "./paintPrint.ts";
import { poolScale, pxPerPagePx, type SheetState } from "./sheetState.ts";
import type { SheetProps } from "./types.ts";

/**
 * Px of the canvas to a px of the page. Twice the screen's own where that is coarse: a turned raster is read between its
 * px, and hairlines of one px would come and go. More than that brings nothing to see and costs on phones.
 */
const PIXEL_RATIO = 2;
/** Edges in the tone of the paper go a little beyond what can be read by the lamp, not to where they would shine. */
const EDGES_REACH = 1.2;
/** The way's dashes stop short of its marks. */
const SHORT_PX = 11;

/** What the host prints over the page: ways and rings, in ink. */
export function overprint({ page, ways = [], rings = [] }: SheetProps): ChartMark[] {
  const projection = projectionOf(page);
  const place = (dir: Parameters<typeof projection.project>[0]) => {
    const out = { x: 0, y: 0 };
    return projection.project(dir, out) ? out : null;
  };
  const marks: ChartMark[] = [];
  for (const way of ways)
    way.slice(1).forEach((to, i) => {
      const [a, b] = [place(way[i]!), place(to)];
      const length = a && b ? Math.hypot(b.x - a.x, b.y - a.y) : 0;
      if (!a || !b || length < 2 * SHORT_PX) return;
      const short = (t: number) => ({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t });
      const points = clippedToFrame(page, short(SHORT_PX / length), short(1 - SHORT_PX / length));
      if (points) marks.push({ kind: "line", style: "way", points });
    });
  for (const { at, fieldDeg, style } of rings) {
    const middle = place(at);
    if (middle) marks.push({ kind: "ring", style, ...middle, r: ringRadiusPx(page, fieldDeg) });
  }
  return marks;
}

function paint(canvas: HTMLCanvasElement, props: SheetProps, state: SheetState, look: SheetLook, over: ChartMark[]) {
  const ratio = PIXEL_RATIO;
  const [width, height] = [Math.round(props.sizePx.width * ratio), Math.round(props.sizePx.height * ratio)];
  if (canvas.width !== width || canvas.height !== height) [canvas.width, canvas.height] = [width, height];
  // Kept by the processor: an accelerated canvas is a layer of its own for as long as it is shown. Not `alpha: false`, though
  // all of it is painted: Chromium takes such a canvas to hide what lies behind as many CSS px as it has px, twice the paper,
  // and where the processor puts the page together, a strip of sky under the sheet stays black. The paper's own ground hides it.
  const ctx = canvas.getContext("2d", { willReadFrequently: true })!;
  const lamp = look.dim ? state.lampAt.value : { x: 0, y: 0 };
  paintGround(ctx, look, { x: width / 2 + lamp.x * ratio, y: height / 2 + lamp.y * ratio }, ratio * poolScale(props));
  const dots = props.marks.findIndex((mark) => mark.kind === "dot");
  const at = dots < 0 ? props.marks.length : dots;
  const marks = [...props.marks.slice(0, at), ...over, ...props.marks.slice(at)];
  const reach = readableShare(look.pool, look.dim) * look.pool.radiusPx * poolScale(props);
  const k = pxPerPagePx(props);
  const lit = (x: number, y: number) => Math.hypot(x * k - lamp.x, y * k - lamp.y) < reach * EDGES_REACH;
  paintPrint(ctx, props.page, marks, props.view.value, ratio * k, { ...look, lit });
}

/** Keeps the canvas painted. */
export function usePaper(ref: RefObject<HTMLCanvasElement | null>, props: SheetProps, state: SheetState): void {
  const latest = useRef(props);
  latest.current = props;
  const frame = useRef(0);
  const over = useMemo(() => overprint(props), [props.page, JSON.stringify([props.ways, props.rings])]);
  const latestOver = useRef(over);
  latestOver.current = over;
  const repaint = useMemo(
    () => () => {
      frame.current ||= requestAnimationFrame(() => {
        frame.current = 0;
        const look = state.look.peek();
        if (ref.current && look) paint(ref.current, latest.current, state, look, latestOver.current);
      });
    },
    [state, ref],
  );
  useLayoutEffect(() => {
    const read = () => {
      const look = readLook(document.documentElement);
      const before = state.look.peek();
      if (!before || !sameLook(before, look)) state.look.value = look;
    };
    read();
    // The lamp is an attribute of the page, its brightness a style of it.
    const watch = new MutationObserver(read);
    watch.observe(document.documentElement, { attributes: true, attributeFilter: ["data-lamp", "style", "class"] });
    return () => {
      watch.disconnect();
      cancelAnimationFrame(frame.current);
      frame.current = 0;
    };
  }, [state, repaint]);
  useEffect(repaint, [props.page, props.marks, over, props.sizePx.width, props.sizePx.height]);
  const printed = useRef("");
  useSignalEffect(() => {
    const { scale, panX, panY } = latest.current.view.value;
    const { look, lampAt } = state;
    const now = JSON.stringify([scale, panX, panY, lampAt.value, look.value]);
    if (now === printed.current) return;
    printed.current = now;
    repaint();
  });
}

/** How the paper lies on the screen: transforms while it moves, lettering laid when it rests. */
import { useSignalEffect } from "@preact/signals";
import type { RefObject } from "preact";
import { useEffect, useMemo, useRef } from "preact/hooks";
import { describeSheet } from "#core/chart/describe.ts";
import type { Box, LabelWish } from "#core/chart/labels.ts";
import { fieldRings, rulerReading } from "#core/chart/legend.ts";
import { layLetters } from "#core/chart/letters.ts";
import { projectionOf } from "#core/chart/page.ts";
import { readableShare } from "./look.ts";
import { forgetWidths, measureIn } from "./measure.ts";
import { type Point, poolScale, pxPerPagePx, type SheetState, screenFromPaper, typeScaleOf } from "./sheetState.ts";
import { rulerWords } from "./sheetWords.ts";
import type { SheetProps } from "./types.ts";

/** How long the paper takes by itself, ms: to flip, and to come to rest after a step. */
const FLIP_MS = 360;
const REST_MS = 180;
const AFTER_HAND_MS = 40;
/** Lettering gives way to the trail once that has grown no more for so long. */
const AFTER_TRAIL_MS = 300;

/** Words of the moment: notes, names of the rings, the ruler's reading. */
function momentWishes(props: SheetProps, state: SheetState): LabelWish[] {
  const { page, notes = [], legend, instruments = [], mode, fieldDeg } = props;
  const { project, unproject } = projectionOf(page);
  const place = (dir: Parameters<typeof project>[0]) => {
    const out = { x: 0, y: 0 };
    project(dir, out);
    return out;
  };
  const wishes: LabelWish[] = notes.map(({ at, text, kind }) => ({
    ...place(at),
    r: kind === "stop" ? 6 : 4,
    style: kind === "stop" ? "word" : "note",
    text,
    ...(kind === "leg" ? {} : { tone: "hand" as const }),
  }));
  if (legend?.value) {
    const at = place(fieldsAt(props, unproject));
    for (const { name, r } of fieldRings(page, instruments))
      wishes.push({ x: at.x, y: at.y - r, r: 0, style: "note", text: name });
  }
  const line = state.stroke.value;
  if (mode.value === "ruler" && line && line.length > 1) {
    const [from, to] = [line[0]!, line.at(-1)!];
    const reading = rulerReading(unproject(from.x, from.y), unproject(to.x, to.y), fieldDeg);
    const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    wishes.push({ ...middle, r: 4, style: "word", text: rulerWords(reading), tone: "hand" });
  }
  return wishes;
}

/** What the legend's rings stand about: the field's ring, else the anchor, else the middle of the page. */
export function fieldsAt(
  { hand, marks, page }: SheetProps,
  unproject = projectionOf(page).unproject,
): SheetProps["page"]["centre"] {
  if (hand.ring) return hand.ring.dir;
  const anchor = marks.find((mark) => mark.kind === "sign" && mark.role === "anchor");
  return anchor?.kind === "sign" ? unproject(anchor.x, anchor.y) : page.centre;
}

/** The trail as far as it lies on the page. */
function trailOnPage({ page, hand }: SheetProps): Point[] {
  const { project } = projectionOf(page);
  return (hand.trail ?? []).flatMap((dir) => {
    const at = { x: 0, y: 0 };
    return project(dir, at) ? [at] : [];
  });
}

/** The window about the sheet's middle, where the sheet runs out of it: on a phone it does. */
function windowAbout(sheet: Element | null | undefined, { x, y }: Point): Box | undefined {
  if (!sheet) return undefined;
  const { left, top, width, height } = sheet.getBoundingClientRect();
  const [cx, cy] = [left + width / 2 + x, top + height / 2 + y];
  // A page that scrolls may bring what is above or below into view.
  const scrolls = document.documentElement.scrollHeight > innerHeight;
  const [up, down] = scrolls ? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] : [-cy, innerHeight - cy];
  return { left: -cx, right: innerWidth - cx, top: up, bottom: down };
}

function lay(props: SheetProps, state: SheetState, letters: Element | null): void {
  const look = state.look.peek();
  if (!look) return;
  const { page, marks, lettering, lamp, fieldDeg } = props;
  const view = props.view.value;
  const laid = lettering === "withPaper" ? { ...view, turnRad: 0 } : view;
  const pool = lamp === "low" && !look.dim ? look.poolLow : look.pool;
  const lampAt = look.dim ? screenFromPaper(laid, state.lampAt.value) : { x: 0, y: 0 };
  const radiusPx = readableShare(pool, look.dim) * pool.radiusPx * poolScale(props);
  const options = {
    measure: measureIn(look),
    pxPerPagePx: pxPerPagePx(props),
    typeScale: typeScaleOf(props),
    lit: { ...lampAt, radiusPx },
    trail: trailOnPage(props),
    shown: lettering === "level" ? windowAbout(letters?.parentElement, state.offset.peek()) : undefined,
  };
  state.letters.value = layLetters(page, marks, laid, options, momentWishes(props, state));
  state.things.value = describeSheet(page, marks, view, fieldDeg);
}

const lettersRad = ({ lettering }: SheetProps, paperRad: number) => (lettering === "withPaper" ? paperRad : 0);

function place(element: HTMLElement | SVGSVGElement | null, { x, y }: Point, turnRad: number): void {
  if (!element) return;
  element.style.translate = `${x}px ${y}px`;
  element.style.rotate = `${turnRad}rad`;
}

export interface SheetParts {
  readonly paper: RefObject<HTMLElement | null>;
  readonly letters: RefObject<SVGSVGElement | null>;
}

/** Moves the paper with its view and lays the lettering when it rests. */
export function useLie(parts: SheetParts, props: SheetProps, state: SheetState): void {
  const latest = useRef(props);
  latest.current = props;
  const shown = useRef({ turnRad: Number.NaN, flipped: false });
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const settle = useMemo(
    () => (afterMs: number) => {
      clearTimeout(timer.current);
      const rest = () => {
        // Letters that keep level wait where they were, unseen: a layer that moves along is drawn anew each time.
        place(parts.letters.current, state.offset.peek(), lettersRad(latest.current, shown.current.turnRad));
        lay(latest.current, state, parts.letters.current);
        state.moving.value = false;
      };
      if (afterMs === 0) rest();
      else timer.current = setTimeout(rest, afterMs);
    },
    [state],
  );
  useSignalEffect(() => {
    const { view, reducedMotion, lettering } = latest.current;
    const { turnRad, flipped } = view.value;
    const offset = state.offset.value;
    const held = state.held.value;
    const before = shown.current;
    const first = Number.isNaN(before.turnRad);
    // The nearer way round, whatever number the view has.
    const step = first
      ? 0
      : turnRad - before.turnRad - 2 * Math.PI * Math.round((turnRad - before.turnRad) / (2 * Math.PI));
    const shownRad = first ? turnRad : before.turnRad + step;
    const flips = !first && flipped !== before.flipped;
    shown.current = { turnRad: shownRad, flipped };
    place(parts.paper.current, offset, shownRad);
    if (parts.paper.current) parts.paper.current.style.scale = flipped ? "-1 1" : "1 1";
    if (lettering === "withPaper") place(parts.letters.current, offset, shownRad);
    if (first) return settle(0);
    if (lettering === "level" || flips) state.moving.value = true;
    if (held) return clearTimeout(timer.current);
    settle(reducedMotion ? 0 : flips ? FLIP_MS : Math.abs(step) > 0 ? REST_MS : AFTER_HAND_MS);
  });
  const { page, marks, lettering, lamp, sizePx } = props;
  // Hosts give these anew on every drawing.
  const moment = JSON.stringify([props.notes, props.instruments]);
  useEffect(() => {
    if (!state.moving.peek()) lay(latest.current, state, parts.letters.current);
  }, [page, marks, lettering, lamp, sizePx.width, sizePx.height, moment]);
  const trailPoints = props.hand.trail?.length ?? 0;
  useEffect(() => {
    const after = setTimeout(() => {
      if (!state.moving.peek()) lay(latest.current, state, parts.letters.current);
    }, AFTER_TRAIL_MS);
    return () => clearTimeout(after);
  }, [trailPoints]);
  const relaid = useRef<ReturnType<typeof setTimeout>>(undefined);
  useSignalEffect(() => {
    void [state.look.value, state.lampAt.value, state.stroke.value, latest.current.legend?.value];
    clearTimeout(relaid.current);
    relaid.current = setTimeout(() => {
      if (!state.moving.peek()) lay(latest.current, state, parts.letters.current);
    }, AFTER_HAND_MS);
  });
  useEffect(() => {
    const fontsCame = () => {
      forgetWidths();
      settle(0);
    };
    document.fonts.addEventListener("loadingdone", fontsCame);
    return () => {
      document.fonts.removeEventListener("loadingdone", fontsCame);
      clearTimeout(timer.current);
      clearTimeout(relaid.current);
    };
  }, [settle]);
}

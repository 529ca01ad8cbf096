/** The sheet: a chart on paper that is turned, flipped, brought nearer, pinned and drawn on. */
import { effect, useComputed } from "@preact/signals";
import { useEffect, useId, useMemo, useRef } from "preact/hooks";
import { createGestures } from "./gestures.ts";
import { HandMarks } from "./HandMarks.tsx";
import { Legend } from "./Legend.tsx";
import { Letters } from "./Letters.tsx";
import { listenToPaper } from "./listen.ts";
import { dimming, type SheetLook } from "./look.ts";
import { createSheetActs } from "./sheetActs.ts";
import { sheetActOfKey } from "./sheetKeys.ts";
import { createSheetState, poolScale, pxPerPagePx, type SheetState, typeScaleOf } from "./sheetState.ts";
import { thingWords } from "./sheetWords.ts";
import type { SheetProps } from "./types.ts";
import { fieldsAt, useLie } from "./useLie.ts";
import { usePaper } from "./usePaper.ts";
import { saySheet } from "./words.ts";

const LAMP_FOLLOWS_MS = 300;
/** Sine of twice the turn under which the paper's edges count as level. */
const LEVEL_WITHIN = 0.001;

/** Black over the paper that leaves the light of a lamp turned low. */
function lowLamp({ pool, poolLow }: SheetLook, perPx: number): string {
  const stops = dimming(pool, poolLow).map(({ at, alpha }) => `rgb(0 0 0 / ${alpha}) ${Math.round(at * 100)}%`);
  return `radial-gradient(circle ${Math.round(poolLow.radiusPx * perPx)}px at 50% 50%, ${stops.join(", ")})`;
}

function PrintedList({ state, fieldDeg }: { readonly state: SheetState; readonly fieldDeg: number }) {
  return (
    <div class="hidden-words">
      <h2>{saySheet("list")}</h2>
      <p>{saySheet("listFrom", { fieldDeg })}</p>
      <ul>
        {state.things.value.map((thing) => (
          <li key={thing.dir.join()}>{thingWords(thing)}</li>
        ))}
      </ul>
    </div>
  );
}

function Lettering({ state, props }: { readonly state: SheetState; readonly props: SheetProps }) {
  return <Letters texts={state.letters.value} typeScale={typeScaleOf(props)} />;
}

function WhiteMarks({ state, props }: { readonly state: SheetState; readonly props: SheetProps }) {
  const { legend, instruments = [], notes = [], view, proof = null, page, hand } = props;
  const print = useComputed(() => JSON.stringify([view.value.scale, view.value.panX, view.value.panY]));
  // Turns and flips are the paper's: only a nearer print draws the marks anew.
  const [scale, panX, panY] = JSON.parse(print.value) as [number, number, number];
  const printedView = { turnRad: 0, flipped: false, scale, panX, panY };
  return (
    <HandMarks
      page={page}
      view={printedView}
      pxPerPagePx={pxPerPagePx(props)}
      hand={hand}
      stops={notes.filter(({ kind }) => kind === "stop")}
      proof={proof}
      fields={legend?.value ? { at: fieldsAt(props), fieldsDeg: instruments.map(({ fieldDeg }) => fieldDeg) } : null}
      stroke={state.stroke.value}
      cross={state.cross.value}
    />
  );
}

export function Sheet(props: SheetProps) {
  const { page, marks, sizePx, lamp, lettering, mode } = props;
  const state = useMemo(createSheetState, []);
  const latest = useRef(props);
  latest.current = props;
  const acts = useMemo(() => createSheetActs(() => latest.current, state), [state]);
  const paper = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const letters = useRef<SVGSVGElement>(null);
  const box = useRef<HTMLDivElement>(null);
  const clipId = useId();
  usePaper(canvas, props, state);
  useLie({ paper, letters }, props, state);

  useEffect(() => {
    const gestures = createGestures({
      ...acts,
      mode: () => latest.current.mode.value,
      zoomBy: (factor, about) => acts.zoomBy(factor, about, false),
    });
    const middle = () => {
      const { left, top, width, height } = box.current!.getBoundingClientRect();
      return { x: left + width / 2, y: top + height / 2 };
    };
    return listenToPaper(paper.current!, {
      gestures,
      middle,
      zoomBy: (factor, at) => acts.zoomBy(factor, at, true),
      hover: (at) => at && acts.light(at),
    });
  }, [acts]);
  useEffect(
    () =>
      effect(() => {
        // Another task of the hand: what was begun is put away, at once, before the next key sets the cross.
        void mode.value;
        state.cross.value = null;
        state.stroke.value = null;
      }),
    [mode, state],
  );
  const ringKey = props.hand.ring?.dir.join();
  const dim = state.look.value?.dim ?? false;
  useEffect(() => {
    // A dim lamp goes where the field's ring has come to rest.
    const timer = setTimeout(() => acts.light(acts.pivot()), LAMP_FOLLOWS_MS);
    return () => clearTimeout(timer);
  }, [acts, ringKey, dim, page]);
  const onKeyDown = (event: KeyboardEvent) => {
    const act = sheetActOfKey(event, mode.value, acts.canPan());
    if (!act) return;
    event.preventDefault();
    event.stopPropagation();
    acts.key(act);
  };

  const { width, height } = sizePx;
  const sizeStyle = { width: `${width}px`, height: `${height}px` };
  const inset = page.marginPx * pxPerPagePx(props);
  const stars = marks.reduce((count, mark) => count + (mark.kind === "dot" ? 1 : 0), 0);
  const look = state.look.value;
  const askew = useComputed(() => Math.abs(Math.sin(2 * props.view.value.turnRad)) > LEVEL_WITHIN);
  return (
    <div
      ref={box}
      class={`sheet${state.held.value ? " is-held" : ""}${state.moving.value ? " is-moving" : ""}`}
      style={sizeStyle}
    >
      <div
        ref={paper}
        class={`sheet-paper takes-${mode.value}${askew.value ? " lies-askew" : ""}`}
        role="application"
        aria-roledescription={saySheet("paperRole")}
        aria-label={saySheet("paper", { title: props.title, flip: "F" })}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the paper is turned and pinned by keys
        tabIndex={0}
        onKeyDown={onKeyDown}
      >
        <canvas ref={canvas} role="img" aria-label={saySheet("printed", { count: stars })} />
        {look && !look.dim && (
          <div
            class={`sheet-dim${lamp === "low" ? " is-low" : ""}`}
            style={{ background: lowLamp(look, poolScale(props)) }}
          />
        )}
        <svg class="sheet-hand" viewBox={`${-width / 2} ${-height / 2} ${width} ${height}`} aria-hidden="true">
          <clipPath id={clipId}>
            <rect x={inset - width / 2} y={inset - height / 2} width={width - 2 * inset} height={height - 2 * inset} />
          </clipPath>
          <g clip-path={`url(#${clipId})`}>
            <WhiteMarks state={state} props={props} />
          </g>
        </svg>
      </div>
      <svg ref={letters} class={`sheet-letters letters-${lettering}`} aria-hidden="true">
        <Lettering state={state} props={props} />
      </svg>
      {props.legend?.value && <Legend page={page} marks={marks} />}
      <PrintedList state={state} fieldDeg={props.fieldDeg} />
      <p class="hidden-words" role="status">
        {state.said.value}
      </p>
    </div>
  );
}

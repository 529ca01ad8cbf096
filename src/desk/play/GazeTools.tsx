/** The eye's tools over the field: where it stares, a button to look beside, and what it does now, said aloud. */
import "../styles/gaze.css";
import { useRef } from "preact/hooks";
import { Icon } from "../icons.tsx";
import { sayGaze } from "./gazeWords.ts";
import type { PlayLayout } from "./geometry.ts";
import type { PlayModel } from "./model.ts";

/** A press this long was a hold and ends with the finger; a shorter one keeps on until the next. */
const HOLD_MS = 400;
/** Middle of the button, from the barrel's middle in its outer radii and px beyond: in the free corner of the table. */
const CORNER = { share: Math.SQRT1_2, beyondPx: 24 } as const;

/** Four strokes about what is stared at; it stays free. */
function StareMark({ model }: { model: PlayModel }) {
  const place = model.stare.value;
  if (!place) return null;
  return (
    <svg
      class="stare-mark"
      viewBox="-17 -17 34 34"
      aria-hidden="true"
      style={{ transform: `translate(${place.x - 17}px, ${-place.y - 17}px)` }}
    >
      <path d="M0-16v6M0 10v6M-16 0h6M10 0h6" />
    </svg>
  );
}

/** Held like a key, or pressed once to stay; a press without a pointer (Enter, a screen reader) is the latter. */
function BesideButton({ model, layout }: { model: PlayModel; layout: PlayLayout }) {
  const down = useRef<{ readonly atMs: number; readonly was: boolean } | null>(null);
  const { fieldPx, rimPx } = layout.barrel;
  const out = (fieldPx + rimPx + CORNER.beyondPx) * CORNER.share;
  const up = layout.kind === "phone" ? -out : out;
  const release = ({ timeStamp }: PointerEvent) => {
    const held = down.current;
    down.current = null;
    if (held && (held.was || timeStamp - held.atMs > HOLD_MS)) model.lookBeside(false);
  };
  return (
    <button
      type="button"
      class="beside-button"
      aria-label={sayGaze("besideSaid")}
      aria-pressed={model.beside.value}
      style={{ transform: `translate(${out}px, ${-up}px)` }}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        down.current = { atMs: event.timeStamp, was: model.beside.value };
        model.lookBeside(true);
      }}
      onPointerUp={release}
      onPointerCancel={release}
      onContextMenu={(event) => event.preventDefault()}
      onClick={({ detail }) => {
        if (detail === 0) model.lookBeside(!model.beside.value);
      }}
    >
      <Icon name="beside" />
      <span>{sayGaze("beside")}</span>
    </button>
  );
}

export function GazeTools({ model, layout }: { model: PlayModel; layout: PlayLayout }) {
  const now = model.beside.value ? sayGaze("nowBeside") : model.stare.value ? sayGaze("nowStares") : "";
  return (
    <>
      <StareMark model={model} />
      <BesideButton model={model} layout={layout} />
      <p class="hidden-words" aria-live="polite">
        {now}
      </p>
    </>
  );
}

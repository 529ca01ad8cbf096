/** A change of instrument: the ladder's ring opens to the barrel, and is gone. */
import { useEffect, useRef } from "preact/hooks";
import { reducedMotion } from "../app/state.ts";
import type { PlayLayout } from "./geometry.ts";
import { ladderScale } from "./ladderRadii.ts";
import type { PlayModel } from "./model.ts";

const OPENS_MS = 420;
const CURVE = "cubic-bezier(.2, 0, 0, 1)";

/** Radius of the ring in use on the ladder, px. */
function ringPx(model: PlayModel, outerPx: number): number {
  const rings = [...model.ladder.value].sort((a, b) => a.fieldDeg - b.fieldDeg);
  const { radiiPx } = ladderScale(
    rings.map(({ fieldDeg }) => fieldDeg),
    outerPx,
  );
  return radiiPx[rings.findIndex(({ gear }) => gear.id === model.gear.value.id)] ?? outerPx;
}

export function OpeningRing({ model, layout }: { model: PlayModel; layout: PlayLayout }) {
  const ring = useRef<HTMLSpanElement>(null);
  const shown = useRef(model.gear.value.id);
  const { id } = model.gear.value;
  useEffect(() => {
    if (shown.current === id) return;
    shown.current = id;
    const { ladder, barrel } = layout;
    if (!ladder || reducedMotion.value) return;
    const small = ringPx(model, ladder.r) / barrel.fieldPx;
    ring.current?.animate(
      [
        { visibility: "visible", transform: `translate(${ladder.x}px, ${ladder.y}px) scale(${small})`, opacity: 1 },
        { visibility: "visible", transform: `translate(${barrel.x}px, ${barrel.y}px) scale(1)`, opacity: 0.6 },
      ],
      { duration: OPENS_MS, easing: CURVE },
    );
  }, [id, layout, model]);
  const px = layout.barrel.fieldPx;
  return (
    <span class="opening-ring" ref={ring} aria-hidden="true">
      <span style={{ left: `${-px}px`, top: `${-px}px`, width: `${2 * px}px`, height: `${2 * px}px` }} />
    </span>
  );
}

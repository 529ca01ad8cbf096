/** What a hand does on the field: it pushes by dragging; held still it pushes nothing, and the eye stares. */
import type { StarePlace } from "./gaze.ts";
import type { PlayModel } from "./model.ts";

type Model = Pick<PlayModel, "drag" | "dragging" | "stareAt">;

/** A hand that moves no further is held still; and so long, before it is taken for a stare. */
const STILL_PX = 4;
export const STARE_AFTER_MS = 500;
/** A finger covers what it touches: the stare is on what stands so far above it. */
const OVER_FINGER_PX = 46;
/** It stays within the field, as a share of its radius. */
const WITHIN = 0.96;

interface Held {
  readonly id: number;
  readonly isFinger: boolean;
  /** Where it went down, and where it is; CSS px of the window. */
  readonly startX: number;
  readonly startY: number;
  x: number;
  y: number;
  does: "waits" | "stares" | "pushes";
}

/** What a hand that is held still over the field stares at. */
export function starePlace(
  { x, y, isFinger }: Pick<Held, "x" | "y" | "isFinger">,
  { left, top, width, height }: Pick<DOMRect, "left" | "top" | "width" | "height">,
): StarePlace {
  const right = x - (left + width / 2);
  const up = top + height / 2 - y + (isFinger ? OVER_FINGER_PX : 0);
  const within = Math.min(1, (WITHIN * width) / 2 / Math.max(1, Math.hypot(right, up)));
  return { x: right * within, y: up * within };
}

/** Listens to one pointer on an element; the result stops it. One finger pushes or stares; a second one does nothing. */
export function listenToField(element: HTMLElement, model: Model): () => void {
  const stop = new AbortController();
  let held: Held | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const on = <K extends keyof HTMLElementEventMap>(type: K, act: (event: HTMLElementEventMap[K]) => void) =>
    element.addEventListener(type, act, { signal: stop.signal });
  const letGo = () => {
    clearTimeout(timer);
    if (held?.does === "stares") model.stareAt(null);
    if (held?.does === "pushes") model.dragging(false);
    held = null;
  };
  const release = (event: PointerEvent) => {
    if (held?.id === event.pointerId) letGo();
  };
  on("pointerdown", (event) => {
    if (held || event.button !== 0) return;
    const { clientX: x, clientY: y, pointerId: id } = event;
    const hand: Held = { id, isFinger: event.pointerType === "touch", startX: x, startY: y, x, y, does: "waits" };
    held = hand;
    element.setPointerCapture(id);
    timer = setTimeout(() => {
      hand.does = "stares";
      model.stareAt(starePlace(hand, element.getBoundingClientRect()));
    }, STARE_AFTER_MS);
  });
  on("pointermove", ({ pointerId, clientX, clientY }) => {
    if (held?.id !== pointerId) return;
    if (held.does !== "pushes") {
      if (Math.hypot(clientX - held.startX, clientY - held.startY) <= STILL_PX) return;
      clearTimeout(timer);
      if (held.does === "stares") model.stareAt(null);
      held.does = "pushes";
      model.dragging(true);
    }
    model.drag(clientX - held.x, clientY - held.y);
    [held.x, held.y] = [clientX, clientY];
  });
  on("pointerup", release);
  on("pointercancel", release);
  on("lostpointercapture", release);
  // A long press is a stare, and asks for no menu.
  on("contextmenu", (event) => {
    if (held) event.preventDefault();
  });
  return () => {
    stop.abort();
    letGo();
  };
}

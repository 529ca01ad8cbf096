/** Pointer and wheel events of the paper, given to the gestures. */
import type { Gestures } from "./gestures.ts";

type Listener = {
  readonly gestures: Gestures;
  /** Middle of the sheet, px of the window. */
  middle(): { readonly x: number; readonly y: number };
  zoomBy(factor: number, at: { readonly x: number; readonly y: number }): void;
  /** The pointer passes over the paper with no button down. */
  hover(at: { readonly x: number; readonly y: number } | null): void;
};
/** Factor of scale for a px of the wheel: a notch of 100 px is a fifth. */
const WHEEL_PER_PX = Math.log(1.2) / 100;
const LINE_PX = 16;

/** Listens to an element; the result stops it. */
export function listenToPaper(element: HTMLElement, { gestures, middle, zoomBy, hover }: Listener): () => void {
  const at = (event: PointerEvent | WheelEvent) => {
    const { x, y } = middle();
    return { x: event.clientX - x, y: event.clientY - y };
  };
  const stop = new AbortController();
  const on = <K extends keyof HTMLElementEventMap>(type: K, act: (event: HTMLElementEventMap[K]) => void) =>
    element.addEventListener(type, act, { signal: stop.signal, passive: false });
  on("pointerdown", (event) => {
    if (event.button !== 0) return;
    element.setPointerCapture(event.pointerId);
    gestures.down(event.pointerId, at(event));
  });
  on("pointermove", (event) => {
    if (event.buttons === 0) hover(at(event));
    else gestures.move(event.pointerId, at(event));
  });
  on("pointerleave", () => hover(null));
  on("pointerup", (event) => gestures.up(event.pointerId));
  on("pointercancel", (event) => gestures.up(event.pointerId, true));
  on("wheel", (event) => {
    event.preventDefault();
    const px = event.deltaMode === 1 ? event.deltaY * LINE_PX : event.deltaY;
    zoomBy(Math.exp(-px * WHEEL_PER_PX), at(event));
  });
  return () => stop.abort();
}

/** Stars twinkle and come and go, unless the reader or their machine wants them still. */
import { signal } from "@preact/signals";
import { reducedMotion } from "../app/state.ts";

/** The reader wants it. */
export const twinkleOn = signal(true);

export const twinkles = (): boolean => twinkleOn.value && !reducedMotion.value;

/** While nothing but starlight moves, a frame is drawn so often: a dozen a second show swings of two a second. */
export const TWINKLE_FRAME_MS = 70;
/** The stage counts in single precision: seconds begin anew before they grow coarse. */
const ROUND_S = 4096;

export const twinkleSeconds = (nowMs: number): number => (nowMs / 1000) % ROUND_S;

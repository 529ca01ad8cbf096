/** Stars twinkle and come and go, unless the reader or their machine wants them still. */
import { signal } from "@preact/signals";
import type { Stage } from "../../stage/index.ts";
import { reducedMotion } from "../app/state.ts";

/** The reader wants it. */
export const twinkleOn = signal(true);

const twinkles = (): boolean => twinkleOn.value && !reducedMotion.value;

/** The stage counts in single precision: seconds begin anew before they grow coarse. */
const ROUND_S = 4096;
/**
 * While nothing but starlight moves, a frame is drawn so often. Where the processor draws, each costs the whole machine
 * something: there are fewer, and the stars go as much slower as keeps them smooth.
 */
const PACE = { gpu: { frameMs: 70, speed: 1 }, processor: { frameMs: 200, speed: 0.5 } } as const;

const paceOf = ({ bySoftware }: Stage) => (bySoftware ? PACE.processor : PACE.gpu);

/** In how many ms a resting field is to be drawn again; null where it stands still. */
export const twinkleWaitMs = (stage: Stage): number | null => (twinkles() ? paceOf(stage).frameMs : null);

/** The moment as starlight has it, seconds; null where it stands still. */
export const twinkleSeconds = (stage: Stage, nowMs: number): number | null =>
  twinkles() ? ((nowMs / 1000) * paceOf(stage).speed) % ROUND_S : null;

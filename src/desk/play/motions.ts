/**
 * The picture's own motions: a new instrument opens out of black, and a glass comes into focus; a right claim opens the stop,
 * agreement flashes.
 */
import { gearInUse } from "#core/session/session.ts";
import type { Hop } from "./hop.ts";
import { hasOpenSky } from "./picture.ts";

const LENGTH_MS = { change: 420, focus: 800, right: 900, proof: 1000, proofHold: 400 } as const;
/** A glass that was just taken has stars so many times as wide, and a hand that turns its focus (set by eye). */
const OUT_OF_FOCUS = 3;
export const STOP_OPENS_PX = 12;
const RIGHT_BRIGHTENS_MAG = 0.3;

/**
 * Writes the motions of a moment into the picture.
 * @param still reduced motion: everything stands at its end at once
 * @returns whether one still runs
 */
export function animate({ picture, motion, signals, eye, attempt }: Hop, nowMs: number, still: boolean): boolean {
  const share = (startMs: number, lengthMs: number) =>
    startMs === 0 || still ? 1 : Math.min(1, (nowMs - startMs) / lengthMs);
  const changed = share(motion.changedMs, LENGTH_MS.change);
  const focused = hasOpenSky(gearInUse(attempt.session)) ? 1 : share(motion.changedMs, LENGTH_MS.focus);
  const right = motion.rightMs === 0 ? 0 : share(motion.rightMs, LENGTH_MS.right);
  const proofMs = motion.proofMs === 0 ? Number.POSITIVE_INFINITY : nowMs - motion.proofMs;
  const fading = (proofMs - LENGTH_MS.proofHold) / (LENGTH_MS.proof - LENGTH_MS.proofHold);
  picture.light = changed * (2 - changed);
  picture.defocus = OUT_OF_FOCUS * (1 - focused) * (1 - focused);
  picture.stopOpenCssPx = STOP_OPENS_PX * right;
  picture.limitMag = signals.limitMag.value + RIGHT_BRIGHTENS_MAG * right - (eye?.lackMag(nowMs) ?? 0);
  picture.linesAlpha = Math.max(0, Math.min(1, 1 - fading));
  return (
    changed < 1 || focused < 1 || (eye?.moves ?? false) || (right > 0 && right < 1) || proofMs < LENGTH_MS.proof + 50
  );
}

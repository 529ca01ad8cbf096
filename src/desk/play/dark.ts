/**
 * Dark adaptation in play: a model, on a clock that runs sixty times as fast. Every hop begins adapted. White light takes the
 * adaptation: the lamp going from red or amber to white, and a torch; red and amber do not. A quarter of a minute later it is
 * back. The picture alone knows of it: claims, pins and points do not, and limits that lessons state are those of an adapted
 * eye.
 */
import { adaptationLossMag, ROD_DELAY_MIN } from "#core/eye/adaptation.ts";
import { darkOn } from "./darkOn.ts";

/** A second of the page is a minute of the eye. */
const MIN_PER_MS = 1 / 1000;

export interface Dark {
  /** White light falls into the eye from now on, or no more. */
  light(on: boolean, nowMs: number): void;
  /** What the eye lacks of its adaptation, mag; 0 where the reader does not want it. */
  lackMag(nowMs: number): number;
  /** It comes back: the next frame differs. */
  readonly moves: boolean;
}

/** An adapted eye under a sky of so many mag/arcsec2, asked for when it matters. */
export function createDark(skyMu: () => number): Dark {
  let isLit = false;
  /** When the light went out, by the page's clock; null where the eye is adapted. */
  let sinceMs: number | null = null;
  const lackAfter = (ms: number) => adaptationLossMag(ms * MIN_PER_MS, ROD_DELAY_MIN.indoors, skyMu());
  return {
    light(on, nowMs) {
      isLit = on;
      sinceMs = nowMs;
    },
    lackMag(nowMs) {
      if (sinceMs === null || !darkOn.value) return 0;
      const lackMag = lackAfter(isLit ? 0 : nowMs - sinceMs);
      if (lackMag === 0) sinceMs = null;
      return lackMag;
    },
    get moves() {
      return sinceMs !== null && !isLit && darkOn.value;
    },
  };
}

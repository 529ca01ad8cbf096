/** Where the eye looks: about the field freely, straight at a place (a stare), or beside what is faint. */
import { DEG } from "#core/celestial/vector.ts";
import { fieldRadiusPlane, projectionOf } from "#core/optics/viewFrame.ts";
import type { Gear } from "#core/seams/index.ts";
import type { FieldGaze } from "../../stage/index.ts";
import type { Mutable } from "./mutable.ts";

/** From the field's centre, x right and y up, CSS px. */
export interface StarePlace {
  readonly x: number;
  readonly y: number;
}

/** The middle of the eye's fovea that has hardly a rod, radius at the eye (Curcio et al. 1990, from memory: 0.6). */
const FOVEA_RAD = 0.5 * DEG;
/** On a small field the fovea is drawn no smaller: no finger or mouse says more finely what is looked at (our own). */
const LEAST_FOVEA_CSS_PX = 8;
/** A faint thing goes within half a second of a stare, and is back sooner (set by eye). */
const EASE_MS = { away: 450, back: 250, beside: 350 } as const;

/**
 * Radius of the fovea on a field of so many CSS px radius, at its centre: what the eyepiece shows of the sky is magnified. At
 * least so large that a hand can point with it.
 */
export function foveaCssPx(gear: Gear, fieldRadiusCssPx: number): number {
  const onSkyRad = FOVEA_RAD / gear.magnification;
  const onPlane = projectionOf(gear) === "gnomonic" ? Math.tan(onSkyRad) : 2 * Math.tan(onSkyRad / 2);
  return Math.max(LEAST_FOVEA_CSS_PX, (fieldRadiusCssPx * onPlane) / fieldRadiusPlane(gear));
}

/**
 * What a stare takes of the limit, mag: down to what cones see. An eye that is not adapted lives by its cones already.
 * @param lackMag what it lacks of its adaptation
 */
export const stareLossMag = (avertedMilliMag: number, directMilliMag: number, lackMag: number): number =>
  Math.max(0, (avertedMilliMag - directMilliMag) / 1000 - lackMag);

export interface Gaze {
  /** Null looks about freely again. */
  stareAt(place: StarePlace | null): void;
  lookBeside(on: boolean): void;
  /**
   * Where the eye looks now: written anew before each frame, allocates nothing.
   * @param lossMag what a stare takes now
   * @param still reduced motion: everything is at its end at once
   */
  now(nowMs: number, foveaPx: number, lossMag: number, lackMag: number, still: boolean): FieldGaze;
  /** The gaze is on its way: the next frame differs. */
  readonly moves: boolean;
}

/** Frames further apart than this count as so far apart: a still field has none. */
const LONGEST_FRAME_MS = 100;

/** Towards an end, from nothing to all in so many ms. */
const eased = (from: number, to: number, passedMs: number, lengthMs: number): number =>
  from < to ? Math.min(to, from + passedMs / lengthMs) : Math.max(to, from - passedMs / lengthMs);

/** The gaze of a hop: free at first. */
export function createGaze(): Gaze {
  const field: Mutable<FieldGaze> = { xCssPx: 0, yCssPx: 0, foveaCssPx: 0, lossMag: 0, beside: 0, lackMag: 0 };
  const goal = { straight: 0, beside: 0 };
  let straight = 0;
  let lastMs = 0;
  return {
    stareAt(place) {
      goal.straight = place ? 1 : 0;
      if (place) [field.xCssPx, field.yCssPx] = [place.x, place.y];
    },
    lookBeside(on) {
      goal.beside = on ? 1 : 0;
    },
    now(nowMs, foveaPx, lossMag, lackMag, still) {
      const passedMs = still ? Number.POSITIVE_INFINITY : Math.min(LONGEST_FRAME_MS, nowMs - lastMs);
      lastMs = nowMs;
      // Who looks beside does not stare, whatever is held.
      const to = goal.straight * (1 - goal.beside);
      straight = eased(straight, to, passedMs, to > straight ? EASE_MS.away : EASE_MS.back);
      field.beside = eased(field.beside, goal.beside, passedMs, EASE_MS.beside);
      field.foveaCssPx = foveaPx;
      field.lossMag = straight * lossMag;
      field.lackMag = lackMag;
      return field;
    },
    get moves() {
      return straight !== goal.straight * (1 - goal.beside) || field.beside !== goal.beside;
    },
  };
}

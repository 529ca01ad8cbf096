/** What a session is: one array that moves with every tick, and a rest that is replaced, never changed. */
import type { AttemptEvent, CompiledAttempt, GearId, Grade, MasDir } from "#core/seams/index.ts";
import type { Says } from "./claim.ts";
import type { SkyClock } from "./skyClock.ts";
import type { Recorder } from "./trail.ts";

/** The core's step, ms. */
export const TICK_MS = 20;

/** Places in the session's one mutable array. Axes and gaze in radians, clocks in ms. */
export const POSE = {
  /** Azimuth (north by east) or hour angle (west positive) of the tube. */
  axis1: 0,
  /** Altitude or declination of the tube. */
  axis2: 1,
  /** What the hand has pushed and the tube has not followed yet. */
  pending1: 2,
  pending2: 3,
  gazeAzimuth: 4,
  gazeAltitude: 5,
  gazePending1: 6,
  gazePending2: 7,
  /** Since the attempt's start. */
  tMs: 8,
  /** UTC of the sky, ms since 1970. */
  skyMs: 9,
  /** How long the tube has been all but still. */
  stillMs: 10,
  /** Way that the hand moved the tube before the anchor was confirmed. */
  beforeRad: 11,
  size: 12,
} as const;

/** `anchor`: the anchor star is sought; `hop`: from its confirmation on; `ended`: nothing counts any more. */
export type Phase = "anchor" | "hop" | "ended";
export type EndReason = "found" | "missed" | "givenUp" | "end";

export interface SessionState {
  readonly phase: Phase;
  readonly gear: GearId;
  /** The instrument that the trail follows: the one in use, or the last one when the naked eye is. */
  readonly tubeGear: GearId;
  /** False once the line itself was shown. */
  readonly scored: boolean;
  /** A rest was reached in the instrument in use since it was last moved or changed. */
  readonly rested: boolean;
  readonly confirmedAtMs: number;
  readonly tracking: boolean;
  readonly paused: boolean;
  readonly locked: readonly [axis1: boolean, axis2: boolean];
  /** Finder against telescope, to the right and up along the mount's axes, das. */
  readonly finderOffsetDas: readonly [axis1: number, axis2: number];
  readonly found: readonly number[];
  readonly wrongClaims: number;
  /** The pin on the way was asked for. */
  readonly firstPinAsked: boolean;
  /** Where the tube pointed when the last pin in the hopping instrument was asked for. */
  readonly lastPinAskedAt: MasDir | null;
  readonly knocked: boolean;
  /** The tube stands at the edge of the Sun's circle. */
  readonly atSun: boolean;
  readonly endReason: EndReason | null;
}

export interface Session {
  /** Replaced only by the same hop compiled for another hour, before it starts. */
  compiled: CompiledAttempt;
  /** Places of {@link POSE}. */
  readonly pose: Float64Array;
  /** Replaced at events and at rare moments of a tick; safe to keep. */
  state: SessionState;
  readonly events: AttemptEvent[];
  readonly recorder: Recorder;
  readonly clock: SkyClock;
  /** Share of what is pending that the tube follows in one tick: 1 under reduced motion. */
  readonly followShare: number;
}

/** What the hand pushed since the last tick, along the axes at gain 1, radians; for the naked eye, where the gaze turned. */
export type Hand = { readonly axis1: number; readonly axis2: number };
export const NO_HAND: Hand = { axis1: 0, axis2: 0 };

type WithoutTime<E> = E extends unknown ? Omit<E, "tMs"> : never;
/** An event as it is put in: the session stamps the time. */
export type SessionEvent = WithoutTime<AttemptEvent>;

/** How far off a confirmation was: in the field but not in its middle, within two fields, or further. */
export type HowFar = "inField" | "near" | "far";
/**
 * Why an event is not taken (and not recorded): the attempt has ended; the anchor is not confirmed yet, or is already; the
 * naked eye cannot confirm; an instrument that the hop does not have; an aid that it does not allow; a claim without a rest
 * or in another instrument than the claim's, or before the pin that was just asked for (claim again to leave it out); what
 * would move the pointing free of length while the hop is on.
 */
export type Refusal =
  | "ended"
  | "anchorFirst"
  | "anchorKnown"
  | "useTheSight"
  | "notInTheList"
  | "aidIsOff"
  | "restFirst"
  | "otherGear"
  | "pinFirst"
  | "notInTheHop";

/** What follows from an event or a tick, for the page to act on; effects are data. */
export type Outcome =
  | { readonly kind: "anchorConfirmed" }
  | { readonly kind: "notYet"; readonly howFar: HowFar }
  | { readonly kind: "rest" }
  /** 1: at the first rest after a third of par; 2: on leaving the hopping instrument, or at a claim in it. */
  | { readonly kind: "pinAsked"; readonly which: 1 | 2 }
  | { readonly kind: "restarted" }
  | {
      readonly kind: "claimed";
      readonly says: Says;
      readonly verdict: "right" | "wrong";
      readonly target: number;
      readonly wrongClaims: number;
    }
  | { readonly kind: "hintGiven"; readonly leg: number; readonly grade: Grade }
  | { readonly kind: "shown" }
  | { readonly kind: "sunStop" }
  | { readonly kind: "knocked" }
  | { readonly kind: "refused"; readonly why: Refusal }
  | { readonly kind: "ended"; readonly why: EndReason };

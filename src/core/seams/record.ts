/** Events, trail and record of an attempt: all that a score needs. */
import type { Aid, CompiledAttempt } from "./attempt.ts";
import type { GearId } from "./gear.ts";
import type { MasDir } from "./sky.ts";

export type Grade = 1 | 2 | 3;
export type Confidence = 50 | 60 | 70 | 80 | 90 | 100;
type EventBody =
  | { readonly kind: "use"; readonly gear: GearId }
  | { readonly kind: "eyepiece"; readonly gear: GearId }
  | { readonly kind: "look"; readonly at: MasDir }
  | { readonly kind: "push" | "nudge" | "swing"; readonly axis: 1 | 2 | "both" }
  | { readonly kind: "axisLock"; readonly axis: 1 | 2; readonly locked: boolean }
  | { readonly kind: "track" | "pause"; readonly on: boolean }
  | { readonly kind: "timeSet"; readonly toMs: number }
  | { readonly kind: "align"; readonly byDas: readonly [axis1: number, axis2: number] }
  | { readonly kind: "confirm" }
  | { readonly kind: "restart" }
  | { readonly kind: "knock" }
  | { readonly kind: "giveUp" }
  | { readonly kind: "end" }
  | {
      readonly kind: "chartView";
      readonly turnMilliRad: number;
      readonly flipped: boolean;
      readonly scalePermille: number;
      readonly centre: MasDir;
    }
  | { readonly kind: "pencil" | "pin"; readonly at: MasDir }
  | { readonly kind: "hint"; readonly leg: number; readonly grade: Grade }
  | { readonly kind: "aid"; readonly aid: Aid; readonly on: boolean }
  | { readonly kind: "avert" | "torch" | "stare"; readonly on: boolean }
  | { readonly kind: "focus"; readonly value: number }
  | { readonly kind: "glimpse"; readonly at: MasDir }
  | {
      readonly kind: "claim";
      readonly says: "here" | "notSeen";
      readonly confidence?: Confidence | undefined;
      readonly nearest?: string | undefined;
    }
  | { readonly kind: "answer"; readonly item: number; readonly value: string }
  | { readonly kind: "away"; readonly hidden: boolean };
/** The whole union from the start; `tMs` counts from the attempt's start. An unknown kind makes a record unreadable, never wrong. Ticks are not recorded. */
export type AttemptEvent = { readonly tMs: number } & EventBody;
export type EventKind = AttemptEvent["kind"];
/** What a sample of the trail is: 0 a place on the way, 1 a rest reached, 2 the tube set elsewhere at a stroke. */
export type TrailMark = 0 | 1 | 2;
/**
 * Where the instrument in use points (with the naked eye: the one used last), from the confirmed anchor on: at 5 Hz while
 * the hand moves it, every rest and reversal added, and one sample at each claim and pin; ICRS, das, rounded to 100.
 * `byHand` tells of the step that leads to a sample: 1 the hand moved the tube (drift in that step is left in), 0 only the
 * sky moved, or nobody. `mark` is a TrailMark; a step to mark 2 has no length (restart, knock, another instrument out of
 * line with the one before, screws turned, time set) and always byHand 0, with the place before it sampled at the same tMs.
 * So drift is what the steps with byHand 0 and mark 0 or 1 went through.
 */
export interface Trail {
  readonly tMs: Int32Array;
  readonly raDas: Int32Array;
  readonly decDas: Int32Array;
  readonly byHand: Uint8Array;
  readonly mark: Uint8Array;
}
/** Poses are stored: score never steps the session. Stored scores are not read. */
export interface AttemptRecord {
  readonly compiled: CompiledAttempt;
  readonly events: readonly AttemptEvent[];
  readonly trail: Trail;
  /** How far the hand moved the tube before the anchor was confirmed: a figure of its own, no part of the trail. */
  readonly lengthBeforeDas: number;
  readonly checksum: number;
}

// ---- report -------------------------------------------------------------------------------------------------------------
export type ScoreWhat = "found" | "directness" | "pins" | "care" | "floor";
/** `rule` is a code of the message catalogue; `figures` fill its words; `at` are moments of the attempt, tMs. */
export type ScoreLine = {
  readonly what: ScoreWhat;
  readonly points: number;
  readonly rule: string;
  readonly figures: Readonly<Record<string, number>>;
  readonly at: readonly number[];
};
export type ReportWord = "found" | "shown" | "notSeen" | "missed" | "givenUp";
export interface Report {
  readonly word: ReportWord;
  readonly points: number | null;
  readonly lines: readonly ScoreLine[];
  readonly trailDas: number;
  readonly parDas: number;
  /** Where the tube pointed at the last claim or the end, against the target; das. */
  readonly shortByDas: number;
  readonly habit: { readonly code: string; readonly costPoints: number; readonly lesson: string } | null;
}
export type Score = (record: AttemptRecord) => Report;

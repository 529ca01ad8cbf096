/** The trail while it is written, and what can be read from it; places rounded to 10" so that a record stays small. */
import { DAS_RAD, dirFromMas, radecFromDir, separationDas } from "#core/celestial/vector.ts";
import type { Dir, EventKind, MasDir, Trail, TrailMark } from "#core/seams/index.ts";

/** Marks of a sample, as the seam's TrailMark. */
export const ON_THE_WAY: TrailMark = 0;
export const AT_REST: TrailMark = 1;
export const SET_ELSEWHERE: TrailMark = 2;
/** Events with which the tube may stand elsewhere at a stroke: another instrument does so where the finder is out of line. */
export const SETS_ELSEWHERE: ReadonlySet<EventKind> = new Set([
  "use",
  "eyepiece",
  "restart",
  "knock",
  "timeSet",
  "align",
]);

export const STEP_DAS = 100;
const CIRCLE_DAS = 12_960_000;
/** A sample each so often while the hand moves the tube. */
export const SAMPLE_MS = 200;
/** A sample each so often while the sky alone moves. */
export const DRIFT_SAMPLE_MS = 5000;

/** Growing columns of a trail, and what the next sample needs to know of the last. */
export interface Recorder {
  readonly tMs: number[];
  readonly raDas: number[];
  readonly decDas: number[];
  readonly byHand: number[];
  readonly mark: number[];
  /** Direction of the last sample, as rounded. */
  lastDir: Dir;
  /** The hand moved the tube since the last sample. */
  handSince: boolean;
  /** Length of the steps by hand, das. */
  handDas: number;
}

/** An empty recorder, or one that goes on after a stored trail. */
export function createRecorder(trail?: Trail): Recorder {
  const recorder: Recorder = {
    tMs: [],
    raDas: [],
    decDas: [],
    byHand: [],
    mark: [],
    lastDir: [1, 0, 0],
    handSince: false,
    handDas: 0,
  };
  if (!trail) return recorder;
  for (let i = 0; i < trail.tMs.length; i++) {
    append(recorder, trail.tMs[i]!, trail.raDas[i]!, trail.decDas[i]!, trail.byHand[i]!, trail.mark[i]!);
  }
  return recorder;
}

/** A direction as the trail keeps it. */
export function roundedDas(dir: Dir): { readonly raDas: number; readonly decDas: number } {
  const { raRad, decRad } = radecFromDir(dir);
  const steps = DAS_RAD * STEP_DAS;
  return {
    raDas: (Math.round(raRad / steps) * STEP_DAS) % CIRCLE_DAS,
    decDas: Math.round(decRad / steps) * STEP_DAS + 0,
  };
}

/**
 * Adds a sample. One that repeats the place of the last without a mark is left out: it would say nothing.
 * @param byHand whether the hand made the step to it
 */
export function addSample(recorder: Recorder, tMs: number, dir: Dir, byHand: boolean, mark: TrailMark): void {
  const { raDas, decDas } = roundedDas(dir);
  const same = recorder.raDas.at(-1) === raDas && recorder.decDas.at(-1) === decDas;
  recorder.handSince = false;
  if (same && mark !== AT_REST) return;
  append(recorder, tMs, raDas, decDas, byHand ? 1 : 0, mark);
}

function append(recorder: Recorder, tMs: number, raDas: number, decDas: number, byHand: number, mark: number): void {
  const before = lastPlace(recorder);
  recorder.tMs.push(tMs);
  recorder.raDas.push(raDas);
  recorder.decDas.push(decDas);
  recorder.byHand.push(byHand);
  recorder.mark.push(mark);
  const place = { raMas: raDas * 100, decMas: decDas * 100 };
  recorder.lastDir = dirFromMas(place);
  if (before && byHand) recorder.handDas += separationDas(before, place);
}

/** The last sample's place, or null where there is none. */
export function lastPlace({ raDas, decDas }: Recorder): MasDir | null {
  const ra = raDas.at(-1);
  return ra === undefined ? null : { raMas: ra * 100, decMas: decDas.at(-1)! * 100 };
}

/** The trail so far, as the seam has it. */
export function trailOfRecorder(recorder: Recorder): Trail {
  return {
    tMs: Int32Array.from(recorder.tMs),
    raDas: Int32Array.from(recorder.raDas),
    decDas: Int32Array.from(recorder.decDas),
    byHand: Uint8Array.from(recorder.byHand),
    mark: Uint8Array.from(recorder.mark),
  };
}

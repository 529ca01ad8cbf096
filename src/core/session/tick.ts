/** One step of 20 ms: the sky turns, the hand moves the tube or the gaze, the trail is written, rests are noticed. */
import { DAS_RAD, separationRad } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { compiledFieldDas } from "./claim.ts";
import { stepEvent } from "./events.ts";
import { askAtRest } from "./pins.ts";
import { looksByEye } from "./pointing.ts";
import { turnClock } from "./skyClock.ts";
import { type Hand, NO_HAND, type Outcome, POSE, type Session, TICK_MS } from "./state.ts";
import { AT_REST, addSample, DRIFT_SAMPLE_MS, ON_THE_WAY, SAMPLE_MS, STEP_DAS } from "./trail.ts";
import { dirOfGear, isInSun, moveGaze, moveTube, setTube, tubeDir } from "./tube.ts";

/** Slower than this share of the field a second, for so long, is a rest. */
const REST_FIELDS_PER_S = 0.05;
const REST_MS = 800;
/** Steps of the trail below this share of the field are the trembling of a hand. */
const TREMBLE_FIELDS = 0.005;
const NOTHING: readonly Outcome[] = [];

/**
 * Moves a session on by one tick.
 * @param hand what was pushed since the last tick
 */
export function tick(session: Session, hand: Hand = NO_HAND): readonly Outcome[] {
  if (session.state.phase === "ended") return NOTHING;
  const { pose } = session;
  pose[POSE.tMs] = pose[POSE.tMs]! + TICK_MS;
  turnSky(session);
  const knocked = knockIfDue(session);
  if (looksByEye(session)) {
    moveGaze(session, hand);
    return knocked;
  }
  const before = dirOfGear(session, session.state.tubeGear);
  const step = moveTube(session, hand);
  const after = step === "moved" ? dirOfGear(session, session.state.tubeGear) : before;
  const movedRad = step === "moved" ? separationRad(before, after) : 0;
  const fieldRad = compiledFieldDas(session.compiled, session.state.tubeGear) * DAS_RAD;
  const sun = noteSun(session, step);
  if (session.state.phase === "hop") writeTrail(session, before, after, movedRad, fieldRad);
  else pose[POSE.beforeRad] = pose[POSE.beforeRad]! + movedRad;
  const rest = noteRest(session, after, movedRad, fieldRad);
  return knocked.length + sun.length + rest.length === 0 ? NOTHING : [...knocked, ...sun, ...rest];
}

/** The sky turns only where the lesson lets it; a driven mount keeps the tube on its place among the stars. */
function turnSky(session: Session): void {
  const { pose, clock, compiled, state } = session;
  if (!compiled.spec.drift || state.paused) return;
  const kept = state.tracking ? tubeDir(session) : null;
  pose[POSE.skyMs] = pose[POSE.skyMs]! + TICK_MS;
  turnClock(clock, pose[POSE.skyMs]!);
  if (kept) setTube(session, kept);
}

/** Somebody bumps the tube, once, so long after the anchor was confirmed. */
function knockIfDue(session: Session): readonly Outcome[] {
  const { compiled, state, pose } = session;
  const { knock } = compiled;
  if (!knock || state.knocked || state.phase !== "hop") return NOTHING;
  return pose[POSE.tMs]! - state.confirmedAtMs >= knock.atMs ? stepEvent(session, { kind: "knock" }) : NOTHING;
}

/** The caution is given once for each time that the tube runs into the Sun's circle, or that the sky carries the Sun to it. */
function noteSun(session: Session, step: ReturnType<typeof moveTube>): readonly Outcome[] {
  const { state } = session;
  const isMet = step === "sunStop" || (session.compiled.spec.drift && isInSun(session));
  const atSun = isMet || (step === "still" && state.atSun);
  if (atSun === state.atSun) return NOTHING;
  session.state = { ...state, atSun };
  return atSun ? [{ kind: "sunStop" }] : NOTHING;
}

/**
 * Samples of the trail: where a push begins after the sky drifted, at each reversal, at 5 Hz while the hand moves the tube,
 * and every five seconds while the sky alone does.
 */
function writeTrail(session: Session, before: Dir, after: Dir, movedRad: number, fieldRad: number): void {
  const { recorder, pose } = session;
  const tMs = pose[POSE.tMs]!;
  const sinceMs = tMs - recorder.tMs.at(-1)!;
  if (movedRad > 0) {
    const start = tMs - TICK_MS;
    if (!recorder.handSince) {
      if (sinceMs > TICK_MS) addSample(recorder, start, before, false, ON_THE_WAY);
    } else if (turnsBack(recorder.lastDir, before, after, TREMBLE_FIELDS * fieldRad)) {
      addSample(recorder, start, before, true, ON_THE_WAY);
    }
    recorder.handSince = true;
  }
  if (recorder.handSince) {
    const far = separationRad(recorder.lastDir, after) >= TREMBLE_FIELDS * fieldRad;
    if (far && tMs - recorder.tMs.at(-1)! >= SAMPLE_MS) addSample(recorder, tMs, after, true, ON_THE_WAY);
  } else if (sinceMs >= DRIFT_SAMPLE_MS && separationRad(recorder.lastDir, after) >= STEP_DAS * DAS_RAD) {
    addSample(recorder, tMs, after, false, ON_THE_WAY);
  }
}

/** True where the step from `before` to `after` leads back by more than a right angle against the way since the last sample. */
function turnsBack(last: Dir, before: Dir, after: Dir, trembleRad: number): boolean {
  if (separationRad(last, before) < trembleRad) return false;
  const x = (before[0] - last[0]) * (after[0] - before[0]);
  const y = (before[1] - last[1]) * (after[1] - before[1]);
  const z = (before[2] - last[2]) * (after[2] - before[2]);
  return x + y + z < 0;
}

function noteRest(session: Session, after: Dir, movedRad: number, fieldRad: number): readonly Outcome[] {
  const { pose, recorder, state } = session;
  if (movedRad > (REST_FIELDS_PER_S * fieldRad * TICK_MS) / 1000) {
    pose[POSE.stillMs] = 0;
    if (state.rested) session.state = { ...state, rested: false };
    return NOTHING;
  }
  pose[POSE.stillMs] = pose[POSE.stillMs]! + TICK_MS;
  if (state.rested || pose[POSE.stillMs]! < REST_MS) return NOTHING;
  session.state = { ...state, rested: true };
  if (state.phase !== "hop") return [{ kind: "rest" }];
  addSample(recorder, pose[POSE.tMs]!, after, recorder.handSince, AT_REST);
  return [{ kind: "rest" }, ...askAtRest(session)];
}

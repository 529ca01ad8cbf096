/**
 * An attempt under way. `createSession` once, `tick` every 20 ms with what the hand pushed, `stepEvent` for everything else;
 * both give outcomes for the page to act on. `pointing`, `viewOf` and their kin tell what the instrument in use shows;
 * `record` (record.ts) is the attempt as it is stored and scored. Core reads no clock: who calls `tick` keeps the time.
 */

import { altAzFromDir } from "#core/celestial/frames.ts";
import { mixHash32 } from "#core/celestial/hash.ts";
import { DAS_RAD, DEG, dirFromMas, offsetDir, separationRad } from "#core/celestial/vector.ts";
import { gearById } from "#core/optics/gear.ts";
import type { AttemptRecord, CompiledAttempt, Dir, MasDir, Trail } from "#core/seams/index.ts";
import { wasAskedOnTheWay } from "./pins.ts";
import { reduce, startState } from "./reduce.ts";
import { createSkyClock, type SkyClock, setClock } from "./skyClock.ts";
import { POSE, type Session } from "./state.ts";
import { createRecorder, lastPlace } from "./trail.ts";
import { SUN_CIRCLE_RAD, setGaze, setTube, setTubeFor, tubeDir } from "./tube.ts";

export { claimRefusal, stepEvent } from "./events.ts";
export { carryingHand, type Drag, pushingHand, screwingHand } from "./hand.ts";
export { compiledAnew, hourSet } from "./hour.ts";
export * from "./pointing.ts";
export * from "./state.ts";
export { tick } from "./tick.ts";
export { isAtStand, tubeDir } from "./tube.ts";

/** Share of a push that the tube follows in one tick: nine tenths within 160 ms, at rest after half a second. */
const FOLLOW_SHARE = 0.25;
const START_AWAY_RAD = 25 * DEG;
/** Where there is no naked eye to find the anchor with, it stands in the first field already: so many radii off the middle. */
const START_IN_FIELD = 0.6;
const START_LOWEST_RAD = 12 * DEG;
const START_TRIES = 36;

export type SessionOptions = {
  /** The tube follows the hand at once. */
  readonly reducedMotion?: boolean | undefined;
  /** What was recorded of this attempt before: it goes on from there. */
  readonly resume?: Pick<AttemptRecord, "events" | "trail" | "lengthBeforeDas"> | undefined;
};

/**
 * A session at its start: the first instrument of the list in hand, the tube about 25 degrees from the anchor, level with it
 * where the sky allows, the same for the same compiled attempt; or where a stored attempt stopped.
 */
export function createSession(compiled: CompiledAttempt, options: SessionOptions = {}): Session {
  const { spec } = compiled;
  const session: Session = {
    compiled,
    pose: new Float64Array(POSE.size),
    state: startState(compiled),
    events: [],
    recorder: createRecorder(options.resume?.trail),
    clock: createSkyClock(spec, spec.startMs),
    followShare: options.reducedMotion ? 1 : FOLLOW_SHARE,
  };
  session.pose[POSE.skyMs] = spec.startMs;
  setTube(session, startDir(compiled, session.clock));
  setGaze(session, tubeDir(session));
  if (options.resume) takeUp(session, options.resume);
  return session;
}

function awayAtStart(firstGear: string | undefined): number {
  const gear = gearById(firstGear ?? "eye");
  const wide = gear.kind === "eye" || gear.kind === "sight";
  return wide ? START_AWAY_RAD : (START_IN_FIELD * gear.fieldDeg * DEG) / 2;
}

/** A place for the tube to start from, above the horizon and away from the Sun; the most nearly level with the anchor. */
function startDir({ spec }: CompiledAttempt, clock: SkyClock): Dir {
  const anchor = dirFromMas(spec.anchor);
  const levelRad = Math.max(START_LOWEST_RAD, altAzFromDir(clock.horizon, anchor).altRad);
  const first = mixHash32(spec.anchor.raMas, spec.anchor.decMas) % START_TRIES;
  const awayRad = awayAtStart(spec.gear[0]);
  const target = dirFromMas(spec.targets[0]!.dir);
  const wayRad = separationRad(anchor, target);
  let best = anchor;
  let leastOff = Number.POSITIVE_INFINITY;
  for (let i = 0; i < START_TRIES; i++) {
    const angleRad = (((first + i) % START_TRIES) / START_TRIES) * 2 * Math.PI;
    const dir = offsetDir(anchor, angleRad, awayRad);
    const { altRad } = altAzFromDir(clock.horizon, dir);
    const low = altRad < START_LOWEST_RAD ? 10 : 0;
    const hot = separationRad(dir, clock.sun) < SUN_CIRCLE_RAD + DEG ? 100 : 0;
    // In one field with the anchor, not on the target's side: the way is not to be seen from the start.
    const near = awayRad < START_AWAY_RAD && separationRad(dir, target) < awayRad + wayRad / 2 ? 5 : 0;
    const off = Math.round((Math.abs(altRad - levelRad) + near + low + hot) / DEG);
    if (off < leastOff) [best, leastOff] = [dir, off];
  }
  return best;
}

/** Brings a fresh session to where a stored attempt stopped: the events again, the tube at the trail's end. */
function takeUp(session: Session, { events, trail, lengthBeforeDas }: NonNullable<SessionOptions["resume"]>): void {
  const { compiled, pose, clock } = session;
  let state = session.state;
  let [tMs, skyMs] = [0, compiled.spec.startMs];
  const runs = () => compiled.spec.drift && !state.paused;
  for (const event of events) {
    if (runs()) skyMs += event.tMs - tMs;
    tMs = event.tMs;
    if (event.kind === "timeSet") skyMs = event.toMs;
    state = reduce(compiled, state, event, event.kind === "claim" ? placeAt(trail, tMs) : NOWHERE).state;
    session.events.push(event);
  }
  const lastMs = Math.max(tMs, trail.tMs.at(-1) ?? 0);
  if (runs()) skyMs += lastMs - tMs;
  session.state = { ...state, firstPinAsked: wasAskedOnTheWay(compiled, trail) };
  pose[POSE.tMs] = lastMs;
  pose[POSE.skyMs] = skyMs;
  pose[POSE.beforeRad] = lengthBeforeDas * DAS_RAD;
  setClock(clock, skyMs);
  const place = lastPlace(session.recorder);
  if (place) setTubeFor(session, session.state.tubeGear, dirFromMas(place));
  setGaze(session, tubeDir(session));
}

const NOWHERE: MasDir = { raMas: 0, decMas: 0 };

/** Where a trail's instrument pointed at a moment: its last sample until then. */
export function placeAt(trail: Trail, tMs: number): MasDir {
  let [index, beyond] = [-1, trail.tMs.length];
  while (beyond - index > 1) {
    const middle = (index + beyond) >> 1;
    if (trail.tMs[middle]! <= tMs) index = middle;
    else beyond = middle;
  }
  return index < 0 ? NOWHERE : { raMas: trail.raDas[index]! * 100, decMas: trail.decDas[index]! * 100 };
}

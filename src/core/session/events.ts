/** Events put into a session: taken and recorded, or refused with the reason. */
import { DAS_RAD, dirFromMas, separationDas, separationRad } from "#core/celestial/vector.ts";
import { gearById } from "#core/optics/gear.ts";
import { clampAxis2, wrapAxis1 } from "#core/optics/mount.ts";
import type { AttemptEvent, MasDir } from "#core/seams/index.ts";
import { compiledFieldDas, middleDas } from "./claim.ts";
import { askOnLeaving } from "./pins.ts";
import { looksByEye, pointingExactMas, pointingMas } from "./pointing.ts";
import { reduce } from "./reduce.ts";
import { setClock } from "./skyClock.ts";
import { type Outcome, POSE, type Refusal, type Session, type SessionEvent } from "./state.ts";
import { addSample, ON_THE_WAY, SET_ELSEWHERE, SETS_ELSEWHERE } from "./trail.ts";
import {
  dirOfGear,
  dropPending,
  goesIntoSun,
  keepOffSun,
  SUN_CIRCLE_RAD,
  setGaze,
  setTube,
  setTubeFor,
  tubeDir,
} from "./tube.ts";

/** The sight's inner ring is one degree wide. */
const SIGHT_RING_DAS = 18_000;

/** Why a claim would not be taken now, or null. */
export function claimRefusal({ compiled, state }: Session): Refusal | null {
  if (state.phase !== "hop") return state.phase === "ended" ? "ended" : "anchorFirst";
  if (state.gear !== compiled.spec.claimGear) return "otherGear";
  return state.rested ? null : "restFirst";
}

/** Why an event would not be taken now, or null. */
function refusalOf(session: Session, event: SessionEvent): Refusal | null {
  const { state, compiled } = session;
  if (state.phase === "ended") return "ended";
  switch (event.kind) {
    case "use":
    case "eyepiece":
      return compiled.spec.gear.includes(event.gear) ? null : "notInTheList";
    case "confirm":
      if (state.phase === "hop") return "anchorKnown";
      return looksByEye(session) ? "useTheSight" : null;
    case "restart":
      return state.phase === "hop" ? null : "anchorFirst";
    case "claim":
      return claimRefusal(session);
    case "aid":
      return event.on && compiled.spec.aids[event.aid] === "off" ? "aidIsOff" : null;
    case "hint":
      return compiled.spec.aids.hints === "off" ? "aidIsOff" : null;
    // Once the hop is on, a clock turned forward would let the sky carry a tube that nobody drives to the target, and no hand
    // would have moved it; screws would do the same for a claim made in the finder itself.
    case "timeSet":
      return state.phase === "hop" ? "notInTheHop" : null;
    case "align":
      return state.phase === "hop" && gearById(compiled.spec.claimGear).kind === "finder" ? "notInTheHop" : null;
    default:
      return null;
  }
}

/** How near to the anchor counts: within the sight's inner ring, or 0.35 of the radius of what is used. */
function anchorReachDas({ compiled, state }: Session): number {
  return gearById(state.gear).kind === "sight" ? SIGHT_RING_DAS : middleDas(compiled, state.gear);
}

/** The outcome where the anchor is not in the middle, or null where it is. */
function anchorMissed(session: Session): Outcome | null {
  const { compiled, state } = session;
  const offDas = separationDas(pointingExactMas(session), compiled.spec.anchor);
  if (offDas <= anchorReachDas(session)) return null;
  const field = compiledFieldDas(compiled, state.gear);
  const howFar = 2 * offDas <= field ? "inField" : offDas <= 2 * field ? "near" : "far";
  return { kind: "notYet", howFar };
}

/** Does something to the tube that is no push: the trail gets the place before and after. */
function setElsewhere(session: Session, change: () => void): void {
  const { recorder, pose, state } = session;
  const tMs = pose[POSE.tMs]!;
  const hopping = state.phase === "hop";
  if (hopping) addSample(recorder, tMs, dirOfGear(session, state.tubeGear), recorder.handSince, ON_THE_WAY);
  change();
  dropPending(session);
  pose[POSE.stillMs] = 0;
  if (hopping) addSample(recorder, tMs, dirOfGear(session, session.state.tubeGear), false, SET_ELSEWHERE);
}

/** Moves tube, gaze or sky as an event has it; the state is the new one already. */
function moveFor(session: Session, event: AttemptEvent): void {
  const { compiled, pose, clock } = session;
  switch (event.kind) {
    case "restart":
      setTubeFor(session, session.state.tubeGear, dirFromMas(compiled.spec.anchor));
      break;
    case "knock":
      knock(session, compiled.knock?.byDas ?? [0, 0]);
      break;
    case "timeSet": {
      const kept = session.state.tracking ? tubeDir(session) : null;
      pose[POSE.skyMs] = event.toMs;
      setClock(clock, event.toMs);
      if (kept) setTube(session, kept);
      break;
    }
    case "look":
      setGaze(session, dirFromMas(event.at));
      break;
    case "use":
    case "eyepiece":
      if (looksByEye(session)) setGaze(session, tubeDir(session));
      break;
  }
}

/** A bump on the tube; not one that would lead to the Sun. */
function knock(session: Session, byDas: readonly [number, number]): void {
  const { pose, clock } = session;
  const [old1, old2] = [pose[POSE.axis1]!, pose[POSE.axis2]!];
  const before = tubeDir(session);
  pose[POSE.axis1] = wrapAxis1(clock.mount, old1 + byDas[0] * DAS_RAD);
  pose[POSE.axis2] = clampAxis2(clock.mount, old2 + byDas[1] * DAS_RAD);
  if (goesIntoSun(session, before, tubeDir(session))) {
    pose[POSE.axis1] = old1;
    pose[POSE.axis2] = old2;
  }
}

/** The trail has the very place where these were said. */
const NEEDS_PLACE: readonly AttemptEvent["kind"][] = ["claim", "pin", "giveUp", "end"];

/** The place of an event as the trail has it, sampled now. */
function placeNow(session: Session): MasDir {
  const { recorder, state, pose } = session;
  if (state.phase === "hop") {
    addSample(recorder, pose[POSE.tMs]!, dirOfGear(session, state.tubeGear), recorder.handSince, ON_THE_WAY);
  }
  return pointingMas(session);
}

/**
 * Puts an event into a session: it is stamped with the session's time, recorded and carried out; or it is refused, which
 * the outcome says, and leaves no trace.
 */
export function stepEvent(session: Session, event: SessionEvent): readonly Outcome[] {
  const refused = refusalOf(session, event);
  if (refused) return [{ kind: "refused", why: refused }];
  if (event.kind === "confirm") {
    const missed = anchorMissed(session);
    if (missed) return [missed];
  }
  if (event.kind === "restart" && anchorIsInSun(session)) return [{ kind: "sunStop" }];
  const leaves = event.kind === "use" || event.kind === "eyepiece";
  const asked = leaves || event.kind === "claim" ? askOnLeaving(session) : [];
  if (event.kind === "claim" && asked.length > 0) return [...asked, { kind: "refused", why: "pinFirst" }];

  const stamped = { ...event, tMs: session.pose[POSE.tMs]! } as AttemptEvent;
  session.events.push(stamped);
  const place = NEEDS_PLACE.includes(event.kind) ? placeNow(session) : pointingMas(session);
  let outcomes: readonly Outcome[] = [];
  let wasInSun = false;
  const carryOut = () => {
    const reduced = reduce(session.compiled, session.state, stamped, place);
    session.state = reduced.state;
    outcomes = reduced.outcomes;
    moveFor(session, stamped);
    wasInSun = event.kind === "timeSet" && keepOffSun(session);
  };
  if (SETS_ELSEWHERE.has(event.kind)) setElsewhere(session, carryOut);
  else carryOut();
  if (event.kind === "confirm") {
    addSample(session.recorder, stamped.tMs, dirOfGear(session, session.state.tubeGear), false, ON_THE_WAY);
  }
  return wasInSun ? [...asked, ...outcomes, { kind: "sunStop" }] : [...asked, ...outcomes];
}

function anchorIsInSun({ compiled, clock }: Session): boolean {
  return separationRad(dirFromMas(compiled.spec.anchor), clock.sun) < SUN_CIRCLE_RAD;
}

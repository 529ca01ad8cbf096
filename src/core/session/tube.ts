/** The tube and the gaze: where they point, and what the hand does to them in one tick. */
import { exactSin } from "#core/celestial/exactMath.ts";
import { altAzFromDir, dirFromAltAz } from "#core/celestial/frames.ts";
import { DAS_RAD, DEG, dot, normalise, separationRad } from "#core/celestial/vector.ts";
import { gearById } from "#core/optics/gear.ts";
import {
  axesFromDir,
  clampAxis2,
  dirFromAxes,
  dirOutOfLine,
  LOWEST_ALTITUDE_RAD,
  wrapAxis1,
} from "#core/optics/mount.ts";
import type { Dir, GearId } from "#core/seams/index.ts";
import { zenithOfClock } from "./skyClock.ts";
import { type Hand, POSE, type Session } from "./state.ts";

/** No tube comes nearer to the Sun. */
export const SUN_CIRCLE_RAD = 20 * DEG;
/** So high stands a tube that was swung away from the Sun. */
const AWAY_ALTITUDE_RAD = 45 * DEG;
/** What is left of a push below this (0.02") is followed at once, so that a tube comes to a full stop. */
const SETTLED_RAD = 1e-7;
const IN_LINE = [0, 0] as const;
/** Sine of the lowest altitude; a hair lower, so that the alt-azimuth mount's own clamp never trips it. */
const GROUND_SINE = exactSin(LOWEST_ALTITUDE_RAD - DAS_RAD);

/** Where the telescope points, ICRS. */
export function tubeDir({ clock, pose }: Session): Dir {
  return dirFromAxes(clock.mount, clock.frame, pose[POSE.axis1]!, pose[POSE.axis2]!);
}

/** Where an instrument on the tube points: a finder may be out of line. */
export function dirOfGear(session: Session, gear: GearId): Dir {
  const { clock, pose, state } = session;
  const offset = gearById(gear).kind === "finder" ? state.finderOffsetDas : IN_LINE;
  return dirOutOfLine(clock.mount, clock.frame, pose[POSE.axis1]!, pose[POSE.axis2]!, offset);
}

/** Where the naked eye looks, ICRS. */
export function gazeDir({ clock, pose }: Session): Dir {
  return dirFromAltAz(clock.horizon, pose[POSE.gazeAltitude]!, pose[POSE.gazeAzimuth]!);
}

/** Turns the gaze to a direction, as far as the ground lets it. */
export function setGaze({ clock, pose }: Session, dir: Dir): void {
  const { azRad, altRad } = altAzFromDir(clock.horizon, dir);
  pose[POSE.gazeAzimuth] = azRad;
  pose[POSE.gazeAltitude] = clampAxis2("altazimuth", altRad);
}

/** Sets the telescope on a direction. */
export function setTube({ clock, pose }: Session, dir: Dir): void {
  const { axis1Rad, axis2Rad } = axesFromDir(clock.mount, clock.frame, dir);
  pose[POSE.axis1] = axis1Rad;
  pose[POSE.axis2] = clampAxis2(clock.mount, axis2Rad);
}

/** Sets the tube so that an instrument on it, out of line or not, points to a direction. */
export function setTubeFor(session: Session, gear: GearId, dir: Dir): void {
  let aim = dir;
  setTube(session, aim);
  // The offset hardly changes over its own length: each round leaves a thousandth of the error.
  for (let round = 0; round < 4; round++) {
    const points = dirOfGear(session, gear);
    aim = normalise([aim[0] + dir[0] - points[0], aim[1] + dir[1] - points[1], aim[2] + dir[2] - points[2]]);
    setTube(session, aim);
  }
}

export function dropPending({ pose }: Session): void {
  pose[POSE.pending1] = 0;
  pose[POSE.pending2] = 0;
  pose[POSE.gazePending1] = 0;
  pose[POSE.gazePending2] = 0;
}

/** Whether neither tube nor gaze has anything left to follow: what is in view moves no more by the hand. */
export function isAtStand({ pose }: Session): boolean {
  return (
    pose[POSE.pending1] === 0 &&
    pose[POSE.pending2] === 0 &&
    pose[POSE.gazePending1] === 0 &&
    pose[POSE.gazePending2] === 0
  );
}

/** Takes from what is pending in one place the part that is followed in this tick. */
function follow(pose: Float64Array, place: number, share: number): number {
  const pending = pose[place]!;
  const step = Math.abs(pending) < SETTLED_RAD ? pending : pending * share;
  pose[place] = pending - step;
  return step;
}

/** One tick of looking round. */
export function moveGaze({ pose, followShare }: Session, hand: Hand): void {
  pose[POSE.gazePending1] = pose[POSE.gazePending1]! + hand.axis1;
  pose[POSE.gazePending2] = pose[POSE.gazePending2]! + hand.axis2;
  const azimuth = pose[POSE.gazeAzimuth]! + follow(pose, POSE.gazePending1, followShare);
  const altitude = pose[POSE.gazeAltitude]! + follow(pose, POSE.gazePending2, followShare);
  pose[POSE.gazeAzimuth] = wrapAxis1("altazimuth", azimuth);
  pose[POSE.gazeAltitude] = clampAxis2("altazimuth", altitude);
}

export type TubeStep = "still" | "moved" | "sunStop";

/** One tick of the hand on the tube: gain, locks, lag, stops. The tube stops at the Sun's circle and goes only outward from it. */
export function moveTube(session: Session, hand: Hand): TubeStep {
  const { pose, state, compiled, clock, followShare } = session;
  const [gain1, gain2] = compiled.gainPermille;
  if (!state.locked[0]) pose[POSE.pending1] = pose[POSE.pending1]! + (hand.axis1 * gain1) / 1000;
  if (!state.locked[1]) pose[POSE.pending2] = pose[POSE.pending2]! + (hand.axis2 * gain2) / 1000;
  const step1 = follow(pose, POSE.pending1, followShare);
  const step2 = follow(pose, POSE.pending2, followShare);
  if (step1 === 0 && step2 === 0) return "still";
  const old1 = pose[POSE.axis1]!;
  const old2 = pose[POSE.axis2]!;
  const before = tubeDir(session);
  pose[POSE.axis1] = wrapAxis1(clock.mount, old1 + step1);
  pose[POSE.axis2] = clampAxis2(clock.mount, old2 + step2);
  const after = tubeDir(session);
  const nearSun = goesIntoSun(session, before, after);
  if (!nearSun && !goesIntoGround(session, before, after)) return "moved";
  pose[POSE.axis1] = old1;
  pose[POSE.axis2] = old2;
  dropPending(session);
  return nearSun ? "sunStop" : "still";
}

/** Whether the tube stands within the Sun's circle. */
export const isInSun = (session: Session): boolean =>
  separationRad(tubeDir(session), session.clock.sun) < SUN_CIRCLE_RAD;

/**
 * Swings a tube that another hour has put into the Sun's circle round to the other side of the sky.
 * @returns whether it had to be
 */
export function keepOffSun(session: Session): boolean {
  if (!isInSun(session)) return false;
  const { clock } = session;
  const { azRad } = altAzFromDir(clock.horizon, clock.sun);
  setTube(session, dirFromAltAz(clock.horizon, AWAY_ALTITUDE_RAD, azRad + Math.PI));
  return true;
}

/** True within the Sun's circle, unless the way leads outward. */
export function goesIntoSun({ clock }: Session, before: Dir, after: Dir): boolean {
  const off = separationRad(after, clock.sun);
  return off < SUN_CIRCLE_RAD && off <= separationRad(before, clock.sun);
}

function goesIntoGround({ clock }: Session, before: Dir, after: Dir): boolean {
  const zenith = zenithOfClock(clock);
  const height = dot(after, zenith);
  return height < GROUND_SINE && height < dot(before, zenith);
}

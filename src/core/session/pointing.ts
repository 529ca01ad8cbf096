/** What the instrument in use shows: where it points, how its image stands. All of it can be asked between two ticks. */
import { altAzFromDir } from "#core/celestial/frames.ts";
import { masFromDir, separationRad } from "#core/celestial/vector.ts";
import { gearById } from "#core/optics/gear.ts";
import { acrossAxis1, acrossAxis2, tubeRollRad } from "#core/optics/mount.ts";
import { imageOrientation } from "#core/optics/orientation.ts";
import { viewFromIcrs } from "#core/optics/viewFrame.ts";
import type { Dir, Gear, MasDir, Orientation } from "#core/seams/index.ts";
import { zenithOfClock } from "./skyClock.ts";
import { POSE, type Session } from "./state.ts";
import { roundedDas } from "./trail.ts";
import { dirOfGear, gazeDir } from "./tube.ts";

/** Nearer to the zenith than this (2"), "up" is taken from the mount. */
const AT_ZENITH_RAD = 1e-5;

/** The instrument in use. */
export function gearInUse({ state }: Session): Gear {
  return gearById(state.gear);
}

/** True where the hand turns the gaze and no tube. */
export function looksByEye({ state }: Session): boolean {
  return gearById(state.gear).kind === "eye";
}

/** Where the instrument in use points, ICRS; with the naked eye, where one looks. */
export function pointing(session: Session): Dir {
  return looksByEye(session) ? gazeDir(session) : dirOfGear(session, session.state.gear);
}

/** Where the instrument on the tube points, rounded as the trail has it. */
export function pointingMas(session: Session): MasDir {
  const { raDas, decDas } = roundedDas(dirOfGear(session, session.state.tubeGear));
  return { raMas: raDas * 100, decMas: decDas * 100 };
}

/** How far the pointing stands from a direction, radians. */
export function distanceTo(session: Session, dir: Dir): number {
  return separationRad(pointing(session), dir);
}

/** The pointing rounded to milliarcseconds, for events that say where. */
export function pointingExactMas(session: Session): MasDir {
  return masFromDir(pointing(session));
}

/** Rotation ICRS -> horizon (x north, y west, z zenith) now. The session's own array: read it, do not keep it. */
export function horizonOf({ clock }: Session): Float64Array {
  return clock.horizon;
}

/** Altitude and azimuth (north by east) of the pointing, radians. */
export function altAzOf(session: Session): { readonly altRad: number; readonly azRad: number } {
  return altAzFromDir(session.clock.horizon, pointing(session));
}

/** UTC of the sky, ms since 1970. */
export function skyTimeMs({ pose }: Session): number {
  return pose[POSE.skyMs]!;
}

/** Since the attempt's start, ms. */
export function elapsedMs({ pose }: Session): number {
  return pose[POSE.tMs]!;
}

/** The image of the instrument in use, as the tube stands now. */
export function orientationOf(session: Session): Orientation {
  const { clock, pose, compiled } = session;
  const along = pointing(session);
  const { altRad } = altAzFromDir(clock.horizon, along);
  const top = acrossAxis2(clock.mount, clock.frame, pose[POSE.axis1]!, pose[POSE.axis2]!);
  const rollRad = tubeRollRad(clock.mount, along, zenithOfClock(clock), top);
  return imageOrientation(gearInUse(session), altRad, rollRad, compiled.spec.stance);
}

/** What is up in the direct view: the zenith, or near it the way that the view moves when it is raised. */
export function upOf(session: Session): Dir {
  const { clock, pose } = session;
  const zenith = zenithOfClock(clock);
  if (distanceTo(session, zenith) > AT_ZENITH_RAD) return zenith;
  if (!looksByEye(session)) return acrossAxis2(clock.mount, clock.frame, pose[POSE.axis1]!, pose[POSE.axis2]!);
  return acrossAxis2("altazimuth", clock.horizon, pose[POSE.gazeAzimuth]!, pose[POSE.gazeAltitude]!);
}

/** Writes the rotation ICRS -> view of the instrument in use (rows right, up, forward, after flip and turn). */
export function viewOf<Out extends Float64Array | Float32Array>(session: Session, out: Out): Out {
  return viewFromIcrs(pointing(session), upOf(session), orientationOf(session), out);
}

/** The ways that the view moves when axis 1 and axis 2 grow, ICRS unit vectors across the pointing: for the hand's mark. */
export function pushDirections(session: Session): { readonly axis1: Dir; readonly axis2: Dir } {
  const { clock, pose } = session;
  return looksByEye(session)
    ? {
        axis1: acrossAxis1("altazimuth", clock.horizon, pose[POSE.gazeAzimuth]!),
        axis2: acrossAxis2("altazimuth", clock.horizon, pose[POSE.gazeAzimuth]!, pose[POSE.gazeAltitude]!),
      }
    : {
        axis1: acrossAxis1(clock.mount, clock.frame, pose[POSE.axis1]!),
        axis2: acrossAxis2(clock.mount, clock.frame, pose[POSE.axis1]!, pose[POSE.axis2]!),
      };
}

/**
 * From a drag over the field to what the hand does. A drag moves the tube as a hand would, seen by someone who faces the
 * target, whatever the image does; with the naked eye the sky follows the finger; "carry" lets the stars follow it in any
 * image, as an aid.
 */
import { exactCos, exactSin } from "#core/celestial/exactMath.ts";
import { cross, dot } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { looksByEye, orientationOf, pointing, pushDirections, upOf } from "./pointing.ts";
import { type Hand, POSE, type Session } from "./state.ts";

/** A motion on the picture or on the sky that one faces: right and up, true angle, radians. */
export type Drag = { readonly rightRad: number; readonly upRad: number };

/** Nearer to the pole of axis 1 than this (10 degrees), a drag turns it no faster: the tube has to be swung round. */
const LEAST_COSINE = 0.17;

/** Drag as a hand on the tube; on an equatorial mount it turns one knob, the one that moves the view more nearly that way. */
export function pushingHand(session: Session, drag: Drag): Hand {
  if (looksByEye(session)) return carryingHand(session, drag);
  if (session.clock.mount === "altazimuth") return { axis1: drag.rightRad, axis2: drag.upRad };
  const { along1, along2 } = alongAxes(session, drag);
  return Math.abs(along1) > Math.abs(along2) ? { axis1: along1, axis2: 0 } : { axis1: 0, axis2: along2 };
}

/** The hand that makes the stars follow the finger, whatever the image; before the gain. */
export function carryingHand(session: Session, drag: Drag): Hand {
  const { along1, along2 } = carriedAlong(session, drag);
  const axis2 = session.pose[looksByEye(session) ? POSE.gazeAltitude : POSE.axis2]!;
  return { axis1: along1 / Math.max(LEAST_COSINE, exactCos(axis2)), axis2: along2 };
}

/** How far screws turn the finder so that the stars in it follow the finger: along the two axes, radians. */
export function screwingHand(session: Session, drag: Drag): readonly [axis1: number, axis2: number] {
  const { along1, along2 } = carriedAlong(session, drag);
  return [along1, along2];
}

/** The motion of the pointing against a drag over the picture, split along the axes. */
function carriedAlong(session: Session, drag: Drag): { along1: number; along2: number } {
  const { parity, rotationRad } = orientationOf(session);
  const c = exactCos(rotationRad);
  const s = exactSin(rotationRad);
  // The drag turned and flipped back to the direct view; the tube goes against it.
  const facing = {
    rightRad: -parity * (c * drag.rightRad - s * drag.upRad),
    upRad: -(s * drag.rightRad + c * drag.upRad),
  };
  return alongAxes(session, facing);
}

/** A motion that one faces, split along the ways that the axes move the view. */
function alongAxes(session: Session, { rightRad, upRad }: Drag): { along1: number; along2: number } {
  const forward = pointing(session);
  const hint = upOf(session);
  const k = dot(hint, forward);
  const raised: Dir = [hint[0] - k * forward[0], hint[1] - k * forward[1], hint[2] - k * forward[2]];
  const size = Math.sqrt(dot(raised, raised));
  const up: Dir = [raised[0] / size, raised[1] / size, raised[2] / size];
  const right = cross(forward, up);
  const way: Dir = [
    rightRad * right[0] + upRad * up[0],
    rightRad * right[1] + upRad * up[1],
    rightRad * right[2] + upRad * up[2],
  ];
  const { axis1, axis2 } = pushDirections(session);
  return { along1: dot(way, axis1), along2: dot(way, axis2) };
}

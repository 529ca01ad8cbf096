/**
 * Mounts: axis readings to directions and back. `frame` is the rotation ICRS -> axes of the mount: `horizonFromIcrs` for an
 * alt-azimuth mount, `equatorialOfDateFromIcrs` for an equatorial one. Axis 1 is azimuth (north by east) or hour angle (west
 * positive), axis 2 altitude or declination; radians. A push of axis 1 moves the view by the cosine of axis 2, so that near
 * the zenith (or the pole) it hardly moves.
 */
import { exactAtan2, exactTan } from "#core/celestial/exactMath.ts";
import { altAzFromDir, dirFromAltAz, dirFromHourAngle, hourAngleFromDir } from "#core/celestial/frames.ts";
import { DAS_RAD, DEG, dot, normalise, TWO_PI } from "#core/celestial/vector.ts";
import type { Dir, Mat3, MountKind, Pose } from "#core/seams/index.ts";

/** A tube is kept from pointing lower: there is ground, and the stand. */
export const LOWEST_ALTITUDE_RAD = -5 * DEG;
const QUARTER_TURN = Math.PI / 2;

export type Axes = { readonly axis1Rad: number; readonly axis2Rad: number };

/** Where a tube with these axis readings points, ICRS. */
export function dirFromAxes(mount: MountKind, frame: Mat3, axis1Rad: number, axis2Rad: number): Dir {
  return mount === "altazimuth" ? dirFromAltAz(frame, axis2Rad, axis1Rad) : dirFromHourAngle(frame, axis1Rad, axis2Rad);
}

/** The axis readings of a tube that points there. */
export function axesFromDir(mount: MountKind, frame: Mat3, dir: Dir): Axes {
  if (mount === "altazimuth") {
    const { azRad, altRad } = altAzFromDir(frame, dir);
    return { axis1Rad: azRad, axis2Rad: altRad };
  }
  const { hourAngleRad, decRad } = hourAngleFromDir(frame, dir);
  return { axis1Rad: hourAngleRad, axis2Rad: decRad };
}

/** The way that the view moves when axis 1 grows: a unit vector across the pointing, ICRS. */
export function acrossAxis1(mount: MountKind, frame: Mat3, axis1Rad: number): Dir {
  return dirFromAxes(mount, frame, axis1Rad + QUARTER_TURN, 0);
}

/** The way that the view moves when axis 2 grows: a unit vector across the pointing, ICRS; the top of the tube. */
export function acrossAxis2(mount: MountKind, frame: Mat3, axis1Rad: number, axis2Rad: number): Dir {
  return dirFromAxes(mount, frame, axis1Rad, axis2Rad + QUARTER_TURN);
}

/** Axis 2 kept on its scale: an alt-azimuth tube from -5 to 90 degrees (no flipping over), declination from pole to pole. */
export function clampAxis2(mount: MountKind, axis2Rad: number): number {
  const lowest = mount === "altazimuth" ? LOWEST_ALTITUDE_RAD : -QUARTER_TURN;
  return Math.min(QUARTER_TURN, Math.max(lowest, axis2Rad));
}

/** Axis 1 within one turn: [0, 2 pi) for azimuth, (-pi, pi] for hour angle. */
export function wrapAxis1(mount: MountKind, axis1Rad: number): number {
  const turn = axis1Rad - TWO_PI * Math.floor(axis1Rad / TWO_PI);
  // A hair below zero comes out as a whole turn.
  if (turn >= TWO_PI) return 0;
  return mount === "equatorial" && turn > Math.PI ? turn - TWO_PI : turn;
}

/**
 * Where an instrument points that stands on the tube out of line with it.
 * @param offsetDas true angle along {@link acrossAxis1} and {@link acrossAxis2}, das
 */
export function dirOutOfLine(
  mount: MountKind,
  frame: Mat3,
  axis1Rad: number,
  axis2Rad: number,
  offsetDas: readonly [axis1: number, axis2: number],
): Dir {
  const along = dirFromAxes(mount, frame, axis1Rad, axis2Rad);
  if (offsetDas[0] === 0 && offsetDas[1] === 0) return along;
  const a = acrossAxis1(mount, frame, axis1Rad);
  const b = acrossAxis2(mount, frame, axis1Rad, axis2Rad);
  const ta = exactTan(offsetDas[0] * DAS_RAD);
  const tb = exactTan(offsetDas[1] * DAS_RAD);
  return normalise([
    along[0] + ta * a[0] + tb * b[0],
    along[1] + ta * a[1] + tb * b[1],
    along[2] + ta * a[2] + tb * b[2],
  ]);
}

/**
 * How far the tube is turned about itself, clockwise facing the sky, from standing upright; radians. 0 on an alt-azimuth
 * mount; on an equatorial one the top of the tube looks towards the pole.
 */
export function tubeRollRad(mount: MountKind, pointing: Dir, zenith: Dir, top: Dir): number {
  if (mount === "altazimuth") return 0;
  const along = dot(zenith, pointing);
  const up: Dir = [zenith[0] - along * pointing[0], zenith[1] - along * pointing[1], zenith[2] - along * pointing[2]];
  const right: Dir = [
    pointing[1] * up[2] - pointing[2] * up[1],
    pointing[2] * up[0] - pointing[0] * up[2],
    pointing[0] * up[1] - pointing[1] * up[0],
  ];
  return exactAtan2(dot(top, right), dot(top, up));
}

/** Axis readings as whole tenths of an arcsecond. */
export function poseFromAxes(mount: MountKind, axis1Rad: number, axis2Rad: number): Pose {
  return { mount, axis1Das: Math.round(axis1Rad / DAS_RAD), axis2Das: Math.round(axis2Rad / DAS_RAD) };
}

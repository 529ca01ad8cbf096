/**
 * How an instrument turns and mirrors what the eye gets, for an observer who stands upright, or who turns the head along
 * with the eyepiece. Derived from the reflections of plane mirrors; the tests trace rays instead of repeating this.
 */
import { exactAtan2, exactCos, exactSin } from "#core/celestial/exactMath.ts";
import { DEG } from "#core/celestial/vector.ts";
import type { Gear, Orientation, Stance } from "#core/seams/index.ts";

const DIRECT: Orientation = { parity: 1, rotationRad: 0 };
const HALF_TURN: Orientation = { parity: 1, rotationRad: Math.PI };

/** Head turned along: its top towards the target, so that the picture keeps its angle to the tube. */
function withHeadTurned(path: Gear["path"], clockRad: number): Orientation {
  if (path === "newtonian") return { parity: 1, rotationRad: Math.PI - clockRad };
  return path === "mirrorDiagonal" ? { parity: -1, rotationRad: clockRad } : { parity: 1, rotationRad: -clockRad };
}

/**
 * The image of a gear at a tube altitude: flip x where parity is -1, then turn clockwise by `rotationRad`, from the direct
 * view with the zenith up.
 * @param altitudeRad of the tube; below the horizon the image is taken as at the horizon, where an observer who looks down
 *   into a diagonal would have to step round the tube
 * @param rollRad how far the tube itself is turned, clockwise facing the sky (equatorial mounts): it carries the eyepiece
 */
export function imageOrientation(gear: Gear, altitudeRad: number, rollRad: number, stance: Stance): Orientation {
  if (gear.path === "direct") return DIRECT;
  if (gear.path === "halfTurn") return HALF_TURN;
  const clockRad = gear.clockDeg * DEG + rollRad;
  if (stance === "withEyepiece") return withHeadTurned(gear.path, clockRad);
  const altitude = Math.min(Math.PI / 2, Math.max(0, altitudeRad));
  const sinClock = exactSin(clockRad);
  const cosClock = exactCos(clockRad);
  const sinAlt = exactSin(altitude);
  const cosAlt = exactCos(altitude);
  const side = sinClock * sinClock * cosAlt;
  const level = cosClock * cosAlt;
  if (gear.path === "newtonian") {
    return { parity: 1, rotationRad: exactAtan2(sinClock * (sinAlt - level), -(cosClock * sinAlt + side)) };
  }
  if (gear.path === "mirrorDiagonal") {
    return { parity: -1, rotationRad: exactAtan2(sinClock * (sinAlt + level), cosClock * sinAlt - side) };
  }
  return { parity: 1, rotationRad: exactAtan2(sinClock * (level - sinAlt), cosClock * sinAlt + side) };
}

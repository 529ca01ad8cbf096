/**
 * Sun, Moon and planets as directions in ICRS: astrometric places (light time only), which is where they stand among stars
 * drawn without aberration. Series of astronomy-engine: within 0.5' of the full theories. Whatever decides must
 * round these first (the engine's own sine is in them).
 */
import { Body, GeoMoon, GeoVector, HelioState, Observer, ObserverVector, type Vector } from "astronomy-engine";
import type { Dir } from "#core/seams/index.ts";
import type { Site } from "./frames.ts";
import { astroTime } from "./time.ts";
import { normalise } from "./vector.ts";

/** Speed of light, au a day. */
export const LIGHT_AU_PER_DAY = 173.1446326846693;

/** The engine's names of the bodies. */
export const BODIES = {
  sun: Body.Sun,
  moon: Body.Moon,
  mercury: Body.Mercury,
  venus: Body.Venus,
  mars: Body.Mars,
  jupiter: Body.Jupiter,
  saturn: Body.Saturn,
  uranus: Body.Uranus,
  neptune: Body.Neptune,
} as const;
export type BodyName = keyof typeof BODIES;
export const BODY_NAMES = Object.keys(BODIES) as readonly BodyName[];

function dirOf({ x, y, z }: Pick<Vector, "x" | "y" | "z">): Dir {
  return normalise([x, y, z]);
}

/** Geocentric direction of a body. */
export function bodyDir(body: BodyName, utcMs: number): Dir {
  const time = astroTime(utcMs);
  return body === "moon" ? backdated(GeoMoon(time), utcMs) : dirOf(GeoVector(BODIES[body], time, false));
}

export function sunDir(utcMs: number): Dir {
  return bodyDir("sun", utcMs);
}

/** Direction of the Moon from a site (its parallax is up to 1 degree). */
export function moonDir(site: Site, utcMs: number): Dir {
  const time = astroTime(utcMs);
  const moon = GeoMoon(time);
  const here = ObserverVector(time, new Observer(site.latDeg, site.lonDeg, site.heightM), false);
  return backdated({ x: moon.x - here.x, y: moon.y - here.y, z: moon.z - here.z }, utcMs);
}

/**
 * The Moon as its light left it. Moon and Earth move on together in that second, so to first order only the Earth's own
 * way round the Sun counts: 20", the same by which aberration would shift the stars.
 */
function backdated(moon: Pick<Vector, "x" | "y" | "z">, utcMs: number): Dir {
  const { vx, vy, vz } = HelioState(Body.Earth, astroTime(utcMs));
  const [x, y, z] = dirOf(moon);
  return normalise([x - vx / LIGHT_AU_PER_DAY, y - vy / LIGHT_AU_PER_DAY, z - vz / LIGHT_AU_PER_DAY]);
}

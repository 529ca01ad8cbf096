/** Sun, Moon, planets and Jupiter's four moons as an observer sees them. */
import {
  type AstroTime,
  Body,
  GeoVector,
  Illumination,
  JupiterMoons,
  Observer,
  ObserverVector,
  RotationAxis,
} from "astronomy-engine";
import { BODIES, BODY_NAMES, type BodyName, LIGHT_AU_PER_DAY, moonDir, sunDir } from "#core/celestial/bodies.ts";
import type { Site } from "#core/celestial/frames.ts";
import { astroTime } from "#core/celestial/time.ts";
import { DEG, normalise, radecFromDir } from "#core/celestial/vector.ts";
import type { Dir, MasDir } from "#core/seams/index.ts";

/** A disc of the moment. Whole numbers: what decides may rest on them. */
export interface SolarBody extends MasDir {
  readonly name: BodyName;
  readonly milliMag: number;
  readonly diameterMas: number;
  /** Lit part of the disc, thousandths. */
  readonly litPermille: number;
  /** Position angle of the middle of the bright limb, north through east, degrees; 0 for the Sun. */
  readonly brightLimbDeg: number;
  /** Position angle of its north pole, north through east, degrees; the Moon's without libration. */
  readonly poleDeg: number;
  /** Sine of the height of the Earth over its equator, north positive, thousandths. */
  readonly tiltPermille: number;
}
export interface JupiterMoon extends MasDir {
  readonly name: "Io" | "Europa" | "Ganymede" | "Callisto";
  readonly milliMag: number;
  /** From Jupiter's middle. */
  readonly eastMas: number;
  readonly northMas: number;
  /** Nearer than Jupiter; within the disc it then crosses it, else the disc hides it. */
  readonly isBefore: boolean;
}
export interface SolarSystem {
  readonly bodies: readonly SolarBody[];
  readonly moons: readonly JupiterMoon[];
}

type Triple = readonly [x: number, y: number, z: number];
const AU_KM = 149_597_870.7;
const RAD_MAS = 3_600_000 / DEG;
const TURN_MAS = 1_296_000_000;
/** Equatorial radii, km (Archinal et al. 2018, Celest. Mech. 130, 22; from memory). */
const RADIUS_KM: Readonly<Record<BodyName, number>> = {
  sun: 695_700,
  moon: 1737.4,
  mercury: 2440.5,
  venus: 6051.8,
  mars: 3396.2,
  jupiter: 71_492,
  saturn: 60_268,
  uranus: 25_559,
  neptune: 24_764,
};
/** V at 1 au from Sun and Earth (Astronomical Almanac; from memory). */
const MOON_V10 = { Io: -1.68, Europa: -1.41, Ganymede: -2.09, Callisto: -1.05 } as const;

/**
 * The bodies at an instant from a site: astrometric ICRS places with the observer's parallax (mas), V (rings of Saturn in
 * it), apparent equatorial diameter, phase and bright limb. Pure. Series of astronomy-engine: places within 0.5'.
 */
export function solarSystemAt(site: Site, utcMs: number): SolarSystem {
  const time = astroTime(utcMs);
  const here = ObserverVector(time, new Observer(site.latDeg, site.lonDeg, site.heightM), false);
  const from = (body: Body): Triple => {
    const { x, y, z } = GeoVector(body, time, false);
    return [x - here.x, y - here.y, z - here.z];
  };
  const bodies = BODY_NAMES.map((name): SolarBody => {
    const vector = from(BODIES[name]);
    const dir = name === "moon" ? moonDir(site, utcMs) : normalise(vector);
    const { mag, phase_fraction: lit } = Illumination(BODIES[name], time);
    return {
      name,
      ...masOf(dir),
      milliMag: Math.round(mag * 1000),
      diameterMas: Math.round(2 * Math.asin(RADIUS_KM[name] / (lengthOf(vector) * AU_KM)) * RAD_MAS),
      litPermille: name === "sun" ? 1000 : Math.round(lit * 1000),
      ...poleOf(BODIES[name], dir, time),
      brightLimbDeg: name === "sun" ? 0 : Math.round(positionAngleDeg(dir, sunDir(utcMs))) % 360,
    };
  });
  return { bodies, moons: moonsOf(from(Body.Jupiter), utcMs) };
}

function moonsOf(jupiter: Triple, utcMs: number): JupiterMoon[] {
  const earthAu = lengthOf(jupiter);
  const left = astroTime(utcMs - (earthAu / LIGHT_AU_PER_DAY) * 86_400_000);
  const sunAu = Illumination(Body.Jupiter, left).helio_dist;
  const { io, europa, ganymede, callisto } = JupiterMoons(left);
  const middle = normalise(jupiter);
  return Object.entries({ Io: io, Europa: europa, Ganymede: ganymede, Callisto: callisto }).map(
    ([word, { x, y, z }]) => {
      const name = word as JupiterMoon["name"];
      const vector: Triple = [jupiter[0] + x, jupiter[1] + y, jupiter[2] + z];
      const [east, north] = offsetOf(middle, normalise(vector));
      return {
        name,
        ...masOf(normalise(vector)),
        milliMag: Math.round(1000 * (MOON_V10[name] + 5 * Math.log10(sunAu * earthAu))),
        eastMas: Math.round(east * RAD_MAS),
        northMas: Math.round(north * RAD_MAS),
        isBefore: lengthOf(vector) < earthAu,
      };
    },
  );
}

/** How the body's axis stands before an observer (axes of the IAU's report of 2015, by the engine). */
function poleOf(body: Body, dir: Dir, time: AstroTime): Pick<SolarBody, "poleDeg" | "tiltPermille"> {
  const { x, y, z } = RotationAxis(body, time).north;
  const pole: Dir = [x, y, z];
  return {
    poleDeg: Math.round(10 * positionAngleDeg(dir, pole)) / 10,
    tiltPermille: Math.round(-1000 * (x * dir[0] + y * dir[1] + z * dir[2])),
  };
}

const lengthOf = ([x, y, z]: Triple) => Math.sqrt(x * x + y * y + z * z);

/** Components towards east and north of a direction seen beside another, as sines. */
function offsetOf(at: Dir, other: Dir): [east: number, north: number] {
  const flat = Math.sqrt(at[0] * at[0] + at[1] * at[1]);
  const along = at[0] * other[0] + at[1] * other[1] + at[2] * other[2];
  return [(at[0] * other[1] - at[1] * other[0]) / flat, (other[2] - at[2] * along) / flat];
}

/** Position angle of one direction from another (Meeus 1998, Astronomical Algorithms, eq. 48.5), degrees in [0, 360). */
function positionAngleDeg(at: Dir, other: Dir): number {
  const [east, north] = offsetOf(at, other);
  return (Math.atan2(east, north) / DEG + 360) % 360;
}

function masOf(dir: Dir): MasDir {
  const { raRad, decRad } = radecFromDir(dir);
  return { raMas: Math.round(raRad * RAD_MAS) % TURN_MAS, decMas: Math.round(decRad * RAD_MAS) };
}

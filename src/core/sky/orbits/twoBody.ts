/** Comets and minor planets as bodies that the Sun alone moves. */
import { Body, HelioVector, Observer, ObserverVector } from "astronomy-engine";
import { LIGHT_AU_PER_DAY } from "#core/celestial/bodies.ts";
import type { Site } from "#core/celestial/frames.ts";
import { astroTime, julianDate } from "#core/celestial/time.ts";
import { DEG, normalise } from "#core/celestial/vector.ts";
import { InputError } from "#core/seams/errors.ts";
import type { Dir } from "#core/seams/index.ts";

/** Osculating elements, ecliptic and equinox of J2000. */
export interface OrbitElements {
  /** Julian date of the passage nearest the Sun, TT. */
  readonly perihelionJd: number;
  readonly perihelionAu: number;
  /** Below 1 an ellipse, 1 a parabola, above 1 a hyperbola. */
  readonly eccentricity: number;
  readonly inclinationDeg: number;
  readonly nodeDeg: number;
  /** From the node to the perihelion. */
  readonly argumentDeg: number;
}

/** Gaussian constant, rad/day. */
const GAUSS = 0.01720209895;
/** Nearer to 1 than this the parabola is as good as what the doubles of an ellipse hold. */
const PARABOLIC = 1e-8;
const OBLIQUITY_2000_RAD = (84381.406 / 3600) * DEG;
const TURN = 2 * Math.PI;

/**
 * True anomaly (rad) and distance (au), so many days after the perihelion.
 * Meeus (1998, Astronomical Algorithms, ch. 30, 34); hyperbola likewise with hyperbolic functions.
 * @throws InputError where the perihelion is not above zero or the eccentricity is below it
 */
export function anomalyOf(
  { perihelionAu: q, eccentricity: e }: Pick<OrbitElements, "perihelionAu" | "eccentricity">,
  days: number,
): { anomalyRad: number; distanceAu: number } {
  if (!(q > 0) || !(e >= 0))
    throw new InputError(
      `no orbit has perihelion ${q} au and eccentricity ${e}`,
      "Give a perihelion above 0 and an eccentricity of 0 or more.",
    );
  const tan =
    Math.abs(e - 1) < PARABOLIC ? parabolicTan(q, days) : e < 1 ? ellipticTan(q, e, days) : hyperbolicTan(q, e, days);
  const anomalyRad = 2 * Math.atan(tan);
  return { anomalyRad, distanceAu: (q * (1 + e)) / (1 + e * Math.cos(anomalyRad)) };
}

/** Tangent of half the true anomaly: Barker's equation, solved. */
function parabolicTan(q: number, days: number): number {
  const half = ((1.5 * GAUSS) / Math.SQRT2) * (days / (q * Math.sqrt(q)));
  const y = Math.cbrt(half + Math.sqrt(half * half + 1));
  return y - 1 / y;
}

function ellipticTan(q: number, e: number, days: number): number {
  const a = q / (1 - e);
  const turned = (GAUSS * days) / (a * Math.sqrt(a));
  const mean = turned - TURN * Math.round(turned / TURN);
  const eccentric = root(
    (x) => x - e * Math.sin(x) - mean,
    (x) => 1 - e * Math.cos(x),
    -Math.PI,
    Math.PI,
  );
  return Math.sqrt((1 + e) / (1 - e)) * Math.tan(eccentric / 2);
}

function hyperbolicTan(q: number, e: number, days: number): number {
  const a = q / (e - 1);
  const mean = (GAUSS * days) / (a * Math.sqrt(a));
  const far = Math.asinh(Math.abs(mean) / (e - 1)) + 1;
  const eccentric = root(
    (x) => e * Math.sinh(x) - x - mean,
    (x) => e * Math.cosh(x) - 1,
    -far,
    far,
  );
  return Math.sqrt((e + 1) / (e - 1)) * Math.tanh(eccentric / 2);
}

/** Root of a rising function between two bounds: Newton's step, or half the gap where that would leave them. */
function root(f: (x: number) => number, slope: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  let x = 0;
  for (let i = 0; i < 200 && high - low > 1e-15; i++) {
    const value = f(x);
    if (value === 0) return x;
    if (value < 0) low = x;
    else high = x;
    const next = x - value / slope(x);
    const taken = next > low && next < high ? next : (low + high) / 2;
    if (taken === x) return x;
    x = taken;
  }
  return x;
}

/** Julian date (TT) of the perihelion nearest to an epoch at which an ellipse's mean anomaly is known. */
export function perihelionJdOf(
  { perihelionAu: q, eccentricity: e }: Pick<OrbitElements, "perihelionAu" | "eccentricity">,
  epochJd: number,
  meanAnomalyDeg: number,
): number {
  const a = q / (1 - e);
  const fromPerihelion = meanAnomalyDeg - 360 * Math.round(meanAnomalyDeg / 360);
  return epochJd - (fromPerihelion * DEG * a * Math.sqrt(a)) / GAUSS;
}

/** Heliocentric place at so many days after the perihelion: au, ICRS. */
export function heliocentricPlace(orbit: OrbitElements, days: number): [number, number, number] {
  const { anomalyRad, distanceAu } = anomalyOf(orbit, days);
  const u = orbit.argumentDeg * DEG + anomalyRad;
  const [node, incline] = [orbit.nodeDeg * DEG, orbit.inclinationDeg * DEG];
  const x = distanceAu * (Math.cos(node) * Math.cos(u) - Math.sin(node) * Math.sin(u) * Math.cos(incline));
  const y = distanceAu * (Math.sin(node) * Math.cos(u) + Math.cos(node) * Math.sin(u) * Math.cos(incline));
  const z = distanceAu * Math.sin(u) * Math.sin(incline);
  const [c, s] = [Math.cos(OBLIQUITY_2000_RAD), Math.sin(OBLIQUITY_2000_RAD)];
  return [x, c * y - s * z, s * y + c * z];
}

/** Where a body stands for an observer. */
export interface OrbitPlace {
  /** Astrometric: light time, no aberration, as the whole sky has it. */
  readonly dir: Dir;
  /** From the observer, and from the Sun. */
  readonly earthAu: number;
  readonly sunAu: number;
  /** From the Sun to the observer. */
  readonly observerAu: number;
}

/**
 * Where such a body stands among the stars.
 * @param site the observer's: a body at 0.1 au stands up to 1.5' elsewhere for it; without one, from the Earth's middle
 */
export function orbitPlace(orbit: OrbitElements, utcMs: number, site?: Site): OrbitPlace {
  const time = astroTime(utcMs);
  const middle = HelioVector(Body.Earth, time);
  const here = site && ObserverVector(time, new Observer(site.latDeg, site.lonDeg, site.heightM), false);
  const earth = { x: middle.x + (here?.x ?? 0), y: middle.y + (here?.y ?? 0), z: middle.z + (here?.z ?? 0) };
  const days = julianDate(utcMs) + (time.tt - time.ut) - orbit.perihelionJd;
  let earthAu = 0;
  let place = heliocentricPlace(orbit, days);
  let seen: [number, number, number] = [0, 0, 0];
  for (let pass = 0; pass < 3; pass++) {
    place = heliocentricPlace(orbit, days - earthAu / LIGHT_AU_PER_DAY);
    seen = [place[0] - earth.x, place[1] - earth.y, place[2] - earth.z];
    earthAu = lengthOf(seen);
  }
  const observerAu = lengthOf([earth.x, earth.y, earth.z]);
  return { dir: normalise(seen), earthAu, sunAu: lengthOf(place), observerAu };
}

const lengthOf = ([x, y, z]: readonly [number, number, number]) => Math.sqrt(x * x + y * y + z * z);

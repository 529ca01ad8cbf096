/** Directions as unit vectors in ICRS, on exact mathematics throughout. */
import type { Dir, MasDir } from "#core/seams/index.ts";
import { exactAtan2, exactCos, exactHypot3, exactSin, roundHalfUp } from "./exactMath.ts";

/** Radians in a degree, a tenth of an arcsecond, a milliarcsecond. */
export const DEG = Math.PI / 180;
export const DAS_RAD = Math.PI / 6_480_000;
export const MAS_RAD = Math.PI / 648_000_000;
export const TWO_PI = 2 * Math.PI;
const FULL_CIRCLE_MAS = 1_296_000_000;

export type RaDec = { raRad: number; decRad: number };

/** Unit vector of a right ascension and declination, radians. */
export function dirFromRadec(raRad: number, decRad: number): Dir {
  const c = exactCos(decRad);
  return [c * exactCos(raRad), c * exactSin(raRad), exactSin(decRad)];
}

/** Right ascension in [0, 2 pi) and declination, radians; written into `out` where given. At a pole the right ascension is 0. */
export function radecFromDir(dir: Dir, out: RaDec = { raRad: 0, decRad: 0 }): RaDec {
  const [x, y, z] = dir;
  out.raRad = turnOf(exactAtan2(y, x));
  out.decRad = exactAtan2(z, exactHypot3(x, y, 0));
  return out;
}

/** An angle of (-2 pi, 2 pi) brought to [0, 2 pi). */
export function turnOf(angleRad: number): number {
  const positive = angleRad < 0 ? angleRad + TWO_PI : angleRad + 0;
  return positive < TWO_PI ? positive : 0;
}

export function dot(a: Dir, b: Dir): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function cross(a: Dir, b: Dir): Dir {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** The vector at length 1. A null vector gives NaN. */
export function normalise(v: Dir): Dir {
  const length = exactHypot3(v[0], v[1], v[2]);
  return [v[0] / length, v[1] / length, v[2] / length];
}

/** Angle between two directions, radians in [0, pi]; by cross and dot product, so good for tiny angles and near pi. */
export function separationRad(a: Dir, b: Dir): number {
  const x = a[1] * b[2] - a[2] * b[1];
  const y = a[2] * b[0] - a[0] * b[2];
  const z = a[0] * b[1] - a[1] * b[0];
  return exactAtan2(exactHypot3(x, y, z), dot(a, b));
}

/**
 * Position angle of `to` seen from `from`, north through east, radians in [0, 2 pi). Meaningless (but finite) for equal and
 * opposite directions. The difference of the vectors is used, which is exact for near neighbours.
 */
export function positionAngleRad(from: Dir, to: Dir): number {
  const [x, y, z] = from;
  const dx = to[0] - x;
  const dy = to[1] - y;
  const east = x * dy - y * dx;
  const north = (x * x + y * y) * (to[2] - z) - z * (x * dx + y * dy);
  return turnOf(exactAtan2(east, north));
}

/** The direction `distanceRad` away at position angle `angleRad` (north through east). At a pole north is the meridian of right ascension 0. */
export function offsetDir(from: Dir, angleRad: number, distanceRad: number): Dir {
  const [x, y, z] = from;
  const rho = exactHypot3(x, y, 0);
  const cosRa = rho > 0 ? x / rho : 1;
  const sinRa = rho > 0 ? y / rho : 0;
  const along = exactCos(distanceRad);
  const north = exactSin(distanceRad) * exactCos(angleRad);
  const east = exactSin(distanceRad) * exactSin(angleRad);
  return normalise([
    along * x - north * z * cosRa - east * sinRa,
    along * y - north * z * sinRa + east * cosRa,
    along * z + north * rho,
  ]);
}

/** The direction at fraction `t` of the great circle from `a` to `b`. Opposite directions have no such circle: the result is NaN or arbitrary. */
export function slerpDir(a: Dir, b: Dir, t: number): Dir {
  const angle = separationRad(a, b);
  const whole = exactSin(angle);
  // Below 1e-9 rad the chord and the arc agree to the last bit.
  const wa = angle < 1e-9 ? 1 - t : exactSin((1 - t) * angle) / whole;
  const wb = angle < 1e-9 ? t : exactSin(t * angle) / whole;
  return normalise([wa * a[0] + wb * b[0], wa * a[1] + wb * b[1], wa * a[2] + wb * b[2]]);
}

/** Unit vector of a compiled direction. */
export function dirFromMas(at: MasDir): Dir {
  return dirFromRadec(at.raMas * MAS_RAD, at.decMas * MAS_RAD);
}

/** A direction rounded to whole milliarcseconds, right ascension in [0, 1 296 000 000). */
export function masFromDir(dir: Dir): MasDir {
  const { raRad, decRad } = radecFromDir(dir);
  const raMas = roundHalfUp(raRad / MAS_RAD);
  return { raMas: raMas === FULL_CIRCLE_MAS ? 0 : raMas, decMas: roundHalfUp(decRad / MAS_RAD) };
}

/** Angle between two compiled directions, whole tenths of an arcsecond. */
export function separationDas(a: MasDir, b: MasDir): number {
  return roundHalfUp(separationRad(dirFromMas(a), dirFromMas(b)) / DAS_RAD);
}

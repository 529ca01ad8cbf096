/**
 * Rotations between the frames of the sky, row-major: `out = m · v`. ICRS is taken as the mean equator and equinox of J2000
 * (0.02" apart). Aberration (at most 21") is left out throughout. What depends on time comes from astronomy-engine and so
 * through the engine's own sine: whatever decides must round it first.
 */
import { Observer, Rotation_EQJ_HOR, type RotationMatrix } from "astronomy-engine";
import type { Dir, Mat3 } from "#core/seams/index.ts";
import { exactAtan2, exactCos, exactSin } from "./exactMath.ts";
import { mulMat, mulMatVec, rotationAbout } from "./matrix.ts";
import { astroTime } from "./time.ts";
import { DEG, turnOf } from "./vector.ts";

/** Latitude north and longitude east positive. */
export type Site = { readonly latDeg: number; readonly lonDeg: number; readonly heightM: number };

const X: Dir = [1, 0, 0];
const Y: Dir = [0, 1, 0];
const Z: Dir = [0, 0, 1];

/** A rotation of astronomy-engine in this project's order. */
export function rowMajor({ rot }: RotationMatrix): Float64Array {
  const m = new Float64Array(9);
  // astronomy-engine keeps its matrices by column.
  for (let row = 0; row < 3; row++) for (let col = 0; col < 3; col++) m[row * 3 + col] = rot[col]![row]!;
  return m;
}

/** ICRS to the horizon frame (x north, y west, z zenith) of a site and instant, with precession and nutation, without refraction. */
export function horizonFromIcrs(site: Site, utcMs: number): Float64Array {
  return rowMajor(Rotation_EQJ_HOR(astroTime(utcMs), new Observer(site.latDeg, site.lonDeg, site.heightM)));
}

/**
 * ICRS to the axes of an equatorial mount: x towards the equator on the meridian, y to the west point, z to the pole of
 * date. Hour angle = atan2(y, x), west positive; declination = asin(z). Left-handed, as hour angle runs westward.
 */
export function equatorialOfDateFromIcrs(site: Site, utcMs: number): Float64Array {
  return mulMat(hourAngleSwap(site.latDeg), horizonFromIcrs(site, utcMs));
}

/** Horizon frame to hour angle axes at a latitude, and (being its own inverse) back. */
export function hourAngleSwap(latDeg: number): Float64Array {
  const s = exactSin(latDeg * DEG);
  const c = exactCos(latDeg * DEG);
  return Float64Array.of(-s, 0, c, 0, 1, 0, c, 0, s);
}

/** Hour angle (west positive, (-pi, pi]) and declination of date of an ICRS direction; `e` from equatorialOfDateFromIcrs. */
export function hourAngleFromDir(e: Mat3, dir: Dir): { hourAngleRad: number; decRad: number } {
  const [x, y, z] = mulMatVec(e, dir);
  return { hourAngleRad: exactAtan2(y, x), decRad: exactAtan2(z, Math.sqrt(x * x + y * y)) };
}

/** ICRS direction of an hour angle (west positive) and declination of date. */
export function dirFromHourAngle(e: Mat3, hourAngleRad: number, decRad: number): Dir {
  const c = exactCos(decRad);
  return backTo(e, c * exactCos(hourAngleRad), c * exactSin(hourAngleRad), exactSin(decRad));
}

/** Altitude and azimuth (from north by east, [0, 2 pi)) of an ICRS direction; `h` from horizonFromIcrs. */
export function altAzFromDir(h: Mat3, dir: Dir): { altRad: number; azRad: number } {
  const [north, west, up] = mulMatVec(h, dir);
  return { altRad: exactAtan2(up, Math.sqrt(north * north + west * west)), azRad: turnOf(exactAtan2(-west, north)) };
}

/** ICRS direction of an altitude and azimuth (from north by east). */
export function dirFromAltAz(h: Mat3, altRad: number, azRad: number): Dir {
  const c = exactCos(altRad);
  return backTo(h, c * exactCos(azRad), -c * exactSin(azRad), exactSin(altRad));
}

/** The inverse rotation of (x, y, z), with the transpose read in place. */
function backTo(m: Mat3, x: number, y: number, z: number): Dir {
  return [m[0]! * x + m[3]! * y + m[6]! * z, m[1]! * x + m[4]! * y + m[7]! * z, m[2]! * x + m[5]! * y + m[8]! * z];
}

/** The zenith in ICRS. */
export function zenithDir(h: Mat3): Dir {
  return [h[6]!, h[7]!, h[8]!];
}

/** The celestial north pole of date in ICRS; `h` from horizonFromIcrs of a site at that latitude. */
export function northPoleOfDate(h: Mat3, latDeg: number): Dir {
  return dirFromAltAz(h, latDeg * DEG, 0);
}

/**
 * ICRS to galactic: x to the galactic centre, z to the galactic pole. Hipparcos definition (ESA SP-1200, 1997, vol. 1,
 * eq. 1.5.11), digits as in ERFA's icrs2g.
 */
export const galacticFromIcrs: Float64Array = Float64Array.of(
  -0.05487556041621537,
  -0.873437090234885,
  -0.4838350155487132,
  0.49410942787558365,
  -0.4448296299600112,
  0.7469822444972188,
  -0.8676661490190047,
  -0.19807637343120152,
  0.4559837761750669,
);

/** ICRS to the mean ecliptic and equinox of J2000: obliquity 84381.406" (IAU 2006). */
export const eclipticFromIcrs: Float64Array = rotationAbout(X, (-84381.406 / 3600) * DEG);

/**
 * ICRS to the mean equator and equinox of a Julian year (TT): the three angles of IAU 2006 (Capitaine, Wallace & Chapront
 * 2003, A&A 412, 567, eq. 40), coefficients from memory. Good for centuries about 2000.
 */
export function precessionFromIcrs(julianYear: number): Float64Array {
  const t = (julianYear - 2000) / 100;
  const zeta = 2.650545 + t * (2306.083227 + t * (0.2988499 + t * (0.01801828 + t * -0.000005971)));
  const z = -2.650545 + t * (2306.077181 + t * (1.0927348 + t * (0.01826837 + t * -0.000028596)));
  const theta = t * (2004.191903 + t * (-0.4294934 + t * (-0.04182264 + t * -0.000007089)));
  const arcsec = DEG / 3600;
  return mulMat(
    rotationAbout(Z, z * arcsec),
    mulMat(rotationAbout(Y, -theta * arcsec), rotationAbout(Z, zeta * arcsec)),
  );
}

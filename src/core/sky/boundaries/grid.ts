/**
 * The grid on which borders of constellations lie: right ascension and declination of B1875 (Delporte 1930; Roman 1987,
 * PASP 99, 695), a line every 1.25 arcmin.
 */
import { DEG, dirFromRadec, radecFromDir } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";

/** Grid lines to a degree. */
export const GRID_PER_DEG = 48;
export const COLUMNS = 360 * GRID_PER_DEG;
export const ROWS = 180 * GRID_PER_DEG;

/** A direction by a row-major rotation. */
const turned = (m: readonly number[], [x, y, z]: Dir): Dir => [
  m[0]! * x + m[1]! * y + m[2]! * z,
  m[3]! * x + m[4]! * y + m[5]! * z,
  m[6]! * x + m[7]! * y + m[8]! * z,
];

/**
 * ICRS direction of a place of the grid; halves are the middles of cells.
 * @param frame from B1875 to ICRS, row-major
 * @param column from right ascension 0 eastward
 * @param row from the south pole
 */
export function dirOfGrid(frame: readonly number[], column: number, row: number): Dir {
  return turned(frame, dirFromRadec((column / GRID_PER_DEG) * DEG, (row / GRID_PER_DEG - 90) * DEG));
}

/** Place on the grid of an ICRS direction. */
export function gridOfDir(frame: readonly number[], dir: Dir): { column: number; row: number } {
  const back = [0, 3, 6, 1, 4, 7, 2, 5, 8].map((i) => frame[i]!);
  const { raRad, decRad } = radecFromDir(turned(back, dir));
  return { column: (raRad / DEG) * GRID_PER_DEG, row: (decRad / DEG + 90) * GRID_PER_DEG };
}

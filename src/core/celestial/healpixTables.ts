/** How the twelve base pixels of HEALPix lie (Gorski et al. 2005, ApJ 622, 759); nested numbering. Tables from memory, checked by test. */

/** Row of a base pixel's southern corner, in units of a base pixel, counted from the north pole. */
export const FACE_ROW: readonly number[] = [2, 2, 2, 2, 3, 3, 3, 3, 4, 4, 4, 4];
/** Longitude of a base pixel's centre line, in units of 45 degrees. */
export const FACE_LONGITUDE: readonly number[] = [1, 3, 5, 7, 0, 2, 4, 6, 1, 3, 5, 7];

/** Steps to the eight neighbours inside a base pixel: SW, W, NW, N, NE, E, SE, S. */
export const STEP_X: readonly number[] = [-1, -1, 0, 1, 1, 1, 0, -1];
export const STEP_Y: readonly number[] = [0, 1, 1, 1, 0, -1, -1, -1];

/**
 * Base pixel beyond an edge or corner: row = 4 + (x too small -1, too large +1) + (y too small -3, too large +3), column =
 * base pixel; -1 where eight pixels do not meet.
 */
export const FACE_BEYOND: readonly (readonly number[])[] = [
  [8, 9, 10, 11, -1, -1, -1, -1, 10, 11, 8, 9],
  [5, 6, 7, 4, 8, 9, 10, 11, 9, 10, 11, 8],
  [-1, -1, -1, -1, 5, 6, 7, 4, -1, -1, -1, -1],
  [4, 5, 6, 7, 11, 8, 9, 10, 11, 8, 9, 10],
  [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11],
  [1, 2, 3, 0, 0, 1, 2, 3, 5, 6, 7, 4],
  [-1, -1, -1, -1, 7, 4, 5, 6, -1, -1, -1, -1],
  [3, 0, 1, 2, 3, 0, 1, 2, 4, 5, 6, 7],
  [2, 3, 0, 1, -1, -1, -1, -1, 0, 1, 2, 3],
];

/** What to do with x and y there (rows as above; column = base pixel / 4): 1 mirrors x, 2 mirrors y, 4 swaps them. */
export const TURN_BEYOND: readonly (readonly number[])[] = [
  [0, 0, 3],
  [0, 0, 6],
  [0, 0, 0],
  [0, 0, 5],
  [0, 0, 0],
  [5, 0, 0],
  [0, 0, 0],
  [6, 0, 0],
  [3, 0, 0],
];

/**
 * The rules of the score, version 1, as numbers. Lengths are in the hopping field: the true field of the instrument one
 * hops with, whatever is in use at the moment.
 */

export const SCORE_VERSION = 1;

/** Prices in whole points, taken from care. */
export const PRICE = {
  /** First, second and third wrong claim; the third ends the attempt. */
  wrongClaims: [10, 20, 40],
  restart: 5,
  /** By grade; the third grade ends the scored part instead. */
  hints: { 1: 4, 2: 10 },
  aids: { carry: 5, asInInstrument: 10, compass: 3 },
  /** Care may go below zero so far and no further. */
  careFloor: -70,
} as const;

/** Half the width of the corridor about the ways, in hopping fields. */
export const CORRIDOR_HALF_FIELDS = 0.5;
/** A detour is free up to this much of par, or up to par and half a field, whichever is longer. */
export const FREE_PAR_TENTHS = 13;
/** Share of the field (permille) below which a wiggle is the hand's, and the most it may be: 3 arcminutes. */
export const WIGGLE = { fieldPermille: 20, mostDas: 1800 } as const;
/** A pin within the first is exact, beyond the second worth nothing; in between it falls evenly. Permille of the field. */
export const PIN = { fullPermille: 100, nonePermille: 500 } as const;
/** A pin answers the question as long as the tube has not gone further from where it was asked. Permille of the field. */
export const PIN_STAYS_PERMILLE = 250;
/** Longest trail that is judged, in hopping fields: a finder's, three hundred times round the sky. */
export const MOST_FIELDS = 20_000;

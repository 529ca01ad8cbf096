/**
 * The stars of a view, gathered from the sky's blocks anew for each frame: a few hundredths of a millisecond here save the
 * graphics processor every star outside the field, and a tile that comes into view costs nothing that the others do not.
 */
import { atHeight } from "#core/eye/lowAir.ts";
import { EDGE_MILLI_MAG } from "#core/eye/margin.ts";
import type { StarBlock } from "#core/seams/index.ts";

/** Three floats of direction (ICRS), then V and B-V as signed 16-bit thousandths. */
export const STAR_BYTES = 16;
const WORDS = STAR_BYTES / 4;
const HALFWORDS = STAR_BYTES / 2;
/** Colours beyond these are shown as these. */
const BLUEST_BV = -0.3;
const REDDEST_BV = 1.8;

/** What moves among the stars is no point and does not twinkle: its colour is written so much redder (0.001 mag). */
export const STEADY_MILLI = 10_000;

/** Stars in a row, each written `copies` times running: once for a point, once for each corner of a quad. */
export interface StarRows {
  floats: Float32Array;
  halfwords: Int16Array;
  /** Stars in use, and for how many there is room. */
  count: number;
  capacity: number;
  readonly copies: 1 | 4;
}
/** @param capacity - stars; more are given room as they come */
export const createStarRows = (copies: 1 | 4, capacity = 1024): StarRows => {
  const rows = { floats: new Float32Array(), halfwords: new Int16Array(), count: 0, capacity: 0, copies };
  grow(rows, capacity);
  return rows;
};
const grow = (rows: StarRows, capacity: number): void => {
  const buffer = new ArrayBuffer(capacity * rows.copies * STAR_BYTES);
  const floats = new Float32Array(buffer);
  floats.set(rows.floats);
  rows.floats = floats;
  rows.halfwords = new Int16Array(buffer);
  rows.capacity = capacity;
};
/** The air of an open sky: what it takes of each star by its height, against what it takes where the limit holds. */
export interface LowAir {
  /** ICRS. */
  readonly zenith: Float64Array;
  /** 0.001 mag, as core/eye/lowAir.ts has it. */
  lossMilliMag: ArrayLike<number>;
  inLimitMilliMag: number;
}
/** V (0.001 mag) of a star as it stands against the limit. */
const milliMagOf = (block: StarBlock, i: number, air: LowAir | null): number => {
  const milliMag = block.milliMag[i]!;
  if (!air) return milliMag;
  const { dirs } = block;
  const { zenith } = air;
  const sine = zenith[0]! * dirs[i * 3]! + zenith[1]! * dirs[i * 3 + 1]! + zenith[2]! * dirs[i * 3 + 2]!;
  return milliMag + Math.round(atHeight(air.lossMilliMag, sine)) - air.inLimitMilliMag;
};
const FAINTEST = 32_767;
/** @param milliMag - V (0.001 mag) as which it is shown */
const add = (rows: StarRows, block: StarBlock, i: number, milliMag: number): void => {
  if (rows.count === rows.capacity) grow(rows, rows.capacity * 2);
  const { floats, halfwords, copies } = rows;
  const { dirs } = block;
  const colourBV = Math.min(REDDEST_BV, Math.max(BLUEST_BV, block.colourBV[i]!));
  const milliColour = Math.round(1000 * colourBV) + (block.moves ? STEADY_MILLI : 0);
  let row = rows.count++ * copies;
  for (let copy = 0; copy < copies; copy++, row++) {
    floats[row * WORDS] = dirs[i * 3]!;
    floats[row * WORDS + 1] = dirs[i * 3 + 1]!;
    floats[row * WORDS + 2] = dirs[i * 3 + 2]!;
    halfwords[row * HALFWORDS + 6] = Math.min(FAINTEST, milliMag);
    halfwords[row * HALFWORDS + 7] = milliColour;
  }
};

/** How many stars of a block (brightest first) have V (0.001 mag) up to a limit. */
export const countTo = (block: StarBlock, milliMag: number): number => {
  let low = 0;
  let high = block.count;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (block.milliMag[middle]! <= milliMag) low = middle + 1;
    else high = middle;
  }
  return low;
};

/** Invented stars are never shown brighter than .25 mag above the limit: grain, in which nothing can be recognised. */
const GRAIN_MILLI_MAG = EDGE_MILLI_MAG + 250;
const ANY = -32_768;

/**
 * Gathers the stars with V (0.001 mag) in `from < V <= to` within a circle about forward, the last row of the view matrix.
 * @param rows - written anew
 * @param to - the limit and the edge below it
 * @param air - null in an instrument: its field is too narrow to tell
 */
export const gatherPoints = (
  rows: StarRows,
  blocks: readonly StarBlock[],
  viewFromIcrs: ArrayLike<number>,
  cosReach: number,
  from: number,
  to: number,
  air: LowAir | null = null,
): void => {
  rows.count = 0;
  const x = viewFromIcrs[6]!;
  const y = viewFromIcrs[7]!;
  const z = viewFromIcrs[8]!;
  for (let b = 0; b < blocks.length; b++) {
    const block = blocks[b]!;
    const { dirs } = block;
    const end = countTo(block, air ? to + air.inLimitMilliMag : to);
    const begin = block.invented || air ? 0 : countTo(block, from);
    const brightest = block.invented ? to - GRAIN_MILLI_MAG : ANY;
    for (let i = begin; i < end; i++) {
      if (x * dirs[i * 3]! + y * dirs[i * 3 + 1]! + z * dirs[i * 3 + 2]! < cosReach) continue;
      const milliMag = milliMagOf(block, i, air);
      if (air && (milliMag > to || (milliMag <= from && !block.invented))) continue;
      add(rows, block, i, Math.max(brightest, milliMag));
    }
  }
};

/** What a quad needs to know of the field, device px. */
export interface QuadField {
  stereographic: boolean;
  pxPerPlane: number;
  /** Up to here light is let through alike; beyond there is none. */
  wholePx: number;
  edgePx: number;
  /** Reach of a star's glare: `glarePx + glarePxPerMag * (toMag - V)`. */
  glarePx: number;
  glarePxPerMag: number;
}
/**
 * Gathers the stars with V (0.001 mag) up to `to` as quads: those whose light lies wholly within the field, and those that
 * its stop cuts.
 * @param whole @param cut - written anew
 */
export const gatherQuads = (
  whole: StarRows,
  cut: StarRows,
  blocks: readonly StarBlock[],
  viewFromIcrs: ArrayLike<number>,
  field: QuadField,
  to: number,
  air: LowAir | null = null,
): void => {
  whole.count = 0;
  cut.count = 0;
  const x = viewFromIcrs[6]!;
  const y = viewFromIcrs[7]!;
  const z = viewFromIcrs[8]!;
  const cosLeast = field.stereographic ? -0.9 : 0.02;
  for (let b = 0; b < blocks.length; b++) {
    const block = blocks[b]!;
    if (block.invented) continue;
    const { dirs } = block;
    const end = countTo(block, air ? to + air.inLimitMilliMag : to);
    for (let i = 0; i < end; i++) {
      const milliMag = milliMagOf(block, i, air);
      if (milliMag > to) continue;
      const cos = x * dirs[i * 3]! + y * dirs[i * 3 + 1]! + z * dirs[i * 3 + 2]!;
      if (cos <= cosLeast) continue;
      const squared = field.stereographic ? (4 * (1 - cos)) / (1 + cos) : (1 - cos * cos) / (cos * cos);
      const px = field.pxPerPlane * Math.sqrt(Math.max(0, squared));
      const reach = field.glarePx + (field.glarePxPerMag * (to - milliMag)) / 1000;
      if (px + reach < field.wholePx) add(whole, block, i, milliMag);
      else if (px - reach < field.edgePx) add(cut, block, i, milliMag);
    }
  }
};

/** Stars of many blocks as two compact interleaved arrays, ready for the graphics processor: 16 bytes a star. */
import type { StarBlock } from "#core/seams/index.ts";

/** Three floats of direction (ICRS), then V and B-V as signed 16-bit thousandths. */
export const STAR_BYTES = 16;
const WORDS = STAR_BYTES / 4;
const HALFWORDS = STAR_BYTES / 2;
/** Colours beyond these are shown as these. */
const BLUEST_BV = -0.3;
const REDDEST_BV = 1.8;
/** A little more than asked for is packed, so that a slowly changing limit does not pack every frame. */
const AHEAD_MAG = 0.1;
const SLACK_MAG = 0.5;
const FIRST_CAPACITY = 4096;

export interface StarPack {
  floats: Float32Array;
  halfwords: Int16Array;
  /** Stars, each written `copies` times running: once for a point, once for each corner of a quad. */
  count: number;
  readonly copies: 1 | 4;
}
/** What is packed now, and from which blocks. */
export interface PackedStars {
  /** Every star down to `faintestMag`. */
  readonly all: StarPack;
  /** Those of them that may have glare, down to `glareMag`. */
  readonly bright: StarPack;
  blocksVersion: number;
  faintestMag: number;
}

const emptyPack = (capacity: number, copies: 1 | 4): StarPack => {
  const buffer = new ArrayBuffer(capacity * copies * STAR_BYTES);
  return { floats: new Float32Array(buffer), halfwords: new Int16Array(buffer), count: 0, copies };
};
export const createPackedStars = (): PackedStars => ({
  all: emptyPack(FIRST_CAPACITY, 1),
  bright: emptyPack(256, 4),
  blocksVersion: Number.NaN,
  faintestMag: Number.NaN,
});

/** How many stars of a block (brightest first) are at or brighter than a magnitude. */
export const countBrighter = (block: StarBlock, mag: number): number => {
  const limit = Math.floor(mag * 1000);
  let low = 0;
  let high = block.count;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((block.milliMag[middle] ?? 0) <= limit) low = middle + 1;
    else high = middle;
  }
  return low;
};

const reserve = (pack: StarPack, count: number): void => {
  if (count * pack.copies * STAR_BYTES <= pack.floats.byteLength) return;
  const grown = emptyPack(Math.ceil(count * 1.5), pack.copies);
  pack.floats = grown.floats;
  pack.halfwords = grown.halfwords;
};

const pack = (into: StarPack, blocks: readonly StarBlock[], faintestMag: number): void => {
  let total = 0;
  for (const block of blocks) total += countBrighter(block, faintestMag);
  reserve(into, total);
  const { floats, halfwords, copies } = into;
  let row = 0;
  for (const block of blocks) {
    const count = countBrighter(block, faintestMag);
    const { dirs, milliMag, colourBV } = block;
    for (let i = 0; i < count; i++) {
      const milliColour = Math.round(1000 * Math.min(REDDEST_BV, Math.max(BLUEST_BV, colourBV[i]!)));
      for (let copy = 0; copy < copies; copy++, row++) {
        floats[row * WORDS] = dirs[i * 3]!;
        floats[row * WORDS + 1] = dirs[i * 3 + 1]!;
        floats[row * WORDS + 2] = dirs[i * 3 + 2]!;
        halfwords[row * HALFWORDS + 6] = milliMag[i]!;
        halfwords[row * HALFWORDS + 7] = milliColour;
      }
    }
  }
  into.count = total;
};

/**
 * Packs anew if the blocks changed or the limit left what is packed.
 * @param faintestMag - V of the faintest star that may be drawn
 * @param glareSpanMag - stars at least this much brighter than `faintestMag` may have glare
 * @returns whether anything was packed
 */
export const packStars = (
  packed: PackedStars,
  blocks: readonly StarBlock[],
  blocksVersion: number,
  faintestMag: number,
  glareSpanMag: number,
): boolean => {
  const reaches = packed.faintestMag >= faintestMag && packed.faintestMag <= faintestMag + SLACK_MAG;
  if (reaches && packed.blocksVersion === blocksVersion) return false;
  packed.blocksVersion = blocksVersion;
  packed.faintestMag = faintestMag + AHEAD_MAG;
  pack(packed.all, blocks, packed.faintestMag);
  pack(packed.bright, blocks, packed.faintestMag - glareSpanMag);
  return true;
};

/**
 * The layout of a tile file, little-endian throughout:
 *
 *     0  u32  magic "FWst"            16  u16  tiles
 *     4  u16  byte order mark 0x0102  18  i16  0.01 mag at which the index begins
 *     6  u16  version                 20  u32  stars
 *     8  u8   order of the layer      24  u16  epoch, tenths of a Julian year
 *     9  u8   layer                   26  u16  half magnitudes in the index
 *    10  u8[6] zero
 *    28  per tile: u32 nuniq, then u16 stars of each half magnitude (upper edge in, lower edge out, the first takes all below)
 *     .  u16 x of every star, then u16 y of every star, then u16 magnitude (11 bits, high) and colour (5 bits) of every star
 *     .  u32 CRC-32 of all that goes before
 *
 * Tiles rise by nuniq; the stars of a tile rise by magnitude. x and y count steps on the tile's own tangent plane.
 */
export const MAGIC = 0x74735746;
export const BYTE_ORDER_MARK = 0x0102;
export const VERSION = 1;
export const HEADER_BYTES = 28;
export const STAR_BYTES = 6;
export const CRC_BYTES = 4;
/** A tile may hold this many stars; its half magnitudes are counted in 16 bits. */
export const MAX_TILE_STARS = 65535;

export function directoryBytes(tiles: number, halfMags: number): number {
  return tiles * (4 + 2 * halfMags);
}

const BRIGHTEST_CENTI_MAG = -200;
const COLOUR_FIRST = -0.4;
/** B-V from one 5-bit colour to the next. */
export const COLOUR_STEP = 0.08;
/** How many 5-bit colours there are; the number after the last stands for a colour that nobody measured. */
export const COLOUR_CODES = 31;
const COLOUR_UNKNOWN = COLOUR_CODES;
/** What a star of unknown colour is drawn with: about the middle of all stars to V 9.5. */
export const NEUTRAL_BV = 0.6;

/** 11 bits: 0.01 mag from -2 to 18.47; beyond that the nearest. */
export function packMagnitude(centiMag: number): number {
  return Math.max(0, Math.min(2047, centiMag - BRIGHTEST_CENTI_MAG));
}

export function unpackCentiMag(packed: number): number {
  return packed + BRIGHTEST_CENTI_MAG;
}

/** 5 bits: B-V from -0.40 to 2.00 in steps of 0.08, beyond that the nearest; NaN is the colour not known. */
export function packColour(colourBV: number): number {
  if (Number.isNaN(colourBV)) return COLOUR_UNKNOWN;
  return Math.max(0, Math.min(COLOUR_UNKNOWN - 1, Math.floor((colourBV - COLOUR_FIRST) / COLOUR_STEP + 0.5)));
}

export function unpackColourBV(packed: number): number {
  return packed === COLOUR_UNKNOWN ? NEUTRAL_BV : COLOUR_FIRST + COLOUR_STEP * packed;
}

/** The bright stars of some blocks in one list, and the adding up of those that stand close together. */
import { exactSin, roundHalfUp } from "#core/celestial/exactMath.ts";
import { lightOfMag, magOfLight } from "#core/celestial/magnitude.ts";
import { DEG } from "#core/celestial/vector.ts";
import type { StarBlock } from "#core/seams/index.ts";

/** Two stars nearer than this are one to the naked eye: 3' (common practice, no source: sharp eyes part 2', most 4'). */
export const AS_ONE_ARCMIN = 3;
/** Down to this V stars are joined, 0.001 mag: the bright layer of either sky, which is here whole before all else. */
const AS_ONE_TO_MILLI_MAG = 6500;

const CHORD = 2 * exactSin((AS_ONE_ARCMIN / 120) * DEG);
const CHORD_2 = CHORD * CHORD;
/** Slices of the sphere by z, each wider than the chord, so that a star's neighbours are in its own or the next. */
const SLICES = 2048;
const FIRST_SIZE = 1024;

/** Planar; the first `count` places hold. Kept from one use to the next. */
export interface BrightStars {
  count: number;
  /** Place, as rounded as a block has it. */
  x: Float64Array;
  y: Float64Array;
  z: Float64Array;
  milliMag: Float64Array;
  /** Light in V and in B, in that of magnitude 0; 0 until it is asked for. */
  light: Float64Array;
  blueLight: Float64Array;
  colourBV: Float64Array;
  /** 1 where the star has taken another's light, 2 where its own has gone. */
  fate: Uint8Array;
  /** By slice: the stars in a row, and where each slice begins. */
  inSlices: Int32Array;
  readonly sliceStart: Int32Array;
}
export const TAKEN_IN = 1;
export const GONE = 2;

export function createBrightStars(size = FIRST_SIZE): BrightStars {
  const floats = () => new Float64Array(size);
  return {
    count: 0,
    x: floats(),
    y: floats(),
    z: floats(),
    milliMag: floats(),
    light: floats(),
    blueLight: floats(),
    colourBV: floats(),
    fate: new Uint8Array(size),
    inSlices: new Int32Array(size),
    sliceStart: new Int32Array(SLICES + 2),
  };
}

/** How many stars of a block, brightest first, are bright enough to be joined. */
export function brightCount({ milliMag, count, invented }: StarBlock): number {
  if (invented) return 0;
  let low = 0;
  let high = count;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (milliMag[middle]! <= AS_ONE_TO_MILLI_MAG) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Lists the bright stars of the blocks, block by block; the list is written anew, and grows where it must. */
export function listBright(stars: BrightStars, blocks: readonly StarBlock[]): void {
  let total = 0;
  for (const block of blocks) total += brightCount(block);
  if (total > stars.x.length) Object.assign(stars, createBrightStars(2 * total));
  let at = 0;
  for (const block of blocks) {
    const bright = brightCount(block);
    for (let rank = 0; rank < bright; rank++, at++) {
      stars.x[at] = block.dirs[3 * rank]!;
      stars.y[at] = block.dirs[3 * rank + 1]!;
      stars.z[at] = block.dirs[3 * rank + 2]!;
      stars.milliMag[at] = block.milliMag[rank]!;
      stars.colourBV[at] = block.colourBV[rank]!;
    }
  }
  stars.light.fill(0, 0, total);
  stars.fate.fill(0, 0, total);
  stars.count = total;
}

function sortIntoSlices({ count, z, fate, inSlices, sliceStart }: BrightStars): void {
  const sliceOf = (i: number) => Math.min(SLICES - 1, Math.max(0, Math.floor(((z[i]! + 1) / 2) * SLICES)));
  sliceStart.fill(0);
  for (let i = 0; i < count; i++) if (fate[i] !== GONE) sliceStart[sliceOf(i)]! += 1;
  for (let slice = 1; slice < SLICES + 2; slice++) sliceStart[slice]! += sliceStart[slice - 1]!;
  // Filled from behind, each start comes to its place.
  for (let i = 0; i < count; i++) {
    if (fate[i] === GONE) continue;
    const slice = sliceOf(i);
    sliceStart[slice]! -= 1;
    inSlices[sliceStart[slice]!] = i;
  }
}

interface Pair {
  /** The brighter, and the other. */
  readonly a: number;
  readonly b: number;
  readonly chord2: number;
}

/** By light, then by place: an order that does not know how the stars came. */
function brighterFirst({ light, x, y, z }: BrightStars, i: number, j: number): number {
  return light[j]! - light[i]! || x[i]! - x[j]! || y[i]! - y[j]! || z[i]! - z[j]!;
}

function lightUp(stars: BrightStars, i: number): void {
  if (stars.light[i]! > 0) return;
  const mag = stars.milliMag[i]! / 1000;
  stars.light[i] = lightOfMag(mag);
  stars.blueLight[i] = lightOfMag(mag + stars.colourBV[i]!);
}

function closePairs(stars: BrightStars): Pair[] {
  const { x, y, z, inSlices, sliceStart } = stars;
  const pairs: Pair[] = [];
  sortIntoSlices(stars);
  for (let slice = 0; slice < SLICES; slice++) {
    const inThis = sliceStart[slice + 1]!;
    const inNext = sliceStart[slice + 2]!;
    for (let m = sliceStart[slice]!; m < inThis; m++) {
      const i = inSlices[m]!;
      for (let n = m + 1; n < inNext; n++) {
        const j = inSlices[n]!;
        const dx = x[i]! - x[j]!;
        const dy = y[i]! - y[j]!;
        const dz = z[i]! - z[j]!;
        const chord2 = dx * dx + dy * dy + dz * dz;
        if (chord2 >= CHORD_2) continue;
        lightUp(stars, i);
        lightUp(stars, j);
        pairs.push(brighterFirst(stars, i, j) <= 0 ? { a: i, b: j, chord2 } : { a: j, b: i, chord2 });
      }
    }
  }
  return pairs.sort((p, q) => p.chord2 - q.chord2 || brighterFirst(stars, p.a, q.a) || brighterFirst(stars, p.b, q.b));
}

/** Star `a` takes the light of `b`, and stands where their light has its middle. */
function join(stars: BrightStars, { a, b }: Pair): void {
  const { x, y, z, light, blueLight, fate } = stars;
  const [wa, wb] = [light[a]!, light[b]!];
  const [sx, sy, sz] = [wa * x[a]! + wb * x[b]!, wa * y[a]! + wb * y[b]!, wa * z[a]! + wb * z[b]!];
  const length = Math.sqrt(sx * sx + sy * sy + sz * sz);
  x[a] = Math.fround(sx / length);
  y[a] = Math.fround(sy / length);
  z[a] = Math.fround(sz / length);
  light[a] = wa + wb;
  blueLight[a]! += blueLight[b]!;
  const magV = magOfLight(light[a]!);
  stars.milliMag[a] = roundHalfUp(1000 * magV);
  stars.colourBV[a] = magOfLight(blueLight[a]!) - magV;
  fate[a] = TAKEN_IN;
  fate[b] = GONE;
}

/**
 * Joins the nearest pair first, until no two stars are closer than 3'. Light is added in V and in B, so that the colour is
 * the one of both together. The same stars give the same result in any order.
 * @returns whether any were joined
 */
export function joinClosePairs(stars: BrightStars): boolean {
  let joined = false;
  for (let pairs = closePairs(stars); pairs.length > 0; pairs = closePairs(stars)) {
    joined = true;
    // A star is joined once in a round: where it stands then is looked at in the next.
    const touched = new Set<number>();
    for (const pair of pairs) {
      if (touched.has(pair.a) || touched.has(pair.b)) continue;
      join(stars, pair);
      touched.add(pair.a).add(pair.b);
    }
  }
  return joined;
}

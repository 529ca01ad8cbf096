/** One tile of a practice sky. */
import type { StarBlock, TileKey } from "#core/seams/index.ts";
import { tileStars } from "./companions.ts";
import type { SkyStar } from "./frame.ts";
import { practiceLayerOfKey, practiceTileKey } from "./layers.ts";
import { planOf } from "./plan.ts";
import { addStar, makeRoom, type StarList } from "./starList.ts";

/** Places in a tile are told apart in the low bits of a sorting key, 16 of them; magnitudes have the others. */
const PLACE_BITS = 16;
const PLACES = (1 << PLACE_BITS) - 1;

/**
 * The stars of a tile, brightest first: the same in every engine, in any order of tiles and any worker.
 * @throws InputError where the seed is no seed word, or a practice sky has no such tile
 */
export function generateTile(seed: string, key: TileKey): StarBlock {
  const plan = planOf(seed);
  const ownKey = practiceTileKey(practiceLayerOfKey(key), key.pixel);
  const { stars, companions } = tileStars(plan, ownKey);
  addAll(stars, companions);
  addAll(stars, plan.plantedByTile.get(ownKey) ?? NONE);
  return blockOf(ownKey, stars);
}

const NONE: readonly SkyStar[] = [];

function addAll(stars: StarList, more: readonly SkyStar[]): void {
  makeRoom(stars, more.length);
  for (const { dir, milliMag, colourBV } of more) addStar(stars, dir, milliMag, colourBV);
}

/** Three floats a direction, one a colour, 16 bits a magnitude. */
export const STAR_BYTES = 18;
/** Keys of the stars in hand, written over by the next tile's. */
let sorting = new Int32Array(1024);

function blockOf(key: TileKey, { count, dirs, milliMag, colourBV }: StarList): StarBlock {
  if (sorting.length < count) sorting = new Int32Array(2 * count);
  const order = sorting;
  for (let place = 0; place < count; place++) order[place] = (milliMag[place]! << PLACE_BITS) | place;
  sortFirst(order, count);
  // One piece of memory for all three: small tiles cost little but their making.
  const memory = new ArrayBuffer(STAR_BYTES * count);
  const block = {
    key,
    count,
    dirs: new Float32Array(memory, 0, 3 * count),
    milliMag: new Int16Array(memory, 16 * count, count),
    colourBV: new Float32Array(memory, 12 * count, count),
    invented: false,
  };
  for (let rank = 0; rank < count; rank++) {
    const place = order[rank]! & PLACES;
    block.dirs[3 * rank] = dirs[3 * place]!;
    block.dirs[3 * rank + 1] = dirs[3 * place + 1]!;
    block.dirs[3 * rank + 2] = dirs[3 * place + 2]!;
    block.milliMag[rank] = order[rank]! >> PLACE_BITS;
    block.colourBV[rank] = colourBV[place]!;
  }
  return block;
}

/** Beyond this many the engine's own sorting is quicker. */
const FEW = 64;

/** Sorts the first numbers of a list; a few are put in one by one. */
function sortFirst(numbers: Int32Array, count: number): void {
  if (count > FEW) numbers.subarray(0, count).sort();
  else
    for (let end = 1; end < count; end++) {
      const number = numbers[end]!;
      let at = end;
      for (; at > 0 && numbers[at - 1]! > number; at--) numbers[at] = numbers[at - 1]!;
      numbers[at] = number;
    }
}

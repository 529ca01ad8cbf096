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

/** Keys of the stars in hand, written over by the next tile's. */
let sorting = new Int32Array(1024);

function blockOf(key: TileKey, { count, dirs, milliMag, colourBV }: StarList): StarBlock {
  if (sorting.length < count) sorting = new Int32Array(2 * count);
  const order = sorting.subarray(0, count);
  for (let place = 0; place < count; place++) order[place] = (milliMag[place]! << PLACE_BITS) | place;
  order.sort();
  const block = {
    key,
    count,
    dirs: new Float32Array(3 * count),
    milliMag: new Int16Array(count),
    colourBV: new Float32Array(count),
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

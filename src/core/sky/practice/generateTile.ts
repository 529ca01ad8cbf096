/** One tile of a practice sky. */
import type { StarBlock, TileKey } from "#core/seams/index.ts";
import { tileStars } from "./companions.ts";
import { practiceLayerOfKey, practiceTileKey } from "./layers.ts";
import { planOf } from "./plan.ts";
import { addStar, makeRoom, type StarList } from "./starList.ts";

/** Places in a tile are told apart in the low part of a sorting key. */
const PLACES = 65536;

/**
 * The stars of a tile, brightest first: the same in every engine, in any order of tiles and any worker.
 * @throws InputError where the seed is no seed word, or a practice sky has no such tile
 */
export function generateTile(seed: string, key: TileKey): StarBlock {
  const plan = planOf(seed);
  const ownKey = practiceTileKey(practiceLayerOfKey(key), key.pixel);
  const { stars, companions } = tileStars(plan, ownKey);
  const others = [...companions, ...(plan.plantedByTile.get(ownKey) ?? [])];
  makeRoom(stars, others.length);
  for (const { dir, milliMag, colourBV } of others) addStar(stars, dir, milliMag, colourBV);
  return blockOf(ownKey, stars);
}

function blockOf(key: TileKey, { count, dirs, milliMag, colourBV }: StarList): StarBlock {
  const order = new Float64Array(count);
  for (let place = 0; place < count; place++) order[place] = milliMag[place]! * PLACES + place;
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
    const mag = Math.floor(order[rank]! / PLACES);
    const place = order[rank]! - mag * PLACES;
    for (let axis = 0; axis < 3; axis++) block.dirs[3 * rank + axis] = dirs[3 * place + axis]!;
    block.milliMag[rank] = mag;
    block.colourBV[rank] = colourBV[place]!;
  }
  return block;
}

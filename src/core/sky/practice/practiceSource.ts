/** A practice sky as a source of stars: tiles are made when wanted, and the oldest go when there are too many. */
import { pixelsInCone } from "#core/celestial/healpix.ts";
import type { StarBlock, StarSource, TileKey } from "#core/seams/index.ts";
import { createRefilled, createResidents } from "../catalogue/residents.ts";
import { generateTile, STAR_BYTES } from "./generateTile.ts";
import { PRACTICE_LAYERS, practiceLayerOfKey, practiceLayerReaches, practiceTileKey } from "./layers.ts";
import { PRACTICE_SKY_VERSION, seedOf } from "./seed.ts";

/** Makes one tile of a seed's sky; the same tile wherever it is made. */
export type MakeTile = (word: string, key: TileKey, signal: AbortSignal) => Promise<StarBlock>;

const CAP_BYTES = 64 * 1024 * 1024;

type Kept = { readonly block: StarBlock; lastUse: number };

/**
 * The sky of a seed word. `want` makes tiles in the order given and stops where the signal aborts. Tiles stay under `capBytes`
 * (the bright layer aside): those that were not asked about for longest go first. `resident` hands out the same object as
 * long as its lists are the same.
 * @param make makes a tile somewhere else, such as in a worker; without it tiles are made at once
 * @throws InputError where the word is empty or too long
 */
export function createPracticeSource(seedWord: string, make?: MakeTile, capBytes = CAP_BYTES): StarSource {
  const { word } = seedOf(seedWord);
  const tiles = PRACTICE_LAYERS.map(() => new Map<number, Kept>());
  const residents = createResidents();
  const pixels: number[] = [];
  const blocks = createRefilled<StarBlock>();
  const missing = createRefilled<TileKey>();
  let [uses, bytes] = [0, 0];

  const keep = ({ layer, pixel }: TileKey, block: StarBlock) => {
    const inLayer = tiles[layer]!;
    if (inLayer.has(pixel)) return;
    inLayer.set(pixel, { block, lastUse: uses });
    bytes += layer === 0 ? 0 : block.count * STAR_BYTES;
  };
  const makeRoom = () => {
    if (bytes <= capBytes) return;
    const { gone, freed } = longestUnused(tiles, uses, bytes - capBytes);
    bytes -= freed;
    residents.drop(gone);
  };

  return {
    ref: { kind: "practice", seed: word, skyVersion: PRACTICE_SKY_VERSION },
    resident(cone, limitMag) {
      uses += 1;
      blocks.begin();
      missing.begin();
      for (const layer of PRACTICE_LAYERS) {
        if (!practiceLayerReaches(layer, limitMag)) continue;
        for (const pixel of pixelsInCone(layer.order, cone.centre, cone.radiusRad, pixels)) {
          const kept = tiles[layer.layer]!.get(pixel);
          if (!kept) missing.add(practiceTileKey(layer, pixel));
          else {
            kept.lastUse = uses;
            blocks.add(kept.block);
          }
        }
      }
      return residents.answerFor(blocks.end(), missing.end());
    },
    async want(keys, _priority, signal) {
      const bring = async (key: TileKey) => {
        signal.throwIfAborted();
        if (tiles[practiceLayerOfKey(key).layer]!.has(key.pixel)) return;
        keep(key, make ? await make(word, key, signal) : generateTile(word, key));
      };
      if (make) await Promise.all(keys.map(bring));
      else for (const key of keys) await bring(key);
      makeRoom();
    },
  };
}

/**
 * Takes out the tiles that were not asked about for longest, until so many bytes are free. What the last answer held or
 * missed stays, so that a field larger than the cap still comes in whole.
 */
function longestUnused(tiles: readonly Map<number, Kept>[], now: number, bytes: number) {
  const old = tiles.flatMap((inLayer, layer) => {
    const list = layer === 0 ? [] : [...inLayer];
    return list.filter(([, { lastUse }]) => lastUse < now).map(([pixel, kept]) => ({ inLayer, pixel, ...kept }));
  });
  old.sort((a, b) => a.lastUse - b.lastUse);
  const gone = new Set<StarBlock>();
  let freed = 0;
  for (const { inLayer, pixel, block } of old) {
    if (freed >= bytes) break;
    inLayer.delete(pixel);
    gone.add(block);
    freed += block.count * STAR_BYTES;
  }
  return { gone, freed };
}

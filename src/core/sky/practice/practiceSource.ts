/** A practice sky as a source of stars: tiles are made when wanted, and kept. */
import { pixelsInCone } from "#core/celestial/healpix.ts";
import type { StarBlock, StarSource, TileKey } from "#core/seams/index.ts";
import { createResidents } from "../catalogue/residents.ts";
import { generateTile } from "./generateTile.ts";
import { PRACTICE_LAYERS, practiceLayerOfKey, practiceLayerReaches, practiceTileKey } from "./layers.ts";
import { PRACTICE_SKY_VERSION, seedOf } from "./seed.ts";

/** Makes one tile of a seed's sky; the same tile wherever it is made. */
export type MakeTile = (word: string, key: TileKey, signal: AbortSignal) => Promise<StarBlock>;

/**
 * The sky of a seed word. `want` makes tiles in the order given and stops where the signal aborts; all of the sky takes
 * 17 MB, so nothing is let go. `resident` hands out the same object as long as its lists are the same.
 * @param make makes a tile somewhere else, such as in a worker; without it tiles are made at once
 * @throws InputError where the word is empty or too long
 */
export function createPracticeSource(seedWord: string, make?: MakeTile): StarSource {
  const { word } = seedOf(seedWord);
  const tiles = PRACTICE_LAYERS.map(() => new Map<number, StarBlock>());
  const residents = createResidents();
  const pixels: number[] = [];
  const blocks: StarBlock[] = [];
  const missing: TileKey[] = [];
  return {
    ref: { kind: "practice", seed: word, skyVersion: PRACTICE_SKY_VERSION },
    resident(cone, limitMag) {
      blocks.length = 0;
      missing.length = 0;
      for (const layer of PRACTICE_LAYERS) {
        if (!practiceLayerReaches(layer, limitMag)) continue;
        for (const pixel of pixelsInCone(layer.order, cone.centre, cone.radiusRad, pixels)) {
          const block = tiles[layer.layer]!.get(pixel);
          if (block) blocks.push(block);
          else missing.push(practiceTileKey(layer, pixel));
        }
      }
      return residents.answerFor(blocks, missing);
    },
    async want(keys, _priority, signal) {
      const bring = async (key: TileKey) => {
        signal.throwIfAborted();
        const inLayer = tiles[practiceLayerOfKey(key).layer]!;
        if (!inLayer.has(key.pixel))
          inLayer.set(key.pixel, make ? await make(word, key, signal) : generateTile(word, key));
      };
      if (make) await Promise.all(keys.map(bring));
      else for (const key of keys) await bring(key);
    },
  };
}

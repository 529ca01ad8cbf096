/** How a practice sky is cut into tiles. */
import { InputError } from "#core/seams/errors.ts";
import type { TileKey } from "#core/seams/index.ts";
import { type CountTable, countTable } from "./starCounts.ts";

export type PracticeLayer = {
  readonly layer: number;
  readonly order: number;
  /** The layer holds brightest < V <= faintest; the first takes everything down to its limit. */
  readonly brightestMilliMag: number;
  readonly faintestMilliMag: number;
  readonly counts: CountTable;
};

/** Counts are known to V 11, and so far the sky goes. */
export const PRACTICE_LAYERS: readonly [PracticeLayer, PracticeLayer, PracticeLayer] = [
  { layer: 0, order: 3, brightestMilliMag: -1000, faintestMilliMag: 6500, counts: countTable(-1, 6.5) },
  { layer: 1, order: 3, brightestMilliMag: 6500, faintestMilliMag: 9500, counts: countTable(6.5, 9.5) },
  { layer: 2, order: 4, brightestMilliMag: 9500, faintestMilliMag: 11000, counts: countTable(9.5, 11) },
];

const keys = PRACTICE_LAYERS.map((layer) => new Array<TileKey | undefined>(12 << (2 * layer.order)));

/** The key of a tile: always the same object, so that lists of keys compare by identity. */
export function practiceTileKey(layer: PracticeLayer, pixel: number): TileKey {
  const known = keys[layer.layer]![pixel];
  if (known) return known;
  const key = { order: layer.order, pixel, layer: layer.layer };
  keys[layer.layer]![pixel] = key;
  return key;
}

/** Whether stars down to a limit may come from a layer. */
export function practiceLayerReaches(layer: PracticeLayer, limitMag: number): boolean {
  return layer.layer === 0 || limitMag * 1000 > layer.brightestMilliMag;
}

/** The layer that takes a star. @throws InputError where it is fainter than V 11 */
export function practiceLayerOf(milliMag: number): PracticeLayer {
  const layer = PRACTICE_LAYERS.find(({ faintestMilliMag }) => milliMag <= faintestMilliMag);
  if (!layer) throw new InputError(`a practice sky ends at V 11, not at ${milliMag / 1000}`, "Plant a brighter star.");
  return layer;
}

/** The layer of a key. @throws InputError where a practice sky has no such tile */
export function practiceLayerOfKey({ layer, order, pixel }: TileKey): PracticeLayer {
  const known = PRACTICE_LAYERS[layer];
  if (!known || known.order !== order || !(pixel >= 0 && pixel < 12 << (2 * order))) {
    throw new InputError(
      `A practice sky has no tile of order ${order}, pixel ${pixel}, layer ${layer}`,
      "Take tile keys from the missing tiles of a resident answer.",
    );
  }
  return known;
}

/** How a practice sky is cut into tiles. */
import { InputError } from "#core/seams/errors.ts";
import type { TileKey } from "#core/seams/index.ts";
import { fieldCountTable } from "./fieldCounts.ts";
import { BRIGHT_RELIEF, DEEP_RELIEF, FAINT_RELIEF, type Relief } from "./relief.ts";
import type { CountTable } from "./starCounts.ts";

export type PracticeLayer = {
  readonly layer: number;
  readonly order: number;
  /** Within a cell of this order the density is even. */
  readonly cellOrder: number;
  /** The layer holds brightest < V <= faintest; the first takes everything down to its limit. */
  readonly brightestMilliMag: number;
  readonly faintestMilliMag: number;
  /** Of field stars alone. */
  readonly counts: CountTable;
  readonly relief: Relief;
  /** Share of its stars that stand behind the clouds of dark nebulae (from how far they are; no source for the numbers). */
  readonly behindClouds: number;
};

type Limits = readonly [
  order: number,
  cellOrder: number,
  fromMag: number,
  toMag: number,
  relief: Relief,
  behindClouds: number,
];
const LIMITS: readonly [Limits, ...Limits[]] = [
  [3, 5, -1, 6.5, BRIGHT_RELIEF, 0],
  [3, 6, 6.5, 9.5, FAINT_RELIEF, 0.5],
  [4, 7, 9.5, 11, DEEP_RELIEF, 0.8],
  [5, 7, 11, 12.5, DEEP_RELIEF, 1],
  [6, 8, 12.5, 13.5, DEEP_RELIEF, 1],
  [7, 8, 13.5, 14.5, DEEP_RELIEF, 1],
  [7, 8, 14.5, 15.5, DEEP_RELIEF, 1],
];

const layerOf = ([order, cellOrder, fromMag, toMag, relief, behindClouds]: Limits, layer: number): PracticeLayer => ({
  layer,
  order,
  cellOrder,
  brightestMilliMag: fromMag * 1000,
  faintestMilliMag: toMag * 1000,
  counts: fieldCountTable(fromMag, toMag),
  relief,
  behindClouds,
});

/** The bright layer first. Deep layers have small tiles, so that an eyepiece's field is made in a moment. */
export const PRACTICE_LAYERS: readonly [PracticeLayer, ...PracticeLayer[]] = [
  layerOf(LIMITS[0], 0),
  ...LIMITS.slice(1).map((limits, i) => layerOf(limits, i + 1)),
];
/** V to which a practice sky goes. */
export const FAINTEST_PRACTICE_MAG = PRACTICE_LAYERS.at(-1)!.faintestMilliMag / 1000;

const keys = PRACTICE_LAYERS.map(() => new Map<number, TileKey>());

/** The key of a tile: always the same object, so that lists of keys compare by identity. */
export function practiceTileKey(layer: PracticeLayer, pixel: number): TileKey {
  const known = keys[layer.layer]!.get(pixel);
  if (known) return known;
  const key = { order: layer.order, pixel, layer: layer.layer };
  keys[layer.layer]!.set(pixel, key);
  return key;
}

/** Whether stars down to a limit may come from a layer. */
export function practiceLayerReaches(layer: PracticeLayer, limitMag: number): boolean {
  return layer.layer === 0 || limitMag * 1000 > layer.brightestMilliMag;
}

/** The layer that takes a star. @throws InputError where it is fainter than V 15.5 */
export function practiceLayerOf(milliMag: number): PracticeLayer {
  const layer = PRACTICE_LAYERS.find(({ faintestMilliMag }) => milliMag <= faintestMilliMag);
  if (!layer)
    throw new InputError(
      `a practice sky ends at V ${FAINTEST_PRACTICE_MAG}, not at ${milliMag / 1000}`,
      "Plant a brighter star.",
    );
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

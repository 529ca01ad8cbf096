/**
 * How the catalogue sky is cut: three layers by brightness, each in HEALPix tiles (nested), the tiles of a wider pixel
 * together in one file. A layer holds the stars fainter than the one before it, down to its own limit, in 0.01 mag.
 */
import { InputError } from "#core/seams/errors.ts";
import type { TileKey } from "#core/seams/index.ts";

export type Layer = {
  readonly layer: number;
  /** Order of its tiles; a crowded tile is stored as its four children. */
  readonly order: number;
  /** Order of the pixel that one file covers; -1: one file for the whole sky. */
  readonly fileOrder: number;
  /** Stars of this layer have brightest < V <= faintest (the first layer takes everything down to its limit). */
  readonly brightestCentiMag: number;
  readonly faintestCentiMag: number;
};

export const LAYERS: readonly [Layer, Layer, Layer] = [
  { layer: 0, order: 3, fileOrder: -1, brightestCentiMag: -200, faintestCentiMag: 650 },
  { layer: 1, order: 3, fileOrder: 0, brightestCentiMag: 650, faintestCentiMag: 950 },
  { layer: 2, order: 4, fileOrder: 1, brightestCentiMag: 950, faintestCentiMag: 1250 },
];

/** How many files a layer has. */
export function fileCount(layer: Layer): number {
  return layer.fileOrder < 0 ? 1 : 12 << (2 * layer.fileOrder);
}

/** Which of a layer's files holds a tile of the layer's order. */
export function fileIndex(layer: Layer, pixel: number): number {
  return layer.fileOrder < 0 ? 0 : pixel >> (2 * (layer.order - layer.fileOrder));
}

/** The name of a file: `stars-0.bin`, `stars-1-07.bin`, `stars-2-31.bin`. */
export function fileName(layer: Layer, index: number): string {
  return layer.fileOrder < 0
    ? `stars-${layer.layer}.bin`
    : `stars-${layer.layer}-${String(index).padStart(2, "0")}.bin`;
}

/** The layer of a magnitude given in 0.01 mag, or undefined where the star is too faint for all. */
export function layerOf(centiMag: number): Layer | undefined {
  return LAYERS.find((layer) => centiMag <= layer.faintestCentiMag);
}

/**
 * The layer that a tile key names, and the key's pixel in that layer's own order: a tile that was split stands for its
 * parent. Throws InputError where the key names no layer of the catalogue, or is wider than the layer's tiles.
 */
export function homeOf(key: TileKey): { layer: Layer; pixel: number } {
  const layer = LAYERS[key.layer];
  const deeper = layer ? key.order - layer.order : -1;
  const pixel = Math.floor(key.pixel / (1 << (2 * deeper)));
  if (!layer || deeper < 0 || !(pixel >= 0 && pixel < 12 << (2 * layer.order))) {
    throw new InputError(
      `The catalogue has no tile of order ${key.order}, pixel ${key.pixel}, layer ${key.layer}`,
      "Take tile keys from tilesOfCone or from the missing tiles of a resident answer.",
    );
  }
  return { layer, pixel };
}

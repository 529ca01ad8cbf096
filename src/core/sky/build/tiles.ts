/** Stars in columns to the tile files of the sky. */
import { pixelOf } from "#core/celestial/healpix.ts";
import { encodeTileFile, type RawTile } from "#core/sky/catalogue/encodeTileFile.ts";
import { fileCount, fileIndex, fileName, LAYERS, type Layer } from "#core/sky/catalogue/layers.ts";
import { MAX_TILE_STARS } from "#core/sky/catalogue/tileFormat.ts";
import { TILE_EPOCH } from "./place.ts";
import type { StarColumns } from "./starStore.ts";

export type SkyFile = { readonly name: string; readonly bytes: Uint8Array<ArrayBuffer> };

/** All files of all layers, empty ones included, in the order of their names. */
export function tileFiles(stars: StarColumns): SkyFile[] {
  return LAYERS.flatMap((layer) => layerFiles(stars, layer));
}

function layerFiles(stars: StarColumns, layer: Layer): SkyFile[] {
  const byPixel = new Map<number, number[]>();
  for (let i = 0; i < stars.count; i++) {
    const centiMag = stars.centiMag[i]!;
    if (centiMag > layer.faintestCentiMag || (layer.layer > 0 && centiMag <= layer.brightestCentiMag)) continue;
    const pixel = pixelOf(layer.order, dirAt(stars, i));
    const inTile = byPixel.get(pixel);
    if (inTile) inTile.push(i);
    else byPixel.set(pixel, [i]);
  }
  const files: RawTile[][] = Array.from({ length: fileCount(layer) }, () => []);
  for (const [pixel, members] of byPixel) {
    files[fileIndex(layer, pixel)]!.push(...splitTile(stars, layer.order, pixel, members, MAX_TILE_STARS));
  }
  return files.map((tiles, index) => ({
    name: fileName(layer, index),
    bytes: encodeTileFile(layer, TILE_EPOCH, tiles),
  }));
}

/** A tile of the stars numbered `members`, or, where they are more than `most`, its four children (and so on down). */
export function splitTile(
  stars: StarColumns,
  order: number,
  pixel: number,
  members: readonly number[],
  most: number,
): RawTile[] {
  if (members.length <= most) return [tileOf(stars, order, pixel, members)];
  return [0, 1, 2, 3].flatMap((child) => {
    const inside = members.filter((i) => pixelOf(order + 1, dirAt(stars, i)) === pixel * 4 + child);
    return inside.length === 0 ? [] : splitTile(stars, order + 1, pixel * 4 + child, inside, most);
  });
}

function tileOf(stars: StarColumns, order: number, pixel: number, members: readonly number[]): RawTile {
  const dirs = new Float64Array(3 * members.length);
  members.forEach((star, i) => {
    dirs.set(stars.dirs.subarray(3 * star, 3 * star + 3), 3 * i);
  });
  return {
    order,
    pixel,
    dirs,
    centiMag: Int16Array.from(members, (star) => stars.centiMag[star]!),
    colourBV: Float32Array.from(members, (star) => stars.colourBV[star]!),
  };
}

function dirAt(stars: StarColumns, i: number): readonly [number, number, number] {
  return [stars.dirs[3 * i]!, stars.dirs[3 * i + 1]!, stars.dirs[3 * i + 2]!];
}

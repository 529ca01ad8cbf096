/** Tiles of stars to the bytes of a file. The order in which stars are given does not matter. */
import { crc32 } from "#core/celestial/hash.ts";
import { nuniq } from "#core/celestial/healpix.ts";
import type { Layer } from "./layers.ts";
import { tileAxes } from "./tileAxes.ts";
import {
  BYTE_ORDER_MARK,
  CRC_BYTES,
  directoryBytes,
  HEADER_BYTES,
  MAGIC,
  MAX_TILE_STARS,
  packColour,
  packMagnitude,
  STAR_BYTES,
  VERSION,
} from "./tileFormat.ts";

/** Stars of one tile: directions (ICRS, three numbers a star), V in 0.01 mag, B-V (NaN: not known). */
export type RawTile = {
  readonly order: number;
  readonly pixel: number;
  readonly dirs: Float64Array;
  readonly centiMag: Int16Array;
  readonly colourBV: Float32Array;
};

/**
 * The file of some tiles of a layer. `epochYear` is the Julian year that the places are for. The same stars give the same
 * bytes, whatever their order. Throws a plain Error where a star does not belong to the tile or the layer it is given in, or
 * a tile is too full: the caller's mistake.
 */
export function encodeTileFile(layer: Layer, epochYear: number, tiles: readonly RawTile[]): Uint8Array<ArrayBuffer> {
  const filled = tiles.filter((tile) => tile.centiMag.length > 0);
  filled.sort((a, b) => nuniq(a.order, a.pixel) - nuniq(b.order, b.pixel));
  const halfMags = (layer.faintestCentiMag - layer.brightestCentiMag) / 50;
  const stars = filled.reduce((sum, tile) => sum + tile.centiMag.length, 0);
  const columns = HEADER_BYTES + directoryBytes(filled.length, halfMags);
  const view = new DataView(new ArrayBuffer(columns + stars * STAR_BYTES + CRC_BYTES));
  writeHeader(view, layer, epochYear, filled.length, stars, halfMags);
  let done = 0;
  filled.forEach((tile, i) => {
    const packed = packTile(tile);
    writeIndex(view, HEADER_BYTES + directoryBytes(i, halfMags), tile, layer, halfMags);
    writeStars(view, columns, stars, done, packed);
    done += packed.length;
  });
  const body = view.byteLength - CRC_BYTES;
  view.setUint32(body, crc32(new Uint8Array(view.buffer, 0, body)), true);
  return new Uint8Array(view.buffer as ArrayBuffer);
}

function writeHeader(view: DataView, layer: Layer, epochYear: number, tiles: number, stars: number, halfMags: number) {
  view.setUint32(0, MAGIC, true);
  view.setUint16(4, BYTE_ORDER_MARK, true);
  view.setUint16(6, VERSION, true);
  view.setUint8(8, layer.order);
  view.setUint8(9, layer.layer);
  view.setUint16(16, tiles, true);
  view.setInt16(18, layer.brightestCentiMag, true);
  view.setUint32(20, stars, true);
  view.setUint16(24, Math.round(epochYear * 10), true);
  view.setUint16(26, halfMags, true);
}

function writeIndex(view: DataView, at: number, tile: RawTile, layer: Layer, halfMags: number): void {
  const counts = new Uint16Array(halfMags);
  for (const centiMag of tile.centiMag) {
    const half = Math.max(0, Math.ceil((centiMag - layer.brightestCentiMag) / 50) - 1);
    if (half >= halfMags || (layer.layer > 0 && centiMag <= layer.brightestCentiMag)) {
      throw new Error(`A star of ${centiMag / 100} mag does not belong to layer ${layer.layer}`);
    }
    counts[half] = counts[half]! + 1;
  }
  view.setUint32(at, nuniq(tile.order, tile.pixel), true);
  counts.forEach((count, half) => {
    view.setUint16(at + 4 + 2 * half, count, true);
  });
}

/** One number a star, so that sorting the numbers sorts by magnitude, then place, then colour. Below 2^48: exact. */
function packTile(tile: RawTile): Float64Array {
  const count = tile.centiMag.length;
  if (count > MAX_TILE_STARS) throw new Error(`Tile ${tile.order}/${tile.pixel} holds ${count} stars: split it`);
  const { centre, east, north, halfWidth } = tileAxes(tile.order, tile.pixel);
  const packed = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const x = tile.dirs[3 * i]!;
    const y = tile.dirs[3 * i + 1]!;
    const z = tile.dirs[3 * i + 2]!;
    const depth = x * centre[0] + y * centre[1] + z * centre[2];
    const u = step((x * east[0] + y * east[1] + z * east[2]) / depth, halfWidth);
    const v = step((x * north[0] + y * north[1] + z * north[2]) / depth, halfWidth);
    const magnitude = packMagnitude(tile.centiMag[i]!);
    packed[i] = ((magnitude * 65536 + u) * 65536 + v) * 32 + packColour(tile.colourBV[i]!);
  }
  return packed.sort();
}

function step(offset: number, halfWidth: number): number {
  const steps = Math.floor(((offset / halfWidth + 1) / 2) * 65535 + 0.5);
  if (!(steps >= 0 && steps <= 65535)) throw new Error("A star lies outside the tile it is given in");
  return steps;
}

function writeStars(view: DataView, columns: number, stars: number, done: number, packed: Float64Array): void {
  packed.forEach((star, i) => {
    const at = columns + 2 * (done + i);
    const place = Math.floor(star / 32);
    const plane = Math.floor(place / 65536);
    const magnitude = Math.floor(plane / 65536);
    view.setUint16(at, plane % 65536, true);
    view.setUint16(at + 2 * stars, place % 65536, true);
    view.setUint16(at + 4 * stars, magnitude * 32 + (star % 32), true);
  });
}

/** Star numbers that last within one sky: which tile, which layer, which rank in it. */
import { InputError } from "#core/seams/errors.ts";
import type { StarId, TileKey } from "#core/seams/index.ts";
import { MAX_ORDER } from "./healpixPixel.ts";

const LAYERS = 64;
const RANKS = 65536;

/** One number for order and pixel: 4 * 4^order + pixel. */
export function nuniq(order: number, pixel: number): number {
  return 4 ** (order + 1) + pixel;
}

/**
 * (nuniq * 64 + layer) * 65536 + rank; below 2^47, so exact as a number. Throws InputError where the order (0 to 10), the
 * pixel, the layer (0 to 63) or the rank (0 to 65535) is out of range.
 */
export function starId(key: TileKey, rank: number): StarId {
  const { order, pixel, layer } = key;
  const fits =
    inRange(order, MAX_ORDER + 1) && inRange(pixel, 12 * 4 ** order) && inRange(layer, LAYERS) && inRange(rank, RANKS);
  if (!fits) {
    throw new InputError(
      `No star number for order ${order}, pixel ${pixel}, layer ${layer}, rank ${rank}`,
      "A tile with more than 65536 stars splits one order deeper.",
    );
  }
  return ((nuniq(order, pixel) * LAYERS + layer) * RANKS + rank) as StarId;
}

function inRange(value: number, end: number): boolean {
  return Number.isInteger(value) && value >= 0 && value < end;
}

/** The tile and the rank that a star number was made of. */
export function starIdParts(id: StarId): { key: TileKey; rank: number } {
  const rank = id % RANKS;
  const tile = Math.floor(id / RANKS);
  const unique = Math.floor(tile / LAYERS);
  let order = 0;
  while (unique >= 4 ** (order + 2)) order += 1;
  return { key: { order, pixel: unique - 4 ** (order + 1), layer: tile % LAYERS }, rank };
}

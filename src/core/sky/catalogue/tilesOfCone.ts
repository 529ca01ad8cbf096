/** Which tiles of the catalogue a field needs. */
import { pixelsInCone } from "#core/celestial/healpix.ts";
import { offsetDir, positionAngleRad } from "#core/celestial/vector.ts";
import type { Cone, Dir, TileKey } from "#core/seams/index.ts";
import { LAYERS, type Layer } from "./layers.ts";

const scratch: number[] = [];
const keys = LAYERS.map((layer) => new Array<TileKey | undefined>(12 << (2 * layer.order)));

/** The key of a tile in its layer's own order: always the same object, so that lists of keys compare by identity. */
export function tileKey(layer: Layer, pixel: number): TileKey {
  const known = keys[layer.layer]![pixel];
  if (known) return known;
  const key = { order: layer.order, pixel, layer: layer.layer };
  keys[layer.layer]![pixel] = key;
  return key;
}

/** Whether stars down to a limit may come from a layer. */
export function layerReaches(layer: Layer, limitMag: number): boolean {
  return layer.layer === 0 || limitMag * 100 > layer.brightestCentiMag;
}

/** All tiles that may hold a star of the cone down to the limit; the bright layers first. */
export function tilesOfCone(cone: Cone, limitMag: number): TileKey[] {
  return LAYERS.filter((layer) => layerReaches(layer, limitMag)).flatMap((layer) =>
    pixelsInCone(layer.order, cone.centre, cone.radiusRad, scratch).map((pixel) => tileKey(layer, pixel)),
  );
}

/** How far ahead of the field to look, in radii: the tiles are wider than most fields, so one step on is enough. */
const AHEAD_RADII = 2;

/**
 * The tiles that a field will need if it goes on towards `motionDir` (any direction further along its way): those of the
 * field two radii on that the field does not need now. None where `motionDir` is the centre.
 */
export function tilesAhead(centre: Dir, motionDir: Dir, radiusRad: number, limitMag: number): TileKey[] {
  if (centre[0] === motionDir[0] && centre[1] === motionDir[1] && centre[2] === motionDir[2]) return [];
  const next = offsetDir(centre, positionAngleRad(centre, motionDir), AHEAD_RADII * radiusRad);
  const now = new Set(tilesOfCone({ centre, radiusRad }, limitMag));
  return tilesOfCone({ centre: next, radiusRad }, limitMag).filter((key) => !now.has(key));
}

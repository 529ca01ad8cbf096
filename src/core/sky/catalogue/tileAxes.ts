/**
 * The tangent plane of a tile: centre, east and north, from exact mathematics, so that a stored place comes out bit-equal in
 * every engine.
 */
import { pixelCentre } from "#core/celestial/healpix.ts";
import type { Dir } from "#core/seams/index.ts";

export type TileAxes = { readonly centre: Dir; readonly east: Dir; readonly north: Dir; readonly halfWidth: number };

/** No tile is wider than the coarsest order allows: below it the 16 bits of an axis would be too few for 0.6 arcsec. */
export const LEAST_ORDER = 3;

/**
 * Centre and axes of a tile, and half the width of the square on its tangent plane that holds all of it. The farthest
 * corner of an order 3 tile lies at 0.1134 (found by going through all of them); each order more than halves that.
 */
export function tileAxes(order: number, pixel: number): TileAxes {
  const centre = pixelCentre(order, pixel);
  const [x, y, z] = centre;
  const rho = Math.sqrt(x * x + y * y);
  return {
    centre,
    east: [-y / rho, x / rho, 0],
    north: [(-z * x) / rho, (-z * y) / rho, rho],
    halfWidth: 0.1136 / (1 << (order - LEAST_ORDER)),
  };
}

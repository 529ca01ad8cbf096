/** Places of the catalogue brought to an epoch. */
import { DEG, dirFromRadec, MAS_RAD, normalise } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";

/** ICRS place with an epoch for each coordinate, Julian years; motion in RA times cos(dec), NaN where it is not known. */
export type RawPlace = {
  readonly raDeg: number;
  readonly decDeg: number;
  readonly raYear: number;
  readonly decYear: number;
  readonly pmRaMasPerYear: number;
  readonly pmDecMasPerYear: number;
};

/** The epoch that the tiles are for. */
export const TILE_EPOCH = 2025;

/**
 * Direction at an epoch: along the tangent by the motion, then back to the sphere (straight motion in space without its
 * radial part; ESA SP-1200, 1997, vol. 1, section 1.5.5). Without a known motion the place stands still.
 */
export function dirAtEpoch(place: RawPlace, year: number): Dir {
  const start = dirFromRadec(place.raDeg * DEG, place.decDeg * DEG);
  if (Number.isNaN(place.pmRaMasPerYear) || Number.isNaN(place.pmDecMasPerYear)) return start;
  const [x, y, z] = start;
  const rho = Math.sqrt(x * x + y * y);
  const east = place.pmRaMasPerYear * MAS_RAD * (year - place.raYear);
  const north = place.pmDecMasPerYear * MAS_RAD * (year - place.decYear);
  return normalise([
    x - (east * y) / rho - (north * z * x) / rho,
    y + (east * x) / rho - (north * z * y) / rho,
    z + north * rho,
  ]);
}

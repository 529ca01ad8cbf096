/** Places of the catalogue brought to an epoch. */
import { applyProperMotion } from "#core/celestial/properMotion.ts";
import { DEG, dirFromRadec } from "#core/celestial/vector.ts";
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

/** Direction at an epoch, each coordinate moved from its own. Without a known motion the place stands still. */
export function dirAtEpoch(place: RawPlace, year: number): Dir {
  const start = dirFromRadec(place.raDeg * DEG, place.decDeg * DEG);
  if (Number.isNaN(place.pmRaMasPerYear) || Number.isNaN(place.pmDecMasPerYear)) return start;
  const eastMas = place.pmRaMasPerYear * (year - place.raYear);
  const northMas = place.pmDecMasPerYear * (year - place.decYear);
  return applyProperMotion(start, eastMas, northMas, 1);
}

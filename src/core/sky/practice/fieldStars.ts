/** The stars that the counts alone give, cell by cell: a Poisson process on a density that hills make uneven. */
import { exactLog } from "#core/celestial/exactMath.ts";
import { placeOfPixel } from "#core/celestial/healpixPixel.ts";
import type { TileKey } from "#core/seams/index.ts";
import { createChance, drawPoisson } from "./chance.ts";
import { createDensity, type Density, type GalacticPlace, galacticPlace } from "./density.ts";
import type { SkyFrame } from "./frame.ts";
import { type PracticeLayer, practiceLayerOfKey } from "./layers.ts";
import { PURPOSE } from "./seed.ts";
import { colourOf } from "./starColours.ts";
import { countsAt } from "./starCounts.ts";

/** A growing list of stars: three numbers a direction, the others one. */
export type StarList = { readonly dirs: number[]; readonly milliMag: number[]; readonly colourBV: number[] };

const WHOLE_SKY_SQ_DEG = 41252.96;
const dir: [number, number, number] = [0, 0, 0];
const galactic: GalacticPlace = { latDeg: 0, lonDeg: 0 };

export function emptyStars(): StarList {
  return { dirs: [], milliMag: [], colourBV: [] };
}

/** The field stars of a tile, in the order of their making. */
export function fieldStars(frame: SkyFrame, key: TileKey): StarList {
  const layer = practiceLayerOfKey(key);
  const density = densityOf(frame, layer);
  const stars = emptyStars();
  const deeper = 2 * (layer.cellOrder - key.order);
  for (let cell = key.pixel << deeper; cell < (key.pixel + 1) << deeper; cell++)
    addCell(frame, layer, density, cell, stars);
  return stars;
}

const densities = new WeakMap<SkyFrame, (Density | undefined)[]>();

function densityOf(frame: SkyFrame, { layer, faintestMilliMag, hills }: PracticeLayer): Density {
  const known = densities.get(frame) ?? [];
  densities.set(frame, known);
  known[layer] ??= createDensity(frame, faintestMilliMag / 1000, hills);
  return known[layer]!;
}

function addCell(frame: SkyFrame, layer: PracticeLayer, density: Density, cell: number, stars: StarList): void {
  const { counts, cellOrder } = layer;
  const perSqDeg = new Float64Array(counts.mags.length);
  placeOfPixel(cellOrder, cell, 0.5, 0.5, dir);
  galacticPlace(frame, dir, galactic);
  const absLatDeg = Math.abs(galactic.latDeg);
  countsAt(counts, absLatDeg, perSqDeg);
  const span = (perSqDeg[perSqDeg.length - 1]! - perSqDeg[0]!) * density(dir, galactic);
  const chance = createChance(frame.hash, PURPOSE.field, layer.layer, cell);
  const sqDeg = WHOLE_SKY_SQ_DEG / (12 << (2 * cellOrder));
  for (let left = drawPoisson(chance, span * sqDeg); left > 0; left--) {
    // The plane of a pixel's two coordinates is equal in area to the sphere.
    placeOfPixel(cellOrder, cell, chance(), chance(), dir);
    const milliMag = drawMilliMag(chance(), layer, perSqDeg);
    stars.dirs.push(dir[0], dir[1], dir[2]);
    stars.milliMag.push(milliMag);
    stars.colourBV.push(colourOf(milliMag / 1000, absLatDeg, chance()));
  }
}

/** The inverse of the cumulative counts, whose logarithm runs straight between two limits. */
function drawMilliMag(draw: number, layer: PracticeLayer, perSqDeg: Float64Array): number {
  const { mags } = layer.counts;
  const wanted = perSqDeg[0]! + draw * (perSqDeg[perSqDeg.length - 1]! - perSqDeg[0]!);
  let above = 1;
  while (above < mags.length - 1 && wanted > perSqDeg[above]!) above += 1;
  const low = perSqDeg[above - 1]!;
  const share = exactLog(wanted / low) / exactLog(perSqDeg[above]! / low);
  const mag = mags[above - 1]! + share * (mags[above]! - mags[above - 1]!);
  // Rounding must not put a star into the layer above.
  return Math.min(layer.faintestMilliMag, Math.max(layer.brightestMilliMag + 1, Math.floor(mag * 1000 + 0.5)));
}

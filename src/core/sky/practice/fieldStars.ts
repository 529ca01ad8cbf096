/** The stars that the counts alone give, cell by cell: a Poisson process on a smooth density. */
import { exactAsin, exactLog } from "#core/celestial/exactMath.ts";
import { pixelCentre, placeOfPixel } from "#core/celestial/healpixPixel.ts";
import { DEG, dot } from "#core/celestial/vector.ts";
import type { Dir, TileKey } from "#core/seams/index.ts";
import { type Chance, createChance, drawPoisson } from "./chance.ts";
import { type PracticeLayer, practiceLayerOfKey } from "./layers.ts";
import { PURPOSE } from "./seed.ts";
import { colourOf } from "./starColours.ts";
import { countsAt } from "./starCounts.ts";

/** A growing list of stars: three numbers a direction, the others one. */
export type StarList = { readonly dirs: number[]; readonly milliMag: number[]; readonly colourBV: number[] };
/** What a sky's field stars hang on. */
export type FieldFrame = { readonly hash: number; readonly galacticPole: Dir };

/** Within a cell of this order (1.8 degrees) the density is even. */
const CELL_ORDER = 5;
const WHOLE_SKY_SQ_DEG = 41252.96;
const CELL_SQ_DEG = WHOLE_SKY_SQ_DEG / (12 << (2 * CELL_ORDER));

const place = new Float64Array(3);

export function emptyStars(): StarList {
  return { dirs: [], milliMag: [], colourBV: [] };
}

/** The field stars of a tile, in the order of their making. */
export function fieldStars(frame: FieldFrame, key: TileKey): StarList {
  const layer = practiceLayerOfKey(key);
  const stars = emptyStars();
  const deeper = 2 * (CELL_ORDER - key.order);
  for (let cell = key.pixel << deeper; cell < (key.pixel + 1) << deeper; cell++) addCell(frame, layer, cell, stars);
  return stars;
}

function addCell({ hash, galacticPole }: FieldFrame, layer: PracticeLayer, cell: number, stars: StarList): void {
  const { counts } = layer;
  const perSqDeg = new Float64Array(counts.mags.length);
  const sine = Math.min(1, Math.abs(dot(pixelCentre(CELL_ORDER, cell), galacticPole)));
  countsAt(counts, exactAsin(sine) / DEG, perSqDeg);
  const chance = createChance(hash, PURPOSE.field, layer.layer, cell);
  const span = perSqDeg[perSqDeg.length - 1]! - perSqDeg[0]!;
  for (let left = drawPoisson(chance, span * CELL_SQ_DEG); left > 0; left--)
    addStar(chance, layer, cell, perSqDeg, stars);
}

function addStar(chance: Chance, layer: PracticeLayer, cell: number, perSqDeg: Float64Array, stars: StarList): void {
  // The plane of a pixel's two coordinates is equal in area to the sphere.
  placeOfPixel(CELL_ORDER, cell, chance(), chance(), place);
  const milliMag = drawMilliMag(chance(), layer, perSqDeg);
  stars.dirs.push(place[0]!, place[1]!, place[2]!);
  stars.milliMag.push(milliMag);
  stars.colourBV.push(colourOf(milliMag / 1000, chance()));
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

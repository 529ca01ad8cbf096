/** The stars that the counts alone give, cell by cell: a Poisson process on a density that hills make uneven. */
import { placeOfPixel } from "#core/celestial/healpixPixel.ts";
import type { TileKey } from "#core/seams/index.ts";
import type { SeeThrough } from "../darkClouds.ts";
import { createChance, drawPoisson } from "./chance.ts";
import { createDensity, type Density, type GalacticPlace, galacticPlace } from "./density.ts";
import type { SkyFrame } from "./frame.ts";
import { type PracticeLayer, practiceLayerOfKey } from "./layers.ts";
import { drawMilliMag, drawMilliMagOfMany, magnitudeTable } from "./magnitudes.ts";
import { redderRank, rednessAt } from "./redness.ts";
import type { Relief } from "./relief.ts";
import { PURPOSE } from "./seed.ts";
import { colourOf } from "./starColours.ts";
import { countsAt } from "./starCounts.ts";
import { addStar, emptyStars, makeRoom, type StarList } from "./starList.ts";

const WHOLE_SKY_SQ_DEG = 41252.96;
const dir: [number, number, number] = [0, 0, 0];
const galactic: GalacticPlace = { latDeg: 0, lonDeg: 0 };

/**
 * The field stars of a tile, in the order of their making.
 * @param seeThrough what dark nebulae leave of those behind them
 */
export function fieldStars(frame: SkyFrame, key: TileKey, seeThrough?: SeeThrough): StarList {
  const layer = practiceLayerOfKey(key);
  const density = densityOf(frame, layer);
  const stars = emptyStars();
  const deeper = 2 * (layer.cellOrder - key.order);
  const veil = layer.behindClouds > 0 ? seeThrough : undefined;
  for (let cell = key.pixel << deeper; cell < (key.pixel + 1) << deeper; cell++)
    addCell(frame, layer, density, cell, stars, veil);
  return stars;
}

const densities = new WeakMap<SkyFrame, Map<Relief, Density>>();

/** Layers that share a relief share its density. */
function densityOf(frame: SkyFrame, { relief }: PracticeLayer): Density {
  const known = densities.get(frame) ?? new Map<Relief, Density>();
  densities.set(frame, known);
  const there = known.get(relief) ?? createDensity(frame, relief);
  known.set(relief, there);
  return there;
}

function addCell(
  frame: SkyFrame,
  layer: PracticeLayer,
  density: Density,
  cell: number,
  stars: StarList,
  veil: SeeThrough | undefined,
): void {
  const { counts, cellOrder, behindClouds } = layer;
  const perSqDeg = new Float64Array(counts.mags.length);
  placeOfPixel(cellOrder, cell, 0.5, 0.5, dir);
  galacticPlace(frame, dir, galactic);
  const absLatDeg = Math.abs(galactic.latDeg);
  countsAt(counts, absLatDeg, perSqDeg);
  const fullness = density(dir, galactic);
  const span = (perSqDeg[perSqDeg.length - 1]! - perSqDeg[0]!) * fullness;
  // Bright stars are near: they stand before the dust.
  const redness = layer.layer === 0 ? 1 : rednessAt(frame, dir, absLatDeg, fullness);
  const chance = createChance(frame.hash, PURPOSE.field, layer.layer, cell);
  const count = drawPoisson(chance, (span * WHOLE_SKY_SQ_DEG) / (12 << (2 * cellOrder)));
  const table = layer.layer === 0 ? undefined : magnitudeTable(layer);
  makeRoom(stars, count);
  for (let left = count; left > 0; left--) {
    // The plane of a pixel's two coordinates is equal in area to the sphere.
    placeOfPixel(cellOrder, cell, chance(), chance(), dir);
    if (veil && chance() < behindClouds * (1 - veil(dir))) continue;
    const draw = chance();
    const milliMag = table ? drawMilliMagOfMany(draw, layer, table, absLatDeg) : drawMilliMag(draw, layer, perSqDeg);
    addStar(stars, dir, milliMag, colourOf(milliMag, absLatDeg, redderRank(chance(), redness)));
  }
}

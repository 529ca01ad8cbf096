/** The stars that the counts alone give, cell by cell: a Poisson process on a density that hills make uneven. */
import { mixHash32, mixHashOn } from "#core/celestial/hash.ts";
import { placeOfPixel } from "#core/celestial/healpixPixel.ts";
import type { TileKey } from "#core/seams/index.ts";
import type { SeeThrough } from "../darkClouds.ts";
import { beginChance, type Chance, createChanceState, drawChance, drawPoisson } from "./chance.ts";
import { createDensity, type Density, type GalacticPlace, galacticPlace } from "./density.ts";
import type { SkyFrame } from "./frame.ts";
import { type PracticeLayer, practiceLayerOfKey } from "./layers.ts";
import { drawMilliMag, drawMilliMagOfMany, magnitudeTable } from "./magnitudes.ts";
import { createRedness, type Redness, redderRank } from "./redness.ts";
import { PURPOSE } from "./seed.ts";
import { colourAmong, coloursAt, isOneColourRange } from "./starColours.ts";
import { countsAt } from "./starCounts.ts";
import { addStar, emptyStars, makeRoom, type StarList } from "./starList.ts";

const WHOLE_SKY_SQ_DEG = 41252.96;
const dir: [number, number, number] = [0, 0, 0];
const galactic: GalacticPlace = { latDeg: 0, lonDeg: 0 };

/** What the cells of a frame's layer are made from. */
type Making = {
  readonly frame: SkyFrame;
  readonly layer: PracticeLayer;
  readonly density: Density;
  readonly redness: Redness;
  /** For V of single stars; the few of the bright layer do without. */
  readonly magnitudes: Float64Array | undefined;
  /** Whether all its stars have the same table of colours. */
  readonly oneColourRange: boolean;
  /** Room for the counts at one latitude. */
  readonly perSqDeg: Float64Array;
  /** The hash that the cells' own go on from. */
  readonly hash: number;
};

/**
 * The field stars of a tile, in the order of their making.
 * @param seeThrough what dark nebulae leave of those behind them
 * @param stars a list to be written over; without it there will be a new one
 */
export function fieldStars(frame: SkyFrame, key: TileKey, seeThrough?: SeeThrough, stars = emptyStars()): StarList {
  const layer = practiceLayerOfKey(key);
  const making = makingOf(frame, layer);
  const deeper = 2 * (layer.cellOrder - key.order);
  const veil = layer.behindClouds > 0 ? seeThrough : undefined;
  stars.count = 0;
  for (let cell = key.pixel << deeper; cell < (key.pixel + 1) << deeper; cell++) addCell(making, cell, stars, veil);
  return stars;
}

const makings = new WeakMap<SkyFrame, Making[]>();

function makingOf(frame: SkyFrame, layer: PracticeLayer): Making {
  const known = makings.get(frame) ?? [];
  makings.set(frame, known);
  known[layer.layer] ??= {
    frame,
    layer,
    // Layers that share a relief share its density.
    density: known.find((made) => made?.layer.relief === layer.relief)?.density ?? createDensity(frame, layer.relief),
    redness: createRedness(frame),
    magnitudes: layer.layer === 0 ? undefined : magnitudeTable(layer),
    oneColourRange: isOneColourRange(layer.brightestMilliMag, layer.faintestMilliMag),
    perSqDeg: new Float64Array(layer.counts.mags.length),
    hash: mixHash32(frame.hash, PURPOSE.field, layer.layer),
  };
  return known[layer.layer]!;
}

/** One sequence after the other, for each cell its own. */
const state = createChanceState();
const chance: Chance = () => drawChance(state);

function addCell(making: Making, cell: number, stars: StarList, veil: SeeThrough | undefined): void {
  const { layer, magnitudes, perSqDeg } = making;
  const { counts, cellOrder, behindClouds } = layer;
  placeOfPixel(cellOrder, cell, 0.5, 0.5, dir);
  galacticPlace(making.frame, dir, galactic);
  const absLatDeg = Math.abs(galactic.latDeg);
  countsAt(counts, absLatDeg, perSqDeg);
  const fullness = making.density(dir, galactic);
  const span = (perSqDeg[perSqDeg.length - 1]! - perSqDeg[0]!) * fullness;
  // Bright stars are near: they stand before the dust.
  const redness = layer.layer === 0 ? 1 : making.redness(dir, absLatDeg, fullness);
  beginChance(state, mixHashOn(making.hash, cell));
  const count = drawPoisson(chance, (span * WHOLE_SKY_SQ_DEG) / (12 << (2 * cellOrder)));
  if (count === 0) return;
  makeRoom(stars, count);
  const one = making.oneColourRange ? coloursAt(layer.faintestMilliMag, absLatDeg) : undefined;
  for (let left = count; left > 0; left--) {
    // The plane of a pixel's two coordinates is equal in area to the sphere.
    placeOfPixel(cellOrder, cell, chance(), chance(), dir);
    if (veil && chance() < behindClouds * (1 - veil(dir))) continue;
    const draw = chance();
    const milliMag = magnitudes
      ? drawMilliMagOfMany(draw, layer, magnitudes, absLatDeg)
      : drawMilliMag(draw, layer, perSqDeg);
    const colours = one ?? coloursAt(milliMag, absLatDeg);
    addStar(stars, dir, milliMag, colourAmong(colours, redderRank(chance(), redness)));
  }
}

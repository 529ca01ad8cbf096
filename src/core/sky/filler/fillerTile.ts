/**
 * Stars that the catalogue sky lacks beyond its completeness: as many to each half magnitude as the counts ask for, less
 * those that are there, scattered evenly. They are a likeness of what would be seen, and nobody's stars.
 */
import { exactAsin, exactLog, exactPow10 } from "#core/celestial/exactMath.ts";
import { pixelCentre } from "#core/celestial/healpix.ts";
import { placeOfPixel } from "#core/celestial/healpixPixel.ts";
import { DEG, dot } from "#core/celestial/vector.ts";
import type { StarBlock } from "#core/seams/index.ts";
import type { SeeThrough } from "../darkClouds.ts";
import { GALACTIC_POLE } from "../glow/glowMap.ts";
import { createChance, drawPoisson } from "../practice/chance.ts";
import { countsAt, countTable } from "../practice/starCounts.ts";

/** Where the catalogue's counts are whole, and its tiles are counted. */
export const WHOLE_ORDER = 4;
/** What is filled at once: 0.9 degrees a side. */
export const FILLER_ORDER = 6;
/** A layer of its own, after those of the catalogue. */
const FILLER_LAYER = 9;
/** Stars fainter than this are 99 % there (Hog et al. 2000, A&A 355, L27). */
export const FILLED_FROM_MAG = 11;
/** No instrument here shows fainter ones. */
const FILLED_TO_MAG = 14.5;
/** How full a tile is beside the mean of its latitude, is told by its stars of these magnitudes. */
const TOLD_FROM_MAG = 9.5;
/** So many stars of the mean are counted in, for tiles with few of their own. */
const STEADY = 20;
const STEP_MAG = 0.5;
const STEPS = Math.round((FILLED_TO_MAG - FILLED_FROM_MAG) / STEP_MAG);
/** How steeply counts grow within a step. */
const SLOPE = 0.37;
const PLAIN_BV = 0.7;
const SALT = 0x66696c6c;
const TILE_SQ_DEG = 41252.96 / (12 << (2 * WHOLE_ORDER));
const PARTS = 1 << (2 * (FILLER_ORDER - WHOLE_ORDER));

const COUNTS = countTable(TOLD_FROM_MAG, FILLED_TO_MAG);
const columnOf = (mag: number) => COUNTS.mags.indexOf(mag);

const countIn = ({ milliMag, count }: StarBlock, fromMag: number, toMag: number): number => {
  let found = 0;
  for (let i = 0; i < count; i++) if (milliMag[i]! > fromMag * 1000 && milliMag[i]! <= toMag * 1000) found += 1;
  return found;
};

/**
 * Stars missing in a whole tile of the catalogue, for each half magnitude from V 11 to 14.5.
 * @param blocks the tile's stars from V 9.5 on, in one block or several
 */
export function missingIn(pixel: number, blocks: readonly StarBlock[]): number[] {
  const perSqDeg = new Float64Array(COUNTS.mags.length);
  const sine = Math.abs(dot(pixelCentre(WHOLE_ORDER, pixel), GALACTIC_POLE));
  countsAt(COUNTS, exactAsin(Math.min(1, sine)) / DEG, perSqDeg);
  const mean = (fromMag: number, toMag: number) =>
    (perSqDeg[columnOf(toMag)]! - perSqDeg[columnOf(fromMag)]!) * TILE_SQ_DEG;
  const there = (fromMag: number, toMag: number) =>
    blocks.reduce((sum, block) => sum + countIn(block, fromMag, toMag), 0);
  const fullness = (there(TOLD_FROM_MAG, FILLED_FROM_MAG) + STEADY) / (mean(TOLD_FROM_MAG, FILLED_FROM_MAG) + STEADY);
  return Array.from({ length: STEPS }, (_, i) => {
    const from = FILLED_FROM_MAG + i * STEP_MAG;
    return Math.max(0, fullness * mean(from, from + STEP_MAG) - there(from, from + STEP_MAG));
  });
}

/**
 * The filling of one part of a tile, brightest first; the same whenever and wherever it is made.
 * @param pixel of `FILLER_ORDER`
 * @param missing of the whole tile about it (`missingIn`)
 * @param seeThrough what dark clouds leave of it
 */
export function fillerTile(pixel: number, missing: readonly number[], seeThrough: SeeThrough = () => 1): StarBlock {
  const dirs: number[] = [];
  const mags: number[] = [];
  const place = new Float64Array(3);
  missing.forEach((count, step) => {
    const chance = createChance(SALT, pixel, step);
    const drawn: number[] = [];
    for (let left = drawPoisson(chance, count / PARTS); left > 0; left--) drawn.push(magOf(step, chance()));
    for (const mag of drawn.sort((a, b) => a - b)) {
      placeOfPixel(FILLER_ORDER, pixel, chance(), chance(), place);
      const share = seeThrough(place);
      if (share < 1 && chance() >= share) continue;
      dirs.push(place[0]!, place[1]!, place[2]!);
      mags.push(mag);
    }
  });
  return {
    key: { order: FILLER_ORDER, pixel, layer: FILLER_LAYER },
    count: mags.length,
    dirs: Float32Array.from(dirs),
    milliMag: Int16Array.from(mags),
    colourBV: new Float32Array(mags.length).fill(PLAIN_BV),
    invented: true,
  };
}

/** V in 0.001 mag within a step, counts growing by `SLOPE`. */
function magOf(step: number, draw: number): number {
  const share = exactLog(1 + draw * (exactPow10(SLOPE * STEP_MAG) - 1)) / Math.LN10 / SLOPE;
  return Math.ceil((FILLED_FROM_MAG + step * STEP_MAG + share) * 1000);
}

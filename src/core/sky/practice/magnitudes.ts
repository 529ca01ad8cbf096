/** Which magnitudes the stars of a layer have. */
import { exactLog } from "#core/celestial/exactMath.ts";
import type { PracticeLayer } from "./layers.ts";
import { countsAt } from "./starCounts.ts";

const LATITUDES = 91;
/** Steps of equal numbers of stars: within one magnitudes are spread evenly. */
const STEPS = 128;
const tables = new WeakMap<PracticeLayer, Float64Array>();

/** The inverse of the cumulative counts, whose logarithm runs straight between two limits. */
function magOf(draw: number, mags: readonly number[], perSqDeg: Float64Array): number {
  const wanted = perSqDeg[0]! + draw * (perSqDeg[perSqDeg.length - 1]! - perSqDeg[0]!);
  let above = 1;
  while (above < mags.length - 1 && wanted > perSqDeg[above]!) above += 1;
  const low = perSqDeg[above - 1]!;
  const share = exactLog(wanted / low) / exactLog(perSqDeg[above]! / low);
  return mags[above - 1]! + share * (mags[above]! - mags[above - 1]!);
}

function inLayer(milliMag: number, { brightestMilliMag, faintestMilliMag }: PracticeLayer): number {
  // Rounding must not put a star into the layer above.
  return Math.min(faintestMilliMag, Math.max(brightestMilliMag + 1, Math.floor(milliMag + 0.5)));
}

/** V of a star, 0.001 mag, for a draw in [0, 1), where the counts to the layer's limits are given: exact, for few stars. */
export function drawMilliMag(draw: number, layer: PracticeLayer, perSqDeg: Float64Array): number {
  return inLayer(magOf(draw, layer.counts.mags, perSqDeg) * 1000, layer);
}

/** The same at whole degrees of |b| from a table, for many stars. */
export function drawMilliMagOfMany(draw: number, layer: PracticeLayer, table: Float64Array, absLatDeg: number): number {
  const at = Math.floor(absLatDeg + 0.5) * (STEPS + 1);
  const place = draw * STEPS;
  const step = Math.floor(place);
  const low = table[at + step]!;
  return inLayer(low + (place - step) * (table[at + step + 1]! - low), layer);
}

/** The table of a layer for {@link drawMilliMagOfMany}: 0.001 mag at each step, for |b| of 0, 1 .. 90 degrees. */
export function magnitudeTable(layer: PracticeLayer): Float64Array {
  const known = tables.get(layer);
  if (known) return known;
  const table = new Float64Array(LATITUDES * (STEPS + 1));
  const perSqDeg = new Float64Array(layer.counts.mags.length);
  for (let latitude = 0; latitude < LATITUDES; latitude++) {
    countsAt(layer.counts, latitude, perSqDeg);
    for (let step = 0; step <= STEPS; step++)
      table[latitude * (STEPS + 1) + step] = 1000 * magOf(step / STEPS, layer.counts.mags, perSqDeg);
  }
  tables.set(layer, table);
  return table;
}

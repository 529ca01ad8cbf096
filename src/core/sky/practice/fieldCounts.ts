/**
 * How many field stars there are: what was counted, less the companions and the members of clusters that come on top. Those
 * were counted with the others, and without this they would be there twice.
 */
import { exactExp, exactLog } from "#core/celestial/exactMath.ts";
import { between } from "./between.ts";
import { COMPANION_SHARE, FAINTER_MAG } from "./companionShare.ts";
import { type CountTable, countTable } from "./starCounts.ts";

/**
 * Members of open clusters to V per square degree at |b| of 1 degree, and how they thin out from there: the mean of the
 * clusters that practice skies are given (a test counts them).
 */
const MEMBER_MAGS: readonly number[] = [5.5, 6.5, 8, 9.5, 11, 12.5, 13.5, 15.5];
const MEMBER_LOGS = [0.0026, 0.0101, 0.0712, 0.29, 0.792, 1.51, 2.06, 2.95].map(exactLog);
const THINNING_DEG: readonly number[] = [0, 1.25, 5, 11.25, 20, 26];
const THINNING_LOGS = [1, 1, 0.28, 0.1, 0.036, 0.001].map(exactLog);

/** Members of clusters to V per square degree at |b|, in the mean over all practice skies. */
export function membersPerSqDeg(mag: number, latitudeDeg: number): number {
  if (mag < MEMBER_MAGS[0]!) return 0;
  return exactExp(between(MEMBER_MAGS, MEMBER_LOGS, mag) + between(THINNING_DEG, THINNING_LOGS, latitudeDeg));
}

/** Counts of field stars alone from one limit to another; both as for {@link countTable}. */
export function fieldCountTable(fromMag: number, toMag: number): CountTable {
  // The brighter stars, too: their companions are among these.
  const all = countTable(Number.NEGATIVE_INFINITY, toMag);
  const width = all.mags.length;
  const mags = all.mags.filter((mag) => mag >= fromMag);
  const rows = new Float64Array((all.rows.length / width) * mags.length);
  for (let i = 0; i < rows.length; i++) {
    const latitude = Math.floor(i / mags.length);
    const at = width - mags.length + (i % mags.length);
    const counts = all.rows.subarray(latitude * width, (latitude + 1) * width);
    const own = counts[at]! - membersPerSqDeg(all.mags[at]!, latitude);
    rows[i] = own / (1 + companionsPerStar(all.mags, counts, at));
  }
  return { mags, rows };
}

/**
 * Companions to a limit for each star to it. How much fainter they are is spread evenly, so they are as many as the mean of
 * the counts over the magnitudes before, times the share; between two limits the counts' logarithm runs straight.
 */
function companionsPerStar(mags: readonly number[], counts: Float64Array, at: number): number {
  let [stars, left] = [0, FAINTER_MAG];
  for (let i = at; i > 0 && left > 0; i--) {
    const step = mags[i]! - mags[i - 1]!;
    const rise = exactLog(counts[i]! / counts[i - 1]!);
    const part = Math.min(1, left / step);
    stars += (counts[i]! * step * (1 - exactExp(-rise * part))) / rise;
    left -= step;
  }
  return (COMPANION_SHARE / FAINTER_MAG) * (stars / counts[at]!);
}

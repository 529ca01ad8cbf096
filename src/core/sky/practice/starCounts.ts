/**
 * How many stars there are: cumulative counts of Tycho-2 (Hog et al. 2000, A&A 355, L27: main catalogue and supplement 1,
 * 99 % complete to V 11; V = VT - 0.09 (BT - VT)) by galactic latitude, averaged over longitude.
 */
import { exactCos, exactExp, exactLog, exactPow10 } from "#core/celestial/exactMath.ts";
import { DEG } from "#core/celestial/vector.ts";
import { between } from "./between.ts";

/** Edges of the bands of |b| that were counted, and their middles, degrees. */
const BAND_EDGES_DEG: readonly number[] = [0, 2.5, 7.5, 15, 25, 35, 50, 70, 90];
const BAND_MIDDLES_DEG: readonly number[] = [1.25, 5, 11.25, 20, 30, 42.5, 60, 80];
/** Limits of the columns of {@link PER_SQ_DEG}: V 5.5 to 11 by halves. */
const COLUMN_MAGS: readonly number[] = [5.5, 6, 6.5, 7, 7.5, 8, 8.5, 9, 9.5, 10, 10.5, 11];
/** Stars to V per square degree, a row for each band. */
const PER_SQ_DEG: readonly (readonly number[])[] = [
  [0.1167, 0.20618, 0.37123, 0.66688, 1.1876, 2.0673, 3.6684, 6.3309, 10.772, 18.271, 31.01, 51.466],
  [0.10739, 0.18911, 0.32607, 0.57124, 0.99828, 1.7475, 3.049, 5.2966, 9.1025, 15.434, 26.214, 43.948],
  [0.085027, 0.15191, 0.27152, 0.48862, 0.83874, 1.4662, 2.5527, 4.3811, 7.4602, 12.503, 21.224, 35.354],
  [0.083023, 0.14222, 0.24285, 0.4234, 0.71568, 1.2285, 2.0833, 3.5202, 5.8987, 9.6803, 15.95, 25.769],
  [0.056203, 0.10133, 0.18852, 0.33079, 0.57824, 0.99061, 1.6938, 2.808, 4.6439, 7.5122, 12.138, 19.133],
  [0.054031, 0.094586, 0.16033, 0.28048, 0.48137, 0.82281, 1.3697, 2.2633, 3.6684, 5.8437, 9.2115, 14.23],
  [0.049138, 0.089063, 0.15272, 0.26049, 0.44001, 0.7393, 1.1949, 1.9154, 3.0445, 4.7449, 7.2928, 11.03],
  [0.042205, 0.077979, 0.14028, 0.24157, 0.40034, 0.6375, 1.0394, 1.683, 2.6601, 4.0923, 6.293, 9.4081],
];
/** Stars of the whole sky to V: too few in a band to be counted there. The first three are handbook values, from memory. */
const BRIGHT_MAGS: readonly number[] = [-1, 0, 1, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5];
const BRIGHT_SKY = [1, 4, 15, 47, 93, 178, 288, 521, 907, 1609, 2842] as const;

/**
 * Beyond V 11 nothing was counted: the slope of log N falls in a straight line from the counted one at V 11 to one assumed at
 * V 16, at these latitudes (an estimate: within 15 % at V 12, 25 % at 14).
 */
const DEEP_LATITUDES_DEG: readonly number[] = [0, 5, 10, 20, 30, 60, 90];
const SLOPES_AT_11: readonly number[] = [0.421, 0.431, 0.417, 0.41, 0.379, 0.362, 0.375];
const SLOPES_AT_16: readonly number[] = [0.352, 0.343, 0.341, 0.303, 0.287, 0.241, 0.21];
const DEEPEST_COUNTED = 11;
const DEEP_MAGS: readonly number[] = [11.5, 12, 12.5, 13, 13.5, 14, 14.5, 15, 15.5];

const LATITUDES = 91;
const ALL_MAGS: readonly number[] = [...BRIGHT_MAGS, ...COLUMN_MAGS.slice(1), ...DEEP_MAGS];

/** Counts between two limits, ready to be asked for any latitude. */
export type CountTable = {
  /** The limits, V, rising; the first is the bright end. */
  readonly mags: readonly number[];
  /** Stars per square degree to each limit, for |b| = 0, 1 .. 90 degrees, `mags.length` numbers each. */
  readonly rows: Float64Array;
};

/** The counts from one limit of the table to another (both among -1, 0, 1, 2, 2.5, 3 .. 15.5). */
export function countTable(fromMag: number, toMag: number): CountTable {
  const mags = ALL_MAGS.filter((mag) => mag >= fromMag && mag <= toMag);
  const rows = new Float64Array(LATITUDES * mags.length);
  for (let latitude = 0; latitude < LATITUDES; latitude++) {
    mags.forEach((mag, i) => {
      rows[latitude * mags.length + i] = perSqDeg(mag, latitude);
    });
  }
  return { mags, rows };
}

/** Writes the counts at a latitude into `out`, one for each of the table's limits. `latitudeDeg` is |b|, 0 to 90. */
export function countsAt({ mags, rows }: CountTable, latitudeDeg: number, out: Float64Array): void {
  const below = Math.min(LATITUDES - 2, Math.floor(latitudeDeg));
  const share = latitudeDeg - below;
  const width = mags.length;
  for (let i = 0; i < width; i++) {
    const low = rows[below * width + i]!;
    out[i] = low + share * (rows[(below + 1) * width + i]! - low);
  }
}

/**
 * Stars to `mag` per square degree at |b|. Stars brighter than 5.5 lie about the plane as those to 5.5 do.
 */
function perSqDeg(mag: number, latitudeDeg: number): number {
  if (mag > DEEPEST_COUNTED) return perSqDeg(DEEPEST_COUNTED, latitudeDeg) * growthBeyond(mag, latitudeDeg);
  const bright = BRIGHT_MAGS.indexOf(mag);
  const share = bright < 0 ? 1 : BRIGHT_SKY[bright]! / BRIGHT_SKY[BRIGHT_SKY.length - 1]!;
  const column = bright < 0 ? COLUMN_MAGS.indexOf(mag) : 0;
  return share * alongBands(logsAtMiddles(column), latitudeDeg);
}

/** Between the bands' middles the logarithm runs straight, so that no edge of a band shows in the sky. */
function alongBands(logs: readonly number[], latitudeDeg: number): number {
  return exactExp(between(BAND_MIDDLES_DEG, logs, latitudeDeg));
}

const middles = new Map<number, readonly number[]>();

/**
 * Logarithms at the bands' middles with which the mean of each band is what was counted in it. The counts themselves will not
 * do: between two middles the line runs above a curve that is hollow, as it is towards the poles.
 */
function logsAtMiddles(column: number): readonly number[] {
  const known = middles.get(column);
  if (known) return known;
  const counted = PER_SQ_DEG.map((row) => exactLog(row[column]!));
  let logs = counted;
  for (let round = 0; round < ROUNDS; round++) {
    const means = BAND_MIDDLES_DEG.map((_, band) => exactLog(meanOfBand(logs, band)));
    logs = logs.map((log, band) => log + counted[band]! - means[band]!);
  }
  middles.set(column, logs);
  return logs;
}

const ROUNDS = 4;
const PARTS = 20;

/** By area. */
function meanOfBand(logs: readonly number[], band: number): number {
  const [from, to] = [BAND_EDGES_DEG[band]!, BAND_EDGES_DEG[band + 1]!];
  let [stars, areas] = [0, 0];
  for (let part = 0; part < PARTS; part++) {
    const latitudeDeg = from + ((part + 0.5) / PARTS) * (to - from);
    const area = exactCos(latitudeDeg * DEG);
    stars += area * alongBands(logs, latitudeDeg);
    areas += area;
  }
  return stars / areas;
}

/** How many times as many stars there are to a magnitude beyond 11 as to 11. */
function growthBeyond(mag: number, latitudeDeg: number): number {
  const beyond = mag - DEEPEST_COUNTED;
  const first = between(DEEP_LATITUDES_DEG, SLOPES_AT_11, latitudeDeg);
  const last = between(DEEP_LATITUDES_DEG, SLOPES_AT_16, latitudeDeg);
  return exactPow10(first * beyond + ((last - first) * beyond * beyond) / 10);
}

/** How much fuller a galactic longitude is than the mean of its latitude, as counted in Tycho-2. */
import statistics from "#shared/star-statistics.json" with { type: "json" };

const OCTANTS = 8;
const { bandMiddlesDeg, longitudes } = statistics;
const BANDS = bandMiddlesDeg.length;

/** Factors of one range of magnitudes: rows from the south pole to the north pole, an octant each column. */
export type LongitudeTable = { readonly latitudesDeg: readonly number[]; readonly factors: Float64Array };

/** The factors as counted nearest to a layer's magnitudes. */
export function longitudeTable(toMag: number): LongitudeTable {
  const { octantPercent, southPercent } = longitudes.find((range) => toMag <= range.toMag) ?? longitudes.at(-1)!;
  const factors = new Float64Array(2 * BANDS * OCTANTS);
  for (let band = 0; band < BANDS; band++) {
    const south = southPercent[band]! / 100;
    for (let octant = 0; octant < OCTANTS; octant++) {
      const there = octantPercent[band]![octant]! / 100;
      factors[(BANDS - 1 - band) * OCTANTS + octant] = there * south;
      factors[(BANDS + band) * OCTANTS + octant] = there * (2 - south);
    }
  }
  return { latitudesDeg: [...bandMiddlesDeg.map((middle) => -middle).reverse(), ...bandMiddlesDeg], factors };
}

/** The factor at galactic latitude -90 to 90 and longitude 0 to 360 degrees, straight between the middles of what was counted. */
export function longitudeFactor({ latitudesDeg, factors }: LongitudeTable, latDeg: number, lonDeg: number): number {
  const last = latitudesDeg.length - 1;
  let row = 0;
  while (row < last - 1 && latDeg > latitudesDeg[row + 1]!) row += 1;
  const low = latitudesDeg[row]!;
  const along = Math.min(1, Math.max(0, (latDeg - low) / (latitudesDeg[row + 1]! - low)));
  const octants = lonDeg / (360 / OCTANTS);
  const west = Math.floor(octants);
  const share = octants - west;
  const south = inRow(factors, row, west, share);
  return south + along * (inRow(factors, row + 1, west, share) - south);
}

function inRow(factors: Float64Array, row: number, west: number, share: number): number {
  const here = factors[row * OCTANTS + (west % OCTANTS)]!;
  return here + share * (factors[row * OCTANTS + ((west + 1) % OCTANTS)]! - here);
}

/** The law of star counts that practice skies are sown by, against counts and estimates of others; see the data for each source. */
import { describe, expect, it } from "vitest";
import { DEG } from "#core/celestial/vector.ts";
import { countsAt, countTable } from "#core/sky/practice/starCounts.ts";
import counts from "./data/starCounts.json" with { type: "json" };

const table = countTable(4, 15);
const here = new Float64Array(table.mags.length);

/** Stars to a magnitude per square degree, at a galactic latitude. */
function perSqDeg(mag: number, latitudeDeg: number): number {
  countsAt(table, latitudeDeg, here);
  return here[table.mags.indexOf(mag)]!;
}

/** The same as a mean over the sphere, by belts of half a degree. */
function skyMean(mag: number): number {
  let [stars, areas] = [0, 0];
  for (let belt = 0.25; belt < 90; belt += 0.5) {
    const area = Math.cos(belt * DEG);
    stars += area * perSqDeg(mag, belt);
    areas += area;
  }
  return stars / areas;
}

describe("stars beyond the counted ones", () => {
  it.each(counts.estimates.rows)("to V $mag at |b| $latitudeDeg", ({ mag, latitudeDeg, ...wanted }) => {
    expect(Math.abs(perSqDeg(mag, latitudeDeg) - wanted.perSqDeg)).toBeLessThanOrEqual(wanted.tolerance);
  });
});

describe("the mean of the whole sky", () => {
  it.each(counts.wholeSky.rows)("to V $mag", ({ mag, ...wanted }) => {
    expect(Math.abs(skyMean(mag) - wanted.perSqDeg)).toBeLessThanOrEqual(wanted.tolerance);
  });
});

describe("the field about the celestial pole", () => {
  it.each(counts.nearThePole.rows)("to $mag", ({ mag, ...wanted }) => {
    expect(Math.abs(perSqDeg(mag, counts.nearThePole.latitudeDeg) / wanted.perSqDeg - 1)).toBeLessThan(1 / 3);
  });
});

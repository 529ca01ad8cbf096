/** The law of star counts that practice skies are sown by, against counts and estimates of others; see the data for each source. */
import { describe, expect, it } from "vitest";
import { DEG } from "#core/celestial/vector.ts";
import { countsAt, countTable } from "#core/sky/practice/starCounts.ts";
import { bahcallSoneira } from "./bahcallSoneira.ts";
import counts from "./data/starCounts.json" with { type: "json" };

const table = countTable(4, 15.5);
const here = new Float64Array(table.mags.length);

/**
 * Stars to a magnitude per square degree, at a galactic latitude. The law ends at V 15.5; half a magnitude on it goes by the
 * same fall of its slope, which makes log N a parabola.
 */
function perSqDeg(mag: number, latitudeDeg: number): number {
  countsAt(table, latitudeDeg, here);
  const at = table.mags.indexOf(mag);
  if (at >= 0) return here[at]!;
  const [before, middle, last] = here.subarray(-3);
  return (last! / middle!) ** 3 * before!;
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

describe("a model of the galaxy, which is no better than a lower bound here", () => {
  it.each(counts.model.rows)("to V $mag at l $lonDeg, b $latDeg is as given", ({ mag, lonDeg, latDeg, ...wanted }) => {
    expect(Math.abs(bahcallSoneira(mag, lonDeg, latDeg) - wanted.perSqDeg)).toBeLessThanOrEqual(counts.model.tolerance);
  });

  // At V 11 it has half to seven tenths of the stars that Tycho-2 counts; the fainter, the less it lacks.
  it.each([15, 16])(
    "has three fifths of the law's stars to V %i and more, and no more than all, away from the plane",
    (mag) => {
      for (const latDeg of [20, 30, 60, 90]) {
        const longitudes = Array.from({ length: 36 }, (_, i) => bahcallSoneira(mag, 10 * i, latDeg));
        const share = longitudes.reduce((sum, each) => sum + each, 0) / 36 / perSqDeg(mag, latDeg);
        expect(share, `|b| ${latDeg}`).toBeGreaterThan(0.6);
        expect(share, `|b| ${latDeg}`).toBeLessThan(1);
      }
    },
  );
});

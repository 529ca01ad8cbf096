import { describe, expect, test } from "vitest";
import { DEG, dirFromRadec, separationRad } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { type FoundStar, starsWithin } from "#core/sky/catalogue/starsWithin.ts";
import { createChance } from "#core/sky/practice/chance.ts";
import type { SkyFrame } from "#core/sky/practice/frame.ts";
import { planOf } from "#core/sky/practice/plan.ts";
import { createPracticeSource } from "#core/sky/practice/practiceSource.ts";
import { countsAt, countTable } from "#core/sky/practice/starCounts.ts";
import table from "./data/tycho2Clumps.json" with { type: "json" };

const SEEDS = ["heath", "fold"] as const;
const CIRCLES = 500;
const never = new AbortController().signal;

/** A place at chance between two galactic latitudes, either side of the plane. */
function placeIn(frame: SkyFrame, chance: () => number, fromDeg: number, toDeg: number): Dir {
  const [low, high] = [Math.sin(fromDeg * DEG), Math.sin(toDeg * DEG)];
  const z = (low + (high - low) * chance()) * (chance() < 0.5 ? -1 : 1);
  const [x, y] = dirFromRadec(2 * Math.PI * chance(), Math.asin(z));
  const axis = (i: 0 | 1 | 2) => x * frame.galacticCentre[i] + y * frame.galacticQuarter[i] + z * frame.galacticPole[i];
  return [axis(0), axis(1), axis(2)];
}

const sources = new Map(SEEDS.map((seed) => [seed, createPracticeSource(seed)]));

async function starsAt(seed: (typeof SEEDS)[number], dir: Dir, radiusDeg: number, toMag: number): Promise<FoundStar[]> {
  const source = sources.get(seed)!;
  const cone = { centre: dir, radiusRad: radiusDeg * DEG };
  await source.want(source.resident(cone, toMag).missing, 0, never);
  return starsWithin(source.resident(cone, toMag), dir, cone.radiusRad, toMag * 1000);
}

describe("practice skies against the patterns of Tycho-2", () => {
  test.each(table.circles.filter(({ diameterDeg }) => diameterDeg <= 1))(
    "counts in circles of $diameterDeg degrees to V $toMag scatter as counted, to 15 %",
    async ({ toMag, diameterDeg, varianceOverMean }) => {
      for (let band = 0; band < varianceOverMean.length; band++) {
        const [from, to] = table.absLatitudeBandsDeg[band]!;
        let [sum, squares] = [0, 0];
        for (const [i, seed] of SEEDS.entries()) {
          const chance = createChance(i, band, toMag);
          for (let n = 0; n < CIRCLES; n++) {
            const count = (await starsAt(seed, placeIn(planOf(seed).frame, chance, from!, to!), diameterDeg / 2, toMag))
              .length;
            sum += count;
            squares += count * count;
          }
        }
        const mean = sum / (SEEDS.length * CIRCLES);
        const ratio = (squares / (SEEDS.length * CIRCLES) - mean * mean) / mean / varianceOverMean[band]!;
        expect(Math.abs(ratio - 1), `|b| from ${from}: ${ratio}`).toBeLessThan(0.15);
      }
    },
    30_000,
  );

  test("away from the plane each star is as far from its neighbour as even chance has it, to 3 %", async () => {
    for (const toMag of [9.5, 11]) {
      const reachDeg = toMag > 10 ? 1.5 : 4;
      const chance = createChance(7, toMag * 2);
      let [found, expected] = [0, 0];
      for (let n = 0; n < 60; n++) {
        const middle = placeIn(planOf("heath").frame, chance, 25, 90);
        const all = await starsAt("heath", middle, reachDeg, toMag);
        const stars = all.filter((star, i) => !all.slice(0, i).some(({ dir }) => apartDeg(dir, star.dir) < 15 / 3600));
        const perSqDeg = stars.length / (2 * Math.PI * (1 - Math.cos(reachDeg * DEG)) * (180 / Math.PI) ** 2);
        for (const { dir } of stars.filter((star) => apartDeg(star.dir, middle) < 0.75 * reachDeg)) {
          found += Math.min(...stars.map((other) => (other.dir === dir ? 9 : apartDeg(other.dir, dir))));
          expected += 0.5 / Math.sqrt(perSqDeg);
        }
      }
      expect(found / expected, `V ${toMag}`).toBeGreaterThan(0.97);
      expect(found / expected, `V ${toMag}`).toBeLessThan(1.03);
    }
  }, 30_000);

  test("beyond V 11 the counts go on as estimated for the latitudes of the table", () => {
    const { mags } = countTable(11, 15);
    const perSqDeg = new Float64Array(mags.length);
    const estimate = [
      [0, 135, 830, 1960],
      [10, 96, 577, 1330],
      [30, 45, 221, 454],
      [60, 24.4, 104, 196],
    ] as const;
    for (const [latitude, ...wanted] of estimate) {
      countsAt(countTable(11, 15), latitude, perSqDeg);
      [12, 14, 15].forEach((mag, i) => {
        expect(Math.abs(perSqDeg[mags.indexOf(mag)]! / wanted[i]! - 1), `b ${latitude}, V ${mag}`).toBeLessThan(0.15);
      });
    }
  });
});

const apartDeg = (a: Dir, b: Dir): number => separationRad(a, b) / DEG;

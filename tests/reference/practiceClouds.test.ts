/** What the dark nebulae and the clusters of practice skies do to their counts. */
import { describe, expect, test } from "vitest";
import { DEG, dot, offsetDir, separationRad } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { starsWithin } from "#core/sky/catalogue/starsWithin.ts";
import { practiceGlow, practiceGlowBeyond } from "#core/sky/glow/practiceGlow.ts";
import { membersPerSqDeg } from "#core/sky/practice/fieldCounts.ts";
import { membersOf } from "#core/sky/practice/members.ts";
import { planOf } from "#core/sky/practice/plan.ts";
import { createPracticeSource } from "#core/sky/practice/practiceSource.ts";

const SEEDS = ["heath", "fold", "beck"];
const never = new AbortController().signal;
const SQ_DEG = (180 / Math.PI) ** 2;

describe("dark nebulae", () => {
  const clouds = SEEDS.flatMap((seed) =>
    planOf(seed)
      .wild.filter(({ kind, minorArcmin }) => kind === "darkNebula" && minorArcmin >= 20)
      .map((cloud) => ({ seed, cloud })),
  );
  const sources = new Map(SEEDS.map((seed) => [seed, createPracticeSource(seed)]));

  async function countAt(seed: string, dir: Dir, radiusRad: number, fromMag: number, toMag: number): Promise<number> {
    const source = sources.get(seed)!;
    const cone = { centre: dir, radiusRad };
    await source.want(source.resident(cone, toMag).missing, 0, never);
    const found = starsWithin(source.resident(cone, toMag), dir, radiusRad, toMag * 1000);
    return found.filter(({ milliMag }) => milliMag > fromMag * 1000).length;
  }

  /** Stars in the thick of all clouds, for one star in the same circles beside them. */
  async function shareLeft(fromMag: number, toMag: number): Promise<number> {
    let [inside, beside] = [0, 0];
    for (const { seed, cloud } of clouds) {
      const radiusRad = ((0.65 * cloud.minorArcmin) / 120) * DEG;
      inside += await countAt(seed, cloud.dir, radiusRad, fromMag, toMag);
      for (let turn = 0; turn < 6; turn++)
        beside += (await countAt(seed, offsetDir(cloud.dir, turn, 1.5 * DEG), radiusRad, fromMag, toMag)) / 6;
    }
    return inside / beside;
  }

  test("leave a fifth of the faint stars, half of the bright ones", async () => {
    expect(clouds.length).toBeGreaterThan(20);
    const faint = await shareLeft(11, 13);
    expect(faint).toBeGreaterThan(0.12);
    expect(faint).toBeLessThan(0.3);
    const bright = await shareLeft(6.5, 9.5);
    expect(bright).toBeGreaterThan(0.3);
    expect(bright).toBeLessThan(0.9);
  }, 20_000);

  test("darken the glow in them, and not beside them", () => {
    for (const { seed, cloud } of clouds.slice(0, 5)) {
      const clear = practiceGlow(seed, () => 1);
      const edge = offsetDir(cloud.dir, 0, (cloud.majorArcmin / 60) * DEG);
      expect(practiceGlow(seed)(cloud.dir) - clear(cloud.dir)).toBeCloseTo(2.5 * Math.log10(5), 2);
      expect(practiceGlow(seed)(edge)).toBeCloseTo(clear(edge), 2);
    }
  });

  test("that are great show in the Milky Way as it is drawn, those of the catalogue's sizes do not", () => {
    const HALF_CELL_DEG = 1.9;
    const drawn = (seed: string, dir: Dir) => {
      const light = practiceGlowBeyond(seed, true);
      const ring = [0, 1, 2, 3, 4, 5].map((i) => light(offsetDir(dir, i, 3 * HALF_CELL_DEG * DEG)));
      return light(dir) - ring.reduce((sum, mu) => sum + mu, 0) / ring.length;
    };
    const mean = (list: readonly number[]) => list.reduce((sum, each) => sum + each, 0) / list.length;
    const great = SEEDS.flatMap((seed) => planOf(seed).greatClouds.map(({ dir }) => drawn(seed, dir)));
    expect(great.length).toBe(4 * SEEDS.length);
    expect(mean(great)).toBeGreaterThan(0.7);
    const small = clouds.filter(({ cloud }) => cloud.majorArcmin < 40).map(({ seed, cloud }) => drawn(seed, cloud.dir));
    expect(mean(small)).toBeLessThan(0.5);
  });

  test("thin the deep stars of the great clouds too, where the first hops do not go", async () => {
    let [inside, beside] = [0, 0];
    for (const seed of SEEDS)
      for (const { dir, majorArcmin } of planOf(seed).greatClouds) {
        expect(separationRad(dir, planOf(seed).anchor.dir) / DEG).toBeGreaterThan(9 + majorArcmin / 120);
        inside += await countAt(seed, dir, 0.5 * DEG, 11, 12.5);
        for (let turn = 0; turn < 6; turn++)
          beside += (await countAt(seed, offsetDir(dir, turn, 5 * DEG), 0.5 * DEG, 11, 12.5)) / 6;
      }
    expect(inside / beside).toBeGreaterThan(0.12);
    expect(inside / beside).toBeLessThan(0.35);
  }, 20_000);
});

test("field stars make room for as many members of clusters as practice skies have", () => {
  const skies = Array.from({ length: 20 }, (_, i) => planOf(`room-${i}`));
  const bands = [
    [0, 2.5, 0.15],
    [2.5, 7.5, 0.2],
    [7.5, 15, 0.25],
  ] as const;
  for (const [from, to, slack] of bands)
    for (const mag of [8, 9.5, 11, 13.5]) {
      let members = 0;
      for (const { seed, wild, frame } of skies) {
        const stars = wild.flatMap((object, i) =>
          object.kind === "openCluster" ? membersOf(seed.hash, i, object) : [],
        );
        members += stars.filter(({ dir, milliMag }) => {
          const absLatDeg = Math.asin(Math.abs(dot(dir, frame.galacticPole))) / DEG;
          return milliMag <= mag * 1000 && absLatDeg >= from && absLatDeg < to;
        }).length;
      }
      const areaSqDeg = 4 * Math.PI * SQ_DEG * (Math.sin(to * DEG) - Math.sin(from * DEG));
      let [wanted, parts] = [0, 0];
      for (let latDeg = from + 0.05; latDeg < to; latDeg += 0.1) {
        wanted += membersPerSqDeg(mag, latDeg) * Math.cos(latDeg * DEG);
        parts += Math.cos(latDeg * DEG);
      }
      const ratio = (members / skies.length / areaSqDeg) * (parts / wanted);
      expect(Math.abs(ratio - 1), `|b| from ${from}, V ${mag}: ${ratio}`).toBeLessThan(slack);
    }
});

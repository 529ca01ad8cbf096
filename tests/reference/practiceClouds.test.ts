/** What the dark nebulae and the clusters of practice skies do to their counts. */
import { describe, expect, test } from "vitest";
import { DEG, dot, offsetDir } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { starsWithin } from "#core/sky/catalogue/starsWithin.ts";
import { practiceGlow } from "#core/sky/glow/practiceGlow.ts";
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
      expect(clear(edge)).toBeCloseTo(clear(cloud.dir), 0);
    }
  });
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

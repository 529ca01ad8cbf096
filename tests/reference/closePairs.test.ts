import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { DEG, dirFromRadec, separationRad } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { decodeTileFile } from "#core/sky/catalogue/decodeTileFile.ts";
import { starsWithin } from "#core/sky/catalogue/starsWithin.ts";
import { asOneStar } from "#core/sky/closePairs/asOneStar.ts";
import brightStars from "#shared/bright-stars.json";
import doubles from "#shared/doubles.json";

const ARCMIN = DEG / 60;
const bytes = readFileSync(new URL("../../assets/sky/stars-0.bin", import.meta.url));
const { blocks } = decodeTileFile(bytes, "stars-0.bin");
const byEye = asOneStar(blocks);
const near = (raDeg: number, decDeg: number, of = byEye) =>
  starsWithin({ blocks: of }, dirFromRadec(raDeg * DEG, decDeg * DEG), 8 * ARCMIN, 6500);

/**
 * Pairs that no naked eye parts: V of both together and J2000 places from memory of the Bright Star Catalogue, 5th ed.
 * (Hoffleit & Jaschek 1991). The components' V is shared/bright-stars.json's.
 */
const PAIRS = [
  { name: "Mizar", components: ["Mizar A", "Mizar B"], raDeg: 200.98, decDeg: 54.93, magV: 2.06 },
  { name: "Castor", components: ["Castor A", "Castor B"], raDeg: 113.65, decDeg: 31.89, magV: 1.58 },
  { name: "Acrux", components: ["Acrux A", "Acrux B"], raDeg: 186.65, decDeg: -63.1, magV: 0.77 },
  { name: "Algieba", components: ["Algieba A", "Algieba B"], raDeg: 154.99, decDeg: 19.84, magV: 1.98 },
  {
    name: "Rigil Kentaurus",
    components: ["Rigil Kentaurus A", "Rigil Kentaurus B"],
    raDeg: 219.85,
    decDeg: -60.83,
    magV: -0.27,
  },
];

describe("the naked eye in the catalogue sky", () => {
  test.each(PAIRS)("$name is one star of V $magV", ({ components, raDeg, decDeg, magV }) => {
    const apart = near(raDeg, decDeg, blocks).slice(0, 2);
    const listed = brightStars.stars.filter(({ name }) => components.includes(name));
    expect(apart.map(({ milliMag }) => milliMag / 1000)).toEqual(listed.map((row) => row.magV));
    const [one, other] = near(raDeg, decDeg);
    expect(Math.abs(one!.milliMag / 1000 - magV)).toBeLessThanOrEqual(0.03);
    if (other) expect(separationRad(one!.dir, other.dir)).toBeGreaterThan(3 * ARCMIN);
    // Between the two, nearer to the brighter.
    expect(separationRad(one!.dir, apart[0]!.dir)).toBeLessThan(separationRad(one!.dir, apart[1]!.dir));
  });

  test("Alcor stays beside Mizar, 12' away (11.8', handbooks, from memory)", () => {
    const [mizar, alcor] = starsWithin({ blocks: byEye }, dirFromRadec(200.98 * DEG, 54.93 * DEG), 20 * ARCMIN, 4500);
    expect(alcor!.milliMag).toBeCloseTo(3990, -2);
    expect(separationRad(mizar!.dir, alcor!.dir) / ARCMIN).toBeCloseTo(11.8, 0);
  });

  test("epsilon Lyrae, the naked-eye test at 209 arcsec, stays two", () => {
    const { raDeg, decDeg, separationArcsec } = doubles.doubles.find(({ id }) => id === "epsilon-Lyr")!;
    const [one, two, ...more] = near(raDeg, decDeg);
    expect(more.filter(({ milliMag }) => milliMag < 5500)).toEqual([]);
    expect((separationRad(one!.dir, two!.dir) / DEG) * 3600).toBeCloseTo(separationArcsec, -1);
  });

  test("over the whole sky no two stars to V 6.5 are closer than 3', and no light is lost", () => {
    const all = (of: typeof blocks) => starsWithin({ blocks: of }, [0, 0, 1], Math.PI, 6500);
    const [before, after] = [all(blocks), all(byEye)];
    const closeIn = (dirs: readonly Dir[]) => {
      const byZ = dirs.toSorted((a, b) => a[2] - b[2]);
      let pairs = 0;
      byZ.forEach((dir, i) => {
        for (let j = i + 1; j < byZ.length && byZ[j]![2] - dir[2] < 3 * ARCMIN; j++)
          if (separationRad(dir, byZ[j]!) < 3 * ARCMIN) pairs += 1;
      });
      return pairs;
    };
    const light = (stars: typeof before) => stars.reduce((sum, { milliMag }) => sum + 10 ** (-0.0004 * milliMag), 0);
    const pairs = closeIn(before.map(({ dir }) => dir));
    expect(pairs).toBeGreaterThan(150);
    expect(before.length - after.length).toBeGreaterThan(0.85 * pairs);
    expect(before.length - after.length).toBeLessThanOrEqual(pairs + 3);
    expect(closeIn(after.map(({ dir }) => dir))).toBe(0);
    expect(Math.abs(light(after) / light(before) - 1)).toBeLessThan(1e-4);
    const touched = byEye.filter((block, i) => block !== blocks[i]).length;
    expect(touched).toBeLessThan(pairs + 20);
  });
});

import { describe, expect, test } from "vitest";
import { constellationOf } from "#core/celestial/constellation.ts";
import { altAzFromDir, horizonFromIcrs } from "#core/celestial/frames.ts";
import { pixelOf } from "#core/celestial/healpix.ts";
import { DEG, masFromDir, separationDas, separationRad } from "#core/celestial/vector.ts";
import { InputError } from "#core/seams/errors.ts";
import type { Dir, SkyObject } from "#core/seams/index.ts";
import { starsWithin } from "#core/sky/catalogue/starsWithin.ts";
import { catalogueNames } from "#core/sky/names/catalogueNames.ts";
import { constellations } from "#core/sky/names/constellations.ts";
import { generateTile } from "#core/sky/practice/generateTile.ts";
import { hashOfBlock, practiceGolden } from "#core/sky/practice/golden.ts";
import { PRACTICE_LAYERS, practiceLayerOf } from "#core/sky/practice/layers.ts";
import { practiceFacts, practiceNames, practiceObjects } from "#core/sky/practice/practiceSky.ts";
import { createPracticeSource } from "#core/sky/practice/practiceSource.ts";
import { crosses } from "./crossing.ts";

const SEEDS = ["sallow", "lantern", "heath", "briar", "fold", "beck", "2027-10-29", "ø"];
const SALLOWFELL = { latDeg: 50, lonDeg: 0, heightM: 250 };
const FIRST_LESSON_MS = Date.parse("2027-10-29T20:00Z");
const never = new AbortController().signal;

const altAz = (dir: Dir) => {
  const { altRad, azRad } = altAzFromDir(horizonFromIcrs(SALLOWFELL, FIRST_LESSON_MS), dir);
  return { altDeg: altRad / DEG, azDeg: azRad / DEG };
};
const apartDeg = (a: Dir, b: Dir) => separationRad(a, b) / DEG;

/** The star of the sky itself at a place: in the tile of its magnitude. */
function starAt(seed: string, dir: Dir, magV: number) {
  const { order, layer } = practiceLayerOf(Math.round(magV * 1000));
  const block = generateTile(seed, { order, layer, pixel: pixelOf(order, dir) });
  return starsWithin({ blocks: [block] }, dir, 1e-7, 11000);
}

describe("a practice sky", () => {
  test("is the same whatever tile is asked for first", () => {
    const keys = PRACTICE_LAYERS.flatMap(({ order, layer }) => [3, 400, 511].map((pixel) => ({ order, layer, pixel })));
    const hashes = (list: typeof keys) => list.map((key) => hashOfBlock(generateTile("fold", key)));
    const there = hashes(keys);
    for (const seed of SEEDS) generateTile(seed, keys[0]!);
    expect(hashes([...keys].reverse()).reverse()).toEqual(there);
    expect(new Set(there).size).toBe(keys.length);
  });

  test("has the hash of every engine", () => {
    expect(practiceGolden()).toBe(1832655998);
  });

  test("gives each tile its stars, brightest first and within its layer", () => {
    for (const { order, layer, brightestMilliMag, faintestMilliMag } of PRACTICE_LAYERS) {
      const { count, milliMag, dirs } = generateTile("beck", { order, layer, pixel: 200 });
      expect(count).toBeGreaterThan(0);
      for (let i = 0; i < count; i++) {
        expect(milliMag[i]).toBeGreaterThan(brightestMilliMag);
        expect(milliMag[i]).toBeLessThanOrEqual(faintestMilliMag);
        if (i > 0) expect(milliMag[i]).toBeGreaterThanOrEqual(milliMag[i - 1]!);
        expect(pixelOf(order, [dirs[3 * i]!, dirs[3 * i + 1]!, dirs[3 * i + 2]!])).toBe(200);
      }
    }
  });

  test("takes a word in any capitals, and no empty one", () => {
    expect(practiceFacts(" Sallow ")).toBe(practiceFacts("sallow"));
    expect(() => createPracticeSource("  ")).toThrow(InputError);
    expect(() => generateTile("x".repeat(65), { order: 3, layer: 0, pixel: 0 })).toThrow(InputError);
    expect(() => generateTile("fold", { order: 4, layer: 0, pixel: 0 })).toThrow(InputError);
  });

  test("comes in as wanted, stops when told to, and hands out the same answer again", async () => {
    const source = createPracticeSource("heath");
    const cone = { centre: [0, 1, 0] as const, radiusRad: 2.65 * DEG };
    const before = source.resident(cone, 9.8);
    expect(before.complete).toBe(false);
    expect(new Set(before.missing.map(({ layer }) => layer))).toEqual(new Set([0, 1, 2]));
    await expect(source.want(before.missing, 0, AbortSignal.abort())).rejects.toThrow();
    expect(source.resident(cone, 9.8)).toBe(before);
    await source.want(before.missing, 0, never);
    const after = source.resident(cone, 9.8);
    expect(after.missing).toEqual([]);
    expect(after.version).not.toBe(before.version);
    expect(source.resident(cone, 9.8)).toBe(after);
    expect(source.resident(cone, 6.5).blocks.every(({ key }) => key.layer === 0)).toBe(true);
  });
});

describe("a practice source with little room", () => {
  const centre = (i: number): Dir => [Math.cos(i), Math.sin(i), 0];
  const cone = (i: number) => ({ centre: centre(i), radiusRad: 0.3 * DEG });

  test("lets the tiles go that were not asked about for longest, and keeps what is in view", async () => {
    const source = createPracticeSource("heath", undefined, 200_000);
    const bring = async (i: number) => {
      await source.want(source.resident(cone(i), 13.5).missing, 0, never);
      return source.resident(cone(i), 13.5);
    };
    for (let i = 0; i < 6; i++) expect((await bring(i)).complete).toBe(true);
    expect(source.resident(cone(0), 13.5).complete).toBe(false);
    expect(source.resident(cone(5), 13.5).complete).toBe(true);
    // The naked-eye sky is never let go.
    expect(source.resident(cone(0), 6.5).complete).toBe(true);
  });
});

describe.each(SEEDS)("the sky of %s", (seed) => {
  const names = practiceNames(seed);
  const facts = practiceFacts(seed);

  test("has figures of its own stars all over the sky, whose lines do not cross", () => {
    expect(names.figures.length).toBeGreaterThan(60);
    const letters = names.stars.filter(({ con, flamsteed }) => con && flamsteed === undefined);
    for (const figure of names.figures) {
      const lines = names.segments.filter((line) => line.figure === figure.abbr);
      expect(lines.length).toBeGreaterThanOrEqual(2);
      for (const { from, to } of lines)
        for (const end of [from, to]) {
          const star = letters.find(({ dir }) => dir === end);
          expect(star?.con).toBe(figure.abbr);
          expect(starAt(seed, star!.dir, star!.magV).length).toBe(1);
        }
    }
    const pairs = names.segments.flatMap((a, i) => names.segments.slice(i + 1).map((b) => [a, b] as const));
    expect(pairs.filter(([a, b]) => crosses(a, b))).toEqual([]);
  });

  test("names every star once and with words of no other sky", () => {
    const taken = new Set([
      ...catalogueNames().stars.flatMap((star) => star.proper ?? []),
      ...[...constellations().values()].map(({ name }) => name),
    ]);
    const proper = names.stars.flatMap((star) => star.proper ?? []);
    expect(new Set(proper).size).toBe(proper.length);
    const words = [...proper, ...names.figures.map(({ name }) => name)];
    expect(words.filter((word) => taken.has(word))).toEqual([]);
    expect(names.figures.filter(({ abbr }) => constellations().has(abbr))).toEqual([]);
    const designations = names.stars.map(({ label, con }) => `${label} ${con}`);
    expect(new Set(designations).size).toBe(designations.length);
  });

  test("has an anchor that is up in the evenings of the course, brightest of its figure", () => {
    const { anchor } = facts;
    expect(altAz(anchor.dir).altDeg).toBeGreaterThan(45);
    expect(altAz(anchor.dir).altDeg).toBeLessThan(60);
    expect(anchor.magV).toBeGreaterThanOrEqual(1.8);
    expect(anchor.magV).toBeLessThanOrEqual(2.25);
    expect(starAt(seed, anchor.dir, anchor.magV)[0]!.milliMag).toBe(Math.round(anchor.magV * 1000));
    const own = names.segments.filter(({ figure }) => figure === anchor.con).flatMap(({ from, to }) => [from, to]);
    expect(own).toContain(anchor.dir);
    for (const star of names.stars.filter(({ dir }) => own.includes(dir)))
      expect(star.magV).toBeGreaterThanOrEqual(anchor.magV);
  });

  test("has a cluster of its own stars a degree and a half from the anchor, a pair half way", async () => {
    const { anchor, cluster, clusterWay } = facts;
    expect(apartDeg(anchor.dir, cluster.dir)).toBeCloseTo(1.5, 6);
    const source = createPracticeSource(seed);
    const cone = { centre: anchor.dir, radiusRad: 3 * DEG };
    await source.want(source.resident(cone, 10.5).missing, 0, never);
    const within = (dir: Dir, radiusDeg: number, limit: number) =>
      starsWithin(source.resident(cone, 10.5), dir, radiusDeg * DEG, limit);
    const inside = within(cluster.dir, 1 / 6, 10500);
    expect(inside.length).toBeGreaterThanOrEqual(12);
    // In binoculars it stands out: many times as crowded as the sky a degree about it.
    const shown = within(cluster.dir, 1 / 6, 9600).length;
    const about = within(cluster.dir, 1, 9600).length - shown;
    expect(shown).toBeGreaterThan(8 * (about / 35));
    expect(cluster.magV).toBeGreaterThan(4.4);
    expect(cluster.magV).toBeLessThan(5.4);

    const pair = within(clusterWay[0]!.dir, 0.11, 6500);
    expect(pair.length).toBe(2);
    expect(Math.abs(pair[0]!.milliMag - pair[1]!.milliMag)).toBeLessThan(50);
    expect(apartDeg(pair[0]!.dir, pair[1]!.dir) * 60).toBeCloseTo(12, 1);
    expect(apartDeg(anchor.dir, clusterWay[0]!.dir)).toBeGreaterThan(0.7);
    expect(apartDeg(anchor.dir, clusterWay[0]!.dir)).toBeLessThan(0.8);
  });

  test("has a galaxy four degrees off, with marks a step of a finder field apart", () => {
    const { anchor, galaxy, galaxyWay } = facts;
    const places = [anchor.dir, ...galaxyWay.map(({ dir }) => dir), galaxy.dir];
    expect(apartDeg(anchor.dir, galaxy.dir)).toBeCloseTo(4, 6);
    for (let i = 1; i < places.length; i++) expect(apartDeg(places[i - 1]!, places[i]!)).toBeLessThan(2.3);
    const mean = galaxy.magV + 2.5 * Math.log10(0.785 * galaxy.majorArcmin * galaxy.minorArcmin * 3600);
    expect(mean).toBeGreaterThan(20.5);
    expect(mean).toBeLessThan(23.1);
  });
});

describe("the first lesson's sky", () => {
  const { anchor, cluster, clusterWay } = practiceFacts("sallow");

  test("has the star Orlo half way up, the cluster to its left and level with it", () => {
    expect(anchor.proper).toBe("Orlo");
    const [star, group, pair] = [anchor, cluster, clusterWay[0]!].map(({ dir }) => altAz(dir));
    const left = (star!.azDeg - group!.azDeg) * Math.cos(star!.altDeg * DEG);
    expect(left).toBeGreaterThan(1.4);
    expect(Math.abs(group!.altDeg - star!.altDeg)).toBeLessThan(0.5);
    expect(pair!.azDeg).toBeLessThan(star!.azDeg);
    expect(pair!.azDeg).toBeGreaterThan(group!.azDeg);
  });

  test("keeps its places", () => {
    const place = ({ dir }: { dir: Dir }) => masFromDir(dir);
    expect(separationDas(place(anchor), place(cluster))).toBe(54000);
    expect(place(anchor)).toEqual({ raMas: 1236069883, decMas: 28068702 });
    expect(
      practiceObjects("sallow")
        .slice(0, 2)
        .map(({ id }: SkyObject) => id),
    ).toEqual(["sallow-1", "sallow-2"]);
    expect(constellationOf(anchor.dir).abbr).not.toBe(anchor.con);
  });
});

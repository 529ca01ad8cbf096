import { readFile } from "node:fs/promises";
import { beforeAll, describe, expect, test } from "vitest";
import { pixelCentre } from "#core/celestial/healpix.ts";
import { DEG, dirFromRadec, offsetDir } from "#core/celestial/vector.ts";
import { chartMarks } from "#core/chart/marks.ts";
import { emptyField } from "#core/field/seenField.ts";
import { visibleStars } from "#core/field/visibleStars.ts";
import type { Cone, StarBlock, StarSource } from "#core/seams/index.ts";
import { createCatalogueSource } from "#core/sky/catalogue/catalogueSource.ts";
import { darkClouds } from "#core/sky/darkClouds.ts";
import { fillerTile, missingIn } from "#core/sky/filler/fillerTile.ts";
import { withFiller } from "#core/sky/filler/withFiller.ts";
import { catalogueObjects } from "#core/sky/objects.ts";

const LIMIT = 13.8;
const cygnus: Cone = { centre: dirFromRadec(300 * DEG, 35 * DEG), radiusRad: 0.6 * DEG };
let source: StarSource;

beforeAll(async () => {
  const fetchFile = async (name: string) => new Uint8Array(await readFile(`assets/sky/${name}`)).buffer;
  source = createCatalogueSource({ fetchFile });
  await source.want(source.resident(cygnus, LIMIT).missing, 0, new AbortController().signal);
});

/** Looks until nothing is left to be filled. */
function filledBlocks(filled: (how: { isOn: () => boolean; again: () => void }) => StarSource, isOn = () => true) {
  let more = true;
  const shown = filled({ isOn, again: () => (more = true) });
  let looks = 0;
  while (more) {
    more = false;
    looks += 1;
    shown.resident(cygnus, LIMIT);
  }
  return { looks, shown, resident: shown.resident(cygnus, LIMIT) };
}
const filled = () => filledBlocks((how) => withFiller(source, how));
const invented = (blocks: readonly StarBlock[]) => blocks.filter((block) => block.invented);

describe("what is missing", () => {
  const pixel = 300;
  const block = (milliMag: number[]): StarBlock => ({
    key: { order: 4, pixel, layer: 2 },
    count: milliMag.length,
    dirs: new Float32Array(3 * milliMag.length),
    milliMag: Int16Array.from(milliMag),
    colourBV: new Float32Array(milliMag.length),
    invented: false,
  });

  test("what is there is not filled in again, half magnitude by half magnitude", () => {
    const told = Array.from({ length: 200 }, () => 10_500);
    const [bare, some] = [told, [...told, ...Array.from({ length: 30 }, () => 11_200)]].map((mags) =>
      missingIn(pixel, [block(mags)]),
    );
    expect(some![0]).toBeCloseTo(Math.max(0, bare![0]! - 30), 9);
    expect(some!.slice(1)).toEqual(bare!.slice(1));
  });

  test("more than the counts ask for leaves nothing to fill, and is no debt of the next step", () => {
    const crowd = Array.from({ length: 5000 }, () => 11_200);
    const missing = missingIn(pixel, [block(crowd)]);
    expect(missing[0]).toBe(0);
    expect(missing[1]).toBeGreaterThan(0);
  });

  test("a fuller tile gets more", () => {
    const few = missingIn(pixel, [block(Array.from({ length: 50 }, () => 10_500))]);
    const many = missingIn(pixel, [block(Array.from({ length: 500 }, () => 10_500))]);
    many.forEach((count, i) => {
      expect(count).toBeGreaterThan(few[i]!);
    });
  });
});

describe("the filling", () => {
  test("is the same each time, brightest first, within its pixel, fainter than V 11", () => {
    const missing = [100, 200, 400, 800, 1600, 3200, 6400];
    const [one, other] = [fillerTile(12_345, missing), fillerTile(12_345, missing)];
    expect(other).toEqual(one);
    expect(one.count).toBeGreaterThan(600);
    expect(one.invented).toBe(true);
    const centre = pixelCentre(6, 12_345);
    for (let i = 0; i < one.count; i++) {
      expect(one.milliMag[i]!).toBeGreaterThanOrEqual(i > 0 ? one.milliMag[i - 1]! : 11_000);
      expect(one.milliMag[i]!).toBeLessThanOrEqual(14_500);
      const dot = [0, 1, 2].reduce((sum, axis) => sum + one.dirs[3 * i + axis]! * centre[axis as 0]!, 0);
      expect(dot).toBeGreaterThan(Math.cos(1.2 * DEG));
    }
    expect(fillerTile(12_346, missing).dirs).not.toEqual(one.dirs);
  });
});

describe("dark nebulae", () => {
  const clouds = catalogueObjects().filter(({ kind }) => kind === "darkNebula");
  const seeThrough = darkClouds(catalogueObjects());
  const B142 = clouds.find(({ id }) => id === "B142")!;
  const at = (angleDeg: number, arcmin: number) => offsetDir(B142.dir, angleDeg * DEG, (arcmin / 60) * DEG);

  test("hide four stars of five in their thick, none beyond their listed size, which lies as listed", () => {
    expect(clouds.length).toBeGreaterThan(3);
    for (const { dir } of clouds) expect(seeThrough(dir)).toBeCloseTo(0.2, 12);
    // 40' by 15' along east and west.
    expect([at(90, 13), at(270, 13), at(0, 5)].map(seeThrough)).toEqual([0.2, 0.2, 0.2]);
    expect([at(90, 20.1), at(0, 7.6), at(180, 20)].map(seeThrough)).toEqual([1, 1, 1]);
    expect(seeThrough(at(90, 17))).toBeGreaterThan(0.4);
    expect(seeThrough([-B142.dir[0], -B142.dir[1], -B142.dir[2]])).toBe(1);
  });

  test("are missing grain: thin within, as full as ever beside, and no star of the catalogue is taken", async () => {
    const cone: Cone = { centre: B142.dir, radiusRad: 0.7 * DEG };
    await source.want(source.resident(cone, LIMIT).missing, 0, new AbortController().signal);
    const bare = source.resident(cone, LIMIT);
    const look = (objects: typeof clouds) => {
      const shown = withFiller(source, { isOn: () => true, again: () => undefined, objects });
      for (let i = 0; i < 40; i++) shown.resident(cone, LIMIT);
      return shown.resident(cone, LIMIT).blocks;
    };
    const [plain, thinned] = [look([]), look(clouds)];
    expect(thinned.filter((block) => !block.invented)).toEqual(bare.blocks);
    const count = (blocks: readonly StarBlock[], isThere: (share: number) => boolean) =>
      invented(blocks).reduce((sum, { count, dirs }) => {
        let found = 0;
        for (let i = 0; i < count; i++) if (isThere(seeThrough(dirs.subarray(3 * i, 3 * i + 3)))) found += 1;
        return sum + found;
      }, 0);
    const isThick = (share: number) => share < 0.25;
    expect(count(plain, isThick)).toBeGreaterThan(30);
    const left = count(thinned, isThick) / count(plain, isThick);
    expect(left).toBeGreaterThan(0.05);
    expect(left).toBeLessThan(0.4);
    const beside = count(thinned, (share) => share === 1) / count(plain, (share) => share === 1);
    expect(Math.abs(beside - 1)).toBeLessThan(0.05);
  });
});

describe("a look through a source that fills", () => {
  test("a few parts a look, then it rests; the answer is the same object as long as nothing changes", () => {
    const { looks, shown, resident } = filled();
    expect(looks).toBeGreaterThan(1);
    expect(shown.resident(cygnus, LIMIT)).toBe(resident);
    expect(invented(resident.blocks).length).toBeGreaterThan(0);
  });

  test("two sources fill alike, whatever was looked at before", () => {
    const before = filledBlocks((how) => {
      const one = withFiller(source, how);
      for (let i = 0; i < 3; i++) one.resident({ ...cygnus, radiusRad: 0.3 * DEG }, LIMIT);
      return one;
    });
    const stars = ({ resident }: { resident: { blocks: readonly StarBlock[] } }) =>
      invented(resident.blocks).map(({ key, milliMag }) => [key.pixel, [...milliMag]]);
    expect(stars(before)).toEqual(stars(filled()));
  });

  test("nothing for an instrument that the catalogue serves, and nothing when switched off", () => {
    const { shown } = filled();
    expect(shown.resident(cygnus, 10.9)).toBe(source.resident(cygnus, 10.9));
    const off = filledBlocks(
      (how) => withFiller(source, how),
      () => false,
    );
    expect(off.resident).toBe(source.resident(cygnus, LIMIT));
  });

  test("the catalogue and its filling together come to the counts: in the plane 500 to 1500 a square degree to V 14", () => {
    const { resident } = filled();
    const part = invented(resident.blocks)[0]!;
    const count = [...part.milliMag].filter((mag) => mag <= 14_000).length;
    expect(count / 0.84).toBeGreaterThan(350);
    expect(count / 0.84).toBeLessThan(1500);
  });

  test("never a mark on a chart, never a star that is told or matched", () => {
    const { resident, shown } = filled();
    const page = {
      centre: cygnus.centre,
      widthPx: 424,
      heightPx: 520,
      marginPx: 18,
      pxPerDeg: 400,
      limitMag: LIMIT,
    };
    const nothing = { names: [], segments: [], figures: [], objects: [], anchor: null, target: null, ways: [] };
    const dots = (blocks: readonly StarBlock[]) =>
      chartMarks(page, { ...nothing, blocks, words: { anchor: "", target: "" } }).filter(({ kind }) => kind === "dot");
    expect(dots(resident.blocks)).toEqual(dots(source.resident(cygnus, LIMIT).blocks));
    const seen = { ...emptyField(), gear: "eye", blocks: resident.blocks, limitMilliMag: 13_800 };
    const bare = { ...seen, blocks: source.resident(cygnus, LIMIT).blocks };
    const upright = [1, 0, 0, 0, 1, 0, ...cygnus.centre];
    expect(visibleStars(seen, upright).count).toBe(visibleStars(bare, upright).count);
    expect(shown.ref).toBe(source.ref);
  });
});

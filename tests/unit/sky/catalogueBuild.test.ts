import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { DEG, dirFromRadec, separationRad } from "#core/celestial/vector.ts";
import { InputError } from "#core/seams/errors.ts";
import type { Dir } from "#core/seams/index.ts";
import { dirAtEpoch } from "#core/sky/build/place.ts";
import { parseMainLine, parseSupplementLine } from "#core/sky/build/rawStar.ts";
import { startSkyBuild } from "#core/sky/build/skyBuild.ts";
import { starsWithin } from "#core/sky/catalogue/starsWithin.ts";
import { decodeTileFile } from "#core/sky/catalogue/tileFile.ts";
import { skyBuild } from "../../../src/cli/verbs/skyBuild.ts";
import { findingsOfSky } from "../../../src/tools/checkSky.mjs";

const FOLDER = fileURLToPath(new URL("../../reference/data/tycho2-excerpt/", import.meta.url));
const linesOf = (name: string) =>
  readFileSync(join(FOLDER, name), "latin1")
    .split("\n")
    .filter((line) => line !== "");
const main = linesOf("tyc2.dat.00");
const supplement = linesOf("suppl_1.dat");
const ARCSEC_RAD = DEG / 3600;

function builtExcerpt() {
  const build = startSkyBuild(supplement, linesOf("suppl_2.dat").length);
  for (const line of main) build.addMainLine(line);
  return build.finish();
}

const sky = builtExcerpt();
const blocks = sky.files.flatMap((file) => decodeTileFile(file.bytes, file.name).blocks);
const starsAt = (raDeg: number, decDeg: number, radiusArcsec: number) =>
  starsWithin({ blocks }, dirFromRadec(raDeg * DEG, decDeg * DEG), radiusArcsec * ARCSEC_RAD, 20000);

test("the excerpt's 2000 lines are accounted for, each reason by its count (counted by a separate program as well)", () => {
  expect(main.length + supplement.length + linesOf("suppl_2.dat").length).toBe(2000);
  expect(sky.stars).toBe(1816);
  expect(sky.dropped).toEqual([
    { why: "fainter than V 12.5", count: 145 },
    { why: "table of bright stars: within 1 arcsec; its light is in the value of A", count: 6 },
    { why: "supplement 2: probably false or heavily disturbed", count: 20 },
    { why: "supplement 1: within 1.5 arcsec of a main entry", count: 12 },
    { why: "table of bright stars: no such star: a false solution at 0.3 arcsec", count: 1 },
  ]);
  expect(new Map(sky.mended.map(({ why, count }) => [why, count]))).toEqual(
    new Map([
      ["BT alone: taken for V as it stands, colour unknown", 16],
      ["VT alone: taken for V as it stands, colour unknown", 63],
      ["Hp alone: taken for V as it stands, colour unknown", 55],
      ["pair with one mean place: each at its own observed place", 91],
      ["no proper motion known: left where it was observed about 1991", 298],
      ["V and B-V from the table of bright stars", 105],
      ["proper motion from the table of bright stars", 15],
    ]),
  );
});

test("the layers hold what their limits say, and every file of every layer is there", () => {
  const inLayer = [0, 0, 0];
  for (const { key, count } of blocks) inLayer[key.layer] = inLayer[key.layer]! + count;
  expect(inLayer).toEqual([140, 191, 1485]);
  expect(sky.files).toHaveLength(61);
});

test("the build gives the same bytes each time, and whatever the order of the lines", () => {
  const hash = createHash("sha256");
  for (const file of sky.files) hash.update(file.bytes);
  expect(hash.digest("hex")).toBe("8a9109ed84536835fa6accaaff98c5f35e2ac3ddf746ef581149b2b007fb1e8e");
  const build = startSkyBuild([...supplement].reverse(), 20);
  for (const line of [...main].reverse()) build.addMainLine(line);
  expect(build.finish().files).toEqual(sky.files);
});

test("a normal main entry: mean place of J2000.0, both bands", () => {
  const star = parseMainLine(
    "0001 00013 1| |  1.12558209|  2.26739400|   27.7|   -0.5|  9| 12| 1.2| 1.2|1990.76|1989.25| 8|1.0|0.8|1.0|0.7|10.488|0.038| 8.670|0.015|999|T|         |  1.12551889|  2.26739556|1.81|1.52|  9.3| 12.7| |-0.2",
  );
  expect(star).toMatchObject({ tyc: "1-13-1", region: 1, hip: 0, component: "", band: "both", placeKind: "mean" });
  expect(star.place).toEqual({
    raDeg: 1.12558209,
    decDeg: 2.267394,
    raYear: 2000,
    decYear: 2000,
    pmRaMasPerYear: 27.7,
    pmDecMasPerYear: -0.5,
  });
  expect(star.magV).toBeCloseTo(8.67 - 0.09 * 1.818, 10);
  expect(star.colourBV).toBeCloseTo(0.85 * 1.818, 10);
});

test("a pair with one mean place has two observed ones, and moves as one", () => {
  const pairs = main.map(parseMainLine).filter((star) => star.placeKind === "observedPair");
  const [a, b] = pairs.filter((star) => star.tyc.startsWith("8240-2724-"));
  expect([a!.hip, a!.component, b!.hip, b!.component]).toEqual([61932, "A", 61932, "B"]);
  const separation = separationRad(dirAtEpoch(a!.place, 2025), dirAtEpoch(b!.place, 2025)) / ARCSEC_RAD;
  expect(separation).toBeGreaterThan(0.8);
  expect(separation).toBeLessThan(1.6);
  expect(a!.place.raYear).toBeGreaterThan(1990.5);
  expect(a!.place.pmRaMasPerYear).toBe(b!.place.pmRaMasPerYear);
});

test("an entry without a mean place stands where it was observed, with its Hipparcos number read apart from the letters", () => {
  const almach = main.map(parseMainLine).find((star) => star.hip === 9640)!;
  expect(almach).toMatchObject({ component: "A", placeKind: "observed", band: "both" });
  expect(almach.place.pmRaMasPerYear).toBeNaN();
  expect(dirAtEpoch(almach.place, 2025)).toEqual(dirFromRadec(almach.place.raDeg * DEG, almach.place.decDeg * DEG));
});

test("supplement entries: Hp for Hipparcos stars, no motion for Tycho-1 stars, epoch J1991.25", () => {
  const stars = supplement.map(parseSupplementLine);
  expect(stars.find((star) => star.hip === 32349)).toMatchObject({ band: "Hp", magV: -1.088, source: "hipparcos" });
  expect(stars.every((star) => star.place.raYear === 1991.25)).toBe(true);
  const tycho1 = stars.filter((star) => star.source === "tycho1");
  expect(tycho1.length).toBeGreaterThan(100);
  expect(tycho1.every((star) => Number.isNaN(star.place.pmDecMasPerYear))).toBe(true);
});

test("a line that is none of the catalogue's is refused", () => {
  const good = main[0]!;
  for (const line of ["", "x", good.slice(0, 100), good.replace("|", "?").replace(/\d/g, "x"), `<html>${good}`]) {
    expect(() => parseMainLine(line)).toThrow(InputError);
    expect(() => parseSupplementLine(line)).toThrow(InputError);
  }
});

test("motion: Rigil Kentaurus has gone 2 arcminutes since 1991, along its great circle", () => {
  const star = supplement.map(parseSupplementLine).find(({ hip }) => hip === 71683)!;
  const gone = separationRad(dirAtEpoch(star.place, 1991.25), dirAtEpoch(star.place, 2025)) / ARCSEC_RAD;
  expect(gone).toBeCloseTo(Math.hypot(3.6782, 0.4818) * 33.75, 2);
});

test("the false companion of Arcturus is gone, and Castor still has two stars", () => {
  expect(starsAt(213.9116, 19.1678, 20).filter((star) => star.milliMag < 6000)).toHaveLength(1);
  expect(starsAt(213.9116, 19.1678, 20)[0]).toMatchObject({ milliMag: -50 });
  expect(starsAt(113.6475, 31.8872, 20).map((star) => star.milliMag)).toEqual([1930, 2970]);
});

test("sky build writes the files and their list, which the checker holds against the bytes", async () => {
  const out = await mkdtemp(join(tmpdir(), "sky-"));
  try {
    const result = await skyBuild(FOLDER, out);
    expect(result).toMatchObject({ files: 61, stars: 1816, dropped: sky.dropped });
    expect(result.bytes).toBe(sky.files.reduce((sum, file) => sum + file.bytes.length, 0));
    expect(await findingsOfSky(out)).toEqual([]);
    await writeFile(join(out, "stars-1-03.bin"), "damaged");
    await writeFile(join(out, "stars-9.bin"), "stray");
    await rm(join(out, "stars-0.bin"));
    expect(await findingsOfSky(out)).toEqual([
      "stars-0.bin: missing",
      "stars-1-03.bin: differs from SHA256SUMS",
      "stars-9.bin: not on SHA256SUMS",
    ]);
  } finally {
    await rm(out, { recursive: true });
  }
});

test("a folder without the catalogue is refused, and nothing is written", async () => {
  const empty = await mkdtemp(join(tmpdir(), "sky-"));
  try {
    await expect(skyBuild(empty, join(empty, "out"))).rejects.toThrow("suppl_1.dat is missing");
    await expect(skyBuild(join(empty, "nowhere"), join(empty, "out"))).rejects.toThrow(InputError);
    await expect(findingsOfSky(empty)).rejects.toThrow("ENOENT");
  } finally {
    await rm(empty, { recursive: true });
  }
});

test("stars keep their place through build and tile within 0.6 arcsec", () => {
  for (const line of main.slice(0, 400)) {
    const star = parseMainLine(line);
    if (star.magV > 12.4 || star.magV < 6) continue;
    const dir: Dir = dirAtEpoch(star.place, 2025);
    const near = starsWithin({ blocks }, dir, 0.6 * ARCSEC_RAD, 20000);
    expect(near.some((found) => Math.abs(found.milliMag / 1000 - star.magV) < 0.0051)).toBe(true);
  }
});

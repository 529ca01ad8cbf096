import { readdir, readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { decodeTileFile } from "#core/sky/catalogue/tileFile.ts";
import { findingsOfSky } from "../../src/tools/checkSky.mjs";

const FOLDER = fileURLToPath(new URL("../../assets/sky/", import.meta.url));

test("the tiles are the bytes of the committed list, at most 20 MB", async () => {
  expect(await findingsOfSky(FOLDER)).toEqual([]);
  const names = (await readdir(FOLDER)).filter((name) => name.endsWith(".bin"));
  const bytes = await Promise.all(names.map(async (name) => (await readFile(FOLDER + name)).length));
  expect(bytes.reduce((sum, length) => sum + length, 0)).toBeLessThanOrEqual(20e6);
});

/**
 * Main catalogue and supplement 1 counted by a separate program: 8 798 stars to V 6.5, 217 824 to 9.5, 945 931 to 11,
 * 2 447 084 to 12.5 (after the same removals). Stored magnitudes are rounded to 0.01, so that each count grows by those
 * within half a step beyond its limit: 0.6 % at most, as counts grow fourfold a magnitude at the bright end.
 */
test("the sky holds as many stars as were counted in the raw catalogue", async () => {
  const limits = [6500, 9500, 11000, 12500];
  const counts = limits.map(() => 0);
  for (const name of (await readdir(FOLDER)).filter((each) => each.endsWith(".bin"))) {
    for (const { milliMag, count } of decodeTileFile(await readFile(FOLDER + name), name).blocks) {
      for (let i = 0; i < count; i++) {
        for (let k = 0; k < 4; k++) if (milliMag[i]! <= limits[k]!) counts[k] = counts[k]! + 1;
      }
    }
  }
  const raw = [8798, 217_824, 945_931, 2_447_084];
  counts.forEach((count, k) => {
    expect(count).toBeGreaterThanOrEqual(raw[k]!);
    expect(count).toBeLessThan(raw[k]! * 1.006);
  });
});

import fc from "fast-check";
import { expect, test } from "vitest";
import { pixelOf } from "#core/celestial/healpix.ts";
import { starIdParts } from "#core/celestial/starId.ts";
import { dirFromRadec, offsetDir, separationRad } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { createStarStore } from "#core/sky/build/starStore.ts";
import { splitTile } from "#core/sky/build/tiles.ts";
import { encodeTileFile } from "#core/sky/catalogue/encodeTileFile.ts";
import { fileIndex, fileName, homeOf, LAYERS, layerOf } from "#core/sky/catalogue/layers.ts";
import { starsWithin } from "#core/sky/catalogue/starsWithin.ts";
import { decodeTileFile } from "#core/sky/catalogue/tileFile.ts";
import { tilesAhead, tilesOfCone } from "#core/sky/catalogue/tilesOfCone.ts";
import { aDir } from "../celestial/arbitrary.ts";

test("every place of a cone lies in one of its tiles, in each layer that the limit reaches", () => {
  const inCone = fc.record({
    centre: aDir,
    radiusRad: fc.double({ min: 0.001, max: 1, noNaN: true }),
    angle: fc.double({ min: 0, max: 6.28, noNaN: true }),
    part: fc.double({ min: 0, max: 1, noNaN: true }),
  });
  fc.assert(
    fc.property(inCone, ({ centre, radiusRad, angle, part }) => {
      const keys = tilesOfCone({ centre, radiusRad }, 12);
      const inside = offsetDir(centre, angle, part * radiusRad);
      for (const { layer, order } of LAYERS) {
        expect(keys).toContainEqual({ order, pixel: pixelOf(order, inside), layer });
      }
    }),
    { numRuns: 200 },
  );
});

test("a bright limit asks for the bright layers alone", () => {
  const layersFor = (limitMag: number) =>
    new Set(tilesOfCone({ centre: [1, 0, 0], radiusRad: 0.1 }, limitMag).map((key) => key.layer));
  expect(layersFor(-3)).toEqual(new Set([0]));
  expect(layersFor(6.5)).toEqual(new Set([0]));
  expect(layersFor(6.51)).toEqual(new Set([0, 1]));
  expect(layersFor(9.5)).toEqual(new Set([0, 1]));
  expect(layersFor(13.8)).toEqual(new Set([0, 1, 2]));
});

test("the tiles ahead lie ahead, are not those of the field, and are none at rest", () => {
  fc.assert(
    fc.property(aDir, fc.double({ min: 0, max: 6.28, noNaN: true }), (centre, angle) => {
      const radiusRad = 0.05;
      const towards = offsetDir(centre, angle, 0.3);
      const now = tilesOfCone({ centre, radiusRad }, 9);
      const ahead = tilesAhead(centre, towards, radiusRad, 9);
      for (const key of ahead) expect(now).not.toContainEqual(key);
      const later = pixelOf(3, offsetDir(centre, angle, 2 * radiusRad));
      expect([...now, ...ahead]).toContainEqual({ order: 3, pixel: later, layer: 1 });
    }),
    { numRuns: 100 },
  );
  expect(tilesAhead([1, 0, 0], [1, 0, 0], 0.05, 9)).toEqual([]);
});

test("magnitudes find their layer, tiles their file", () => {
  expect([-146, 650, 651, 950, 951, 1250].map((centiMag) => layerOf(centiMag)?.layer)).toEqual([0, 0, 1, 1, 2, 2]);
  expect(layerOf(1251)).toBeUndefined();
  expect(fileName(LAYERS[0], fileIndex(LAYERS[0], 767))).toBe("stars-0.bin");
  expect(fileName(LAYERS[1], fileIndex(LAYERS[1], 767))).toBe("stars-1-11.bin");
  expect(fileName(LAYERS[2], fileIndex(LAYERS[2], 64))).toBe("stars-2-01.bin");
  expect(homeOf({ order: 6, pixel: 16 * 5 + 3, layer: 2 })).toEqual({ layer: LAYERS[2], pixel: 5 });
  for (const key of [
    { order: 2, pixel: 0, layer: 1 },
    { order: 3, pixel: 768, layer: 1 },
    { order: 3, pixel: 0, layer: 3 },
    { order: 3, pixel: -1, layer: 0 },
  ]) {
    expect(() => homeOf(key)).toThrow("The catalogue has no tile");
  }
});

/** A crowded tile about (1, 0, 0) and its stars as files hold them. */
function crowd(count: number, most: number) {
  const store = createStarStore();
  const dirs: Dir[] = [];
  for (let i = 0; i < count; i++) {
    const dir = offsetDir(dirFromRadec(0.02, 0.02), i * 2.4, 0.015 * Math.sqrt(i / count));
    dirs.push(dir);
    store.add(dir, 651 + (i % 300), 0.5);
  }
  const pixel = pixelOf(3, dirs[0]!);
  const members = dirs.flatMap((dir, i) => (pixelOf(3, dir) === pixel ? [i] : []));
  const tiles = splitTile(store.columns(), 3, pixel, members, most);
  return { members, tiles, blocks: decodeTileFile(encodeTileFile(LAYERS[1], 2025, tiles), "crowd.bin").blocks };
}

test("a crowded tile splits into children, which keep all its stars", () => {
  const { members, tiles, blocks } = crowd(3000, 200);
  expect(tiles.length).toBeGreaterThan(4);
  for (const tile of tiles) expect(tile.centiMag.length).toBeLessThanOrEqual(200);
  expect(blocks.reduce((sum, block) => sum + block.count, 0)).toBe(members.length);
  for (const { key } of blocks) expect(homeOf(key).pixel).toBe(homeOf(blocks[0]!.key).pixel);
});

test("starsWithin gives what going through all stars gives, brightest first, each with its own number", () => {
  const { blocks } = crowd(3000, 200);
  const [x, y, z] = blocks[1]!.dirs;
  const centre: Dir = [x!, y!, z!];
  for (const [radiusRad, limit] of [
    [0.004, 8000],
    [0.01, 9500],
    [0.001, 9500],
    [Math.PI, 7000],
  ] as const) {
    let expected = 0;
    for (const block of blocks) {
      for (let i = 0; i < block.count; i++) {
        const dir: Dir = [block.dirs[3 * i]!, block.dirs[3 * i + 1]!, block.dirs[3 * i + 2]!];
        if (block.milliMag[i]! <= limit && separationRad(dir, centre) <= radiusRad) expected += 1;
      }
    }
    const found = starsWithin({ blocks }, centre, radiusRad, limit);
    expect(found).toHaveLength(expected);
    expect(new Set(found.map((star) => star.id)).size).toBe(expected);
    for (let i = 1; i < found.length; i++) {
      const [a, b] = [found[i - 1]!, found[i]!];
      expect(a.milliMag < b.milliMag || (a.milliMag === b.milliMag && a.id < b.id)).toBe(true);
    }
    const { key, rank } = starIdParts(found[0]!.id);
    expect(blocks.find((block) => block.key.pixel === key.pixel)!.milliMag[rank]).toBe(found[0]!.milliMag);
  }
});

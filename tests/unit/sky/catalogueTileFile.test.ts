import fc from "fast-check";
import { expect, test } from "vitest";
import { exactAsin } from "#core/celestial/exactMath.ts";
import { crc32, fnv1a32 } from "#core/celestial/hash.ts";
import { pixelCorners, pixelOf } from "#core/celestial/healpix.ts";
import { dirFromRadec, separationRad } from "#core/celestial/vector.ts";
import { DataFileError } from "#core/seams/errors.ts";
import type { Dir } from "#core/seams/index.ts";
import { LAYERS } from "#core/sky/catalogue/layers.ts";
import { tileAxes } from "#core/sky/catalogue/tileAxes.ts";
import { decodeTileFile, encodeTileFile, type RawTile } from "#core/sky/catalogue/tileFile.ts";
import { aDir } from "../celestial/arbitrary.ts";

const ARCSEC_RAD = Math.PI / 180 / 3600;
const LAYER = LAYERS[1];
type Star = { dir: Dir; centiMag: number; colourBV: number };

const anyStar = fc.record({
  dir: aDir,
  centiMag: fc.integer({ min: LAYER.brightestCentiMag + 1, max: LAYER.faintestCentiMag }),
  colourBV: fc.double({ min: -0.4, max: 2, noNaN: true }),
});

function tilesOf(stars: readonly Star[], order = LAYER.order): RawTile[] {
  const pixels = [...new Set(stars.map((star) => pixelOf(order, star.dir)))];
  return pixels.map((pixel) => {
    const inside = stars.filter((star) => pixelOf(order, star.dir) === pixel);
    return {
      order,
      pixel,
      dirs: Float64Array.from(inside.flatMap((star) => [...star.dir])),
      centiMag: Int16Array.from(inside, (star) => star.centiMag),
      colourBV: Float32Array.from(inside, (star) => star.colourBV),
    };
  });
}

const spread = (count: number): Star[] =>
  Array.from({ length: count }, (_, i) => ({
    dir: dirFromRadec((i * 2.399963) % 6.28, exactAsin(((i * 0.618034) % 1) * 2 - 1)),
    centiMag: 651 + ((i * 37) % 300),
    colourBV: ((i * 0.31) % 2.4) - 0.4,
  }));

function withFreshSum(bytes: Uint8Array): Uint8Array {
  const body = bytes.length - 4;
  new DataView(bytes.buffer).setUint32(body, crc32(bytes.subarray(0, body)), true);
  return bytes;
}

test("stars come back in place within 0.6 arcsec, to 0.01 mag and 0.04 in B-V, brightest first in each tile", () => {
  fc.assert(
    fc.property(fc.array(anyStar, { maxLength: 60 }), fc.integer({ min: 3, max: 6 }), (stars, order) => {
      const file = decodeTileFile(encodeTileFile(LAYER, 2025, tilesOf(stars, order)), "a.bin");
      expect(file).toMatchObject({ order: 3, layer: 1, epochYear: 2025, count: stars.length });
      const left = [...stars];
      for (const block of file.blocks) {
        for (let i = 0; i < block.count; i++) {
          const dir: Dir = [block.dirs[3 * i]!, block.dirs[3 * i + 1]!, block.dirs[3 * i + 2]!];
          const at = left.findIndex(
            (star) =>
              star.centiMag * 10 === block.milliMag[i] &&
              Math.abs(star.colourBV - block.colourBV[i]!) < 0.041 &&
              separationRad(star.dir, dir) < 0.6 * ARCSEC_RAD,
          );
          expect(at).toBeGreaterThanOrEqual(0);
          left.splice(at, 1);
          if (i > 0) expect(block.milliMag[i]).toBeGreaterThanOrEqual(block.milliMag[i - 1]!);
        }
      }
    }),
    { numRuns: 60 },
  );
});

test("the square of a tile holds its corners and edges, at every order in use", () => {
  for (const order of [3, 4, 5]) {
    for (let pixel = 0; pixel < 12 * 4 ** order; pixel++) {
      const { centre, east, north, halfWidth } = tileAxes(order, pixel);
      // Corners of the descendants three orders down lie along the edges.
      const along = [0, 21, 42, 63].flatMap((child) => pixelCorners(order + 3, pixel * 64 + child));
      for (const [x, y, z] of [...pixelCorners(order, pixel), ...along]) {
        const depth = x * centre[0] + y * centre[1] + z * centre[2];
        const u = (x * east[0] + y * east[1] + z * east[2]) / depth;
        const v = (x * north[0] + y * north[1] + z * north[2]) / depth;
        expect(Math.max(Math.abs(u), Math.abs(v))).toBeLessThan(halfWidth);
      }
    }
  }
});

test("the same stars give the same bytes in whatever order they come", () => {
  const stars = spread(500);
  const file = encodeTileFile(LAYER, 2025, tilesOf(stars));
  expect(encodeTileFile(LAYER, 2025, tilesOf([...stars].reverse()).reverse())).toEqual(file);
});

test("decoded places are the same bits as ever, in every engine", () => {
  const { blocks } = decodeTileFile(encodeTileFile(LAYER, 2025, tilesOf(spread(500))), "a.bin");
  const hash = blocks.reduce(
    (sum, { dirs }) => fnv1a32(new Uint8Array(dirs.buffer, dirs.byteOffset, dirs.byteLength), sum),
    1,
  );
  expect(hash.toString(16)).toBe("2e65543e");
});

test("a colour beyond the range keeps to its end, an unknown one is drawn neutral", () => {
  const stars = [-1, 5, Number.NaN].map((colourBV, i) => ({ ...spread(1)[0]!, centiMag: 700 + i, colourBV }));
  const [block] = decodeTileFile(encodeTileFile(LAYER, 2025, tilesOf(stars)), "a.bin").blocks;
  expect([...block!.colourBV].map((bv) => bv.toFixed(2))).toEqual(["-0.40", "2.00", "0.60"]);
});

test("stars that do not belong where they are put are the caller's mistake", () => {
  const [tile] = tilesOf(spread(1));
  expect(() => encodeTileFile(LAYERS[0], 2025, [tile!])).toThrow("does not belong to layer 0");
  expect(() => encodeTileFile(LAYERS[2], 2025, [tile!])).toThrow("does not belong to layer 2");
  expect(() => encodeTileFile(LAYER, 2025, [{ ...tile!, pixel: (tile!.pixel + 300) % 768 }])).toThrow(
    "outside the tile",
  );
});

test("any cut and any changed byte is noticed", () => {
  const good = encodeTileFile(LAYER, 2025, tilesOf(spread(20)));
  for (let length = 0; length < good.length; length++) {
    expect(() => decodeTileFile(good.slice(0, length), "cut.bin")).toThrow(DataFileError);
  }
  for (let at = 0; at < good.length; at++) {
    const bad = good.slice();
    bad[at] = bad[at]! ^ 0x10;
    expect(() => decodeTileFile(bad, "changed.bin")).toThrow(/^changed\.bin is not a usable star tile file: /);
  }
});

test("a file that lies about itself with a right checksum is refused, or at least gives no star that it does not hold", () => {
  const good = encodeTileFile(LAYER, 2025, tilesOf(spread(20)));
  fc.assert(
    fc.property(fc.nat(good.length - 5), fc.integer({ min: 1, max: 255 }), (at, change) => {
      const bad = good.slice();
      bad[at] = bad[at]! ^ change;
      try {
        const file = decodeTileFile(withFreshSum(bad), "liar.bin");
        expect(file.count).toBe(20);
        for (const { dirs } of file.blocks) for (const x of dirs) expect(Math.abs(x)).toBeLessThanOrEqual(1.000001);
      } catch (error) {
        expect(error).toBeInstanceOf(DataFileError);
      }
    }),
  );
});

test("counts beyond the length, unsorted stars and tiles out of order are named as such", () => {
  const good = encodeTileFile(LAYER, 2025, tilesOf(spread(20)));
  const changed = (at: number, bytes: number[]) => {
    const bad = good.slice();
    bad.set(bytes, at);
    return () => decodeTileFile(withFreshSum(bad), "liar.bin");
  };
  const tiles = new DataView(good.buffer).getUint16(16, true);
  const columns = 28 + tiles * 16;
  expect(changed(0, [0])).toThrow("does not begin like one");
  expect(changed(4, [1, 2])).toThrow("byte order");
  expect(changed(6, [9])).toThrow("version 9");
  expect(changed(20, [255, 255, 255, 255])).toThrow("bytes long");
  expect(changed(32, [255, 255])).toThrow("counts more stars than it has");
  expect(changed(28, [255, 255, 255, 255])).toThrow("tile that cannot be");
  expect(changed(28 + 16, [0, 0, 0, 0])).toThrow("tiles are not in order");
  expect(changed(columns + 4 * 20, [255, 255])).toThrow("not in the order of its index");
  expect(changed(columns - 12, new Array(12).fill(0))).toThrow("its header says 20");
});

test("arbitrary bytes are refused with a DataFileError and nothing else", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
      expect(() => decodeTileFile(bytes, "noise.bin")).toThrow(DataFileError);
    }),
  );
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { StarBlock } from "#core/seams/index.ts";
import { createIndexList, listPoints, listQuads, type QuadField } from "../../../src/stage/starCull.ts";
import { countBrighter, createPackedStars, packStars, STAR_BYTES } from "../../../src/stage/starPack.ts";

const block = (
  stars: readonly (readonly [x: number, y: number, z: number, milliMag: number, bv: number])[],
): StarBlock => {
  const sorted = [...stars].sort((a, b) => a[3] - b[3]);
  const dirs = new Float32Array(sorted.length * 3);
  sorted.forEach((star, i) => {
    dirs.set(star.slice(0, 3), i * 3);
  });
  return {
    key: { order: 0, pixel: 0, layer: 0 },
    count: sorted.length,
    dirs,
    milliMag: Int16Array.from(sorted, (star) => star[3]),
    colourBV: Float32Array.from(sorted, (star) => star[4]),
    invented: false,
  };
};
const FORWARD_X = [0, -1, 0, 0, 0, 1, 1, 0, 0];
const at = (degrees: number, milliMag: number) =>
  [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180), 0, milliMag, 0.5] as const;

describe("packing", () => {
  it("counts the stars at or brighter than a magnitude", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -1500, max: 13000 })),
        fc.integer({ min: -2000, max: 13500 }),
        (mags, limit) => {
          const one = block(mags.map((mag) => at(0, mag)));
          expect(countBrighter(one, limit / 1000)).toBe(mags.filter((mag) => mag <= limit).length);
        },
      ),
    );
  });

  it("writes direction, magnitude and colour of each star of each block, and four corners for the bright", () => {
    const packed = createPackedStars();
    const blocks = [block([at(1, 2000), at(2, 9000)]), block([at(3, 5500), at(4, 12_000)])];
    expect(packStars(packed, blocks, 1, 9.5, 2.8)).toBe(true);
    expect(packed.all.count).toBe(3);
    expect(packed.bright.count).toBe(2);
    const { floats, halfwords } = packed.all;
    const words = STAR_BYTES / 4;
    expect([...floats.subarray(2 * words, 2 * words + 3)]).toEqual([...blocks[1]!.dirs.subarray(0, 3)]);
    expect([halfwords[6], halfwords[7], halfwords[14], halfwords[22]]).toEqual([2000, 500, 9000, 5500]);
    const corners = [0, 1, 2, 3, 4].map((row) => packed.bright.halfwords[row * 8 + 6]);
    expect(corners).toEqual([2000, 2000, 2000, 2000, 5500]);
  });

  it("packs again only when the blocks changed or the limit left what is packed", () => {
    const packed = createPackedStars();
    const blocks = [block([at(1, 2000), at(2, 9000), at(2, 9700)])];
    expect(packStars(packed, blocks, 1, 9.5, 2.8)).toBe(true);
    expect(packStars(packed, blocks, 1, 9.5, 2.8)).toBe(false);
    expect(packStars(packed, blocks, 1, 9.4, 2.8)).toBe(false);
    expect(packStars(packed, blocks, 1, 9.8, 2.8)).toBe(true);
    expect(packed.all.count).toBe(3);
    expect(packStars(packed, blocks, 1, 8.5, 2.8)).toBe(true);
    expect(packed.all.count).toBe(1);
    expect(packStars(packed, blocks, 2, 8.5, 2.8)).toBe(true);
  });

  it("makes room for any number of stars", () => {
    const packed = createPackedStars();
    packStars(packed, [block(Array.from({ length: 9000 }, (_, i) => at(i / 100, 1000 + (i % 500))))], 1, 9, 2.8);
    expect([packed.all.count, packed.bright.count]).toEqual([9000, 9000]);
    expect(packed.all.floats.length).toBeGreaterThanOrEqual(9000 * 4);
    expect(packed.bright.floats.length).toBeGreaterThanOrEqual(9000 * 16);
  });
});

describe("what is in view", () => {
  const packed = createPackedStars();
  packStars(packed, [block([at(0, 4000), at(1, 8000), at(2.5, 9000), at(4, 6000), at(179, 5000)])], 1, 10, 2.8);

  it("lists points by circle and magnitude", () => {
    const list = createIndexList(1);
    const within = (degrees: number, from: number, to: number) => {
      listPoints(list, packed.all, FORWARD_X, Math.cos((degrees * Math.PI) / 180), from, to);
      return [...list.indices.subarray(0, list.count)].map((i) => packed.all.halfwords[i * 8 + 6]);
    };
    expect(within(3, 5000, 12_000)).toEqual([8000, 9000]);
    expect(within(5, 4000, 8999)).toEqual([6000, 8000]);
    expect(within(3, 0, 4000)).toEqual([4000]);
    expect(within(0.5, 4000, 9000)).toEqual([]);
  });

  it("parts quads into those wholly inside and those that the stop cuts", () => {
    const [whole, cut] = [createIndexList(6), createIndexList(6)];
    const field: QuadField = {
      stereographic: false,
      pxPerPlane: 372 / Math.tan((2.65 * Math.PI) / 180),
      wholePx: 365,
      edgePx: 372,
      glarePx: 7,
      glarePxPerMag: 7.5,
    };
    const mags = (list: typeof whole) =>
      Array.from({ length: list.count }, (_, i) => packed.bright.halfwords[list.indices[i * 6]! * 8 + 6]);
    listQuads(whole, cut, packed.bright, FORWARD_X, field, 7000);
    expect([mags(whole), mags(cut)]).toEqual([[4000], []]);
    expect([...whole.indices.subarray(0, 6)].map((i) => i - whole.indices[0]!)).toEqual([0, 1, 2, 2, 1, 3]);
    // 4 degrees are 562 px from the centre: the glare of the star there (14.5 px) is cut by a stop of 560.
    listQuads(whole, cut, packed.bright, FORWARD_X, { ...field, edgePx: 560 }, 7000);
    expect([mags(whole), mags(cut)]).toEqual([[4000], [6000]]);
    // Behind the observer there is nothing, however wide the field.
    listQuads(whole, cut, packed.bright, FORWARD_X, { ...field, wholePx: 1e9, edgePx: 1e9 }, 7000);
    expect([mags(whole), mags(cut)]).toEqual([[4000, 6000], []]);
  });
});

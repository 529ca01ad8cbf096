import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { StarBlock } from "#core/seams/index.ts";
import {
  countTo,
  createStarRows,
  gatherPoints,
  gatherQuads,
  type QuadField,
  STAR_BYTES,
  STEADY_MILLI,
} from "../../../src/stage/starGather.ts";

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

describe("gathering", () => {
  it("counts the stars at or brighter than a magnitude", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -1500, max: 13000 })),
        fc.integer({ min: -2000, max: 13500 }),
        (mags, limit) => {
          const one = block(mags.map((mag) => at(0, mag)));
          expect(countTo(one, limit)).toBe(mags.filter((mag) => mag <= limit).length);
        },
      ),
    );
  });

  it("writes direction, magnitude and colour of each star of each block", () => {
    const rows = createStarRows(1);
    const blocks = [block([at(1, 2000), at(2, 9000)]), block([at(3, 5500), at(4, 12_000)])];
    gatherPoints(rows, blocks, FORWARD_X, 0, -32_000, 9500);
    expect(rows.count).toBe(3);
    const { floats, halfwords } = rows;
    const words = STAR_BYTES / 4;
    expect([...floats.subarray(2 * words, 2 * words + 3)]).toEqual([...blocks[1]!.dirs.subarray(0, 3)]);
    expect([halfwords[6], halfwords[7], halfwords[14], halfwords[22]]).toEqual([2000, 500, 9000, 5500]);
  });

  it("takes from each star under an open sky what the air does at its height, against what the limit has in it", () => {
    // The zenith stands at +y: stars at 0, 30 and 90 degrees of height lose 1, 0.5 and 0 mag, the limit's own place 0.5.
    const air = {
      zenith: Float64Array.of(0, 1, 0),
      lossMilliMag: Array.from({ length: 257 }, (_, i) => 1000 - (1000 * i) / 256),
      inLimitMilliMag: 500,
    };
    const rows = createStarRows(1);
    gatherPoints(rows, [block([at(0, 3000), at(30, 4000), at(90, 6400)])], FORWARD_X, -1, 2000, 6000, air);
    expect(Array.from({ length: rows.count }, (_, i) => rows.halfwords[i * (STAR_BYTES / 2) + 6])).toEqual([
      3500, 4000, 5900,
    ]);
    gatherPoints(rows, [block([at(0, 5600), at(90, 6600)])], FORWARD_X, -1, 2000, 6000, air);
    expect(rows.count, "gone in the low air, or fainter than any air lets through").toBe(0);
  });

  it("writes what moves among the stars so that it does not twinkle", () => {
    const rows = createStarRows(1);
    const one = block([at(1, 2000)]);
    gatherPoints(rows, [one, { ...one, moves: true }], FORWARD_X, 0, -32_000, 9500);
    expect([rows.halfwords[7], rows.halfwords[15]]).toEqual([500, 500 + STEADY_MILLI]);
  });

  it("makes room for any number of stars, and keeps those it has", () => {
    const rows = createStarRows(1, 16);
    const many = [block(Array.from({ length: 9000 }, (_, i) => at(i / 100, 1000 + i)))];
    gatherPoints(rows, many, FORWARD_X, -1, 0, 32_000);
    expect(rows.count).toBe(9000);
    expect(Array.from({ length: 9000 }, (_, i) => rows.halfwords[i * 8 + 6])).toEqual([...many[0]!.milliMag]);
  });
});

describe("what is in view", () => {
  const blocks = [block([at(0, 4000), at(1, 8000), at(2.5, 9000), at(4, 6000), at(179, 5000)])];

  it("takes points by circle and magnitude", () => {
    const rows = createStarRows(1);
    const within = (degrees: number, from: number, to: number) => {
      gatherPoints(rows, blocks, FORWARD_X, Math.cos((degrees * Math.PI) / 180), from, to);
      return Array.from({ length: rows.count }, (_, i) => rows.halfwords[i * 8 + 6]);
    };
    expect(within(3, 5000, 12_000)).toEqual([8000, 9000]);
    expect(within(5, 4000, 8999)).toEqual([6000, 8000]);
    expect(within(3, 0, 4000)).toEqual([4000]);
    expect(within(0.5, 4000, 9000)).toEqual([]);
  });

  it("parts quads into those wholly inside and those that the stop cuts, four corners each", () => {
    const [whole, cut] = [createStarRows(4), createStarRows(4)];
    const field: QuadField = {
      stereographic: false,
      pxPerPlane: 372 / Math.tan((2.65 * Math.PI) / 180),
      wholePx: 365,
      edgePx: 372,
      glarePx: 7,
      glarePxPerMag: 7.5,
    };
    const mags = (rows: typeof whole) => Array.from({ length: rows.count * 4 }, (_, i) => rows.halfwords[i * 8 + 6]);
    const four = (mag: number) => [mag, mag, mag, mag];
    gatherQuads(whole, cut, blocks, FORWARD_X, field, 7000);
    expect([mags(whole), mags(cut)]).toEqual([four(4000), []]);
    // 4 degrees are 562 px from the centre: the glare of the star there (14.5 px) is cut by a stop of 560.
    gatherQuads(whole, cut, blocks, FORWARD_X, { ...field, edgePx: 560 }, 7000);
    expect([mags(whole), mags(cut)]).toEqual([four(4000), four(6000)]);
    // Behind the observer there is nothing, however wide the field.
    gatherQuads(whole, cut, blocks, FORWARD_X, { ...field, wholePx: 1e9, edgePx: 1e9 }, 7000);
    expect([mags(whole), mags(cut)]).toEqual([[...four(4000), ...four(6000)], []]);
  });
});

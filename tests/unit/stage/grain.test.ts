import { describe, expect, test } from "vitest";
import type { StarBlock } from "#core/seams/index.ts";
import { createStarRows, gatherPoints, gatherQuads, type QuadField } from "../../../src/stage/starGather.ts";

const EDGE = 13_000;
const FORWARD = [1, 0, 0, 0, 1, 0, 0, 0, 1];
const block = (milliMag: number[], invented: boolean): StarBlock => ({
  key: { order: 6, pixel: 1, layer: 9 },
  count: milliMag.length,
  dirs: Float32Array.from(milliMag.flatMap(() => [0, 0, 1])),
  milliMag: Int16Array.from(milliMag),
  colourBV: new Float32Array(milliMag.length),
  invented,
});
const field: QuadField = {
  stereographic: false,
  pxPerPlane: 100,
  wholePx: 90,
  edgePx: 100,
  glarePx: 4,
  glarePxPerMag: 2,
};

describe("grain", () => {
  test("an invented star is shown, but never brighter than a quarter magnitude over the limit; a real one is as bright as it is", () => {
    const rows = createStarRows(1);
    const shownAs = (invented: boolean) => {
      gatherPoints(rows, [block([9000, 11_000, 12_900], invented)], FORWARD, 0.5, 10_000, EDGE);
      return Array.from({ length: rows.count }, (_, i) => rows.halfwords[i * 8 + 6]!);
    };
    expect(shownAs(false)).toEqual([11_000, 12_900]);
    expect(shownAs(true)).toEqual([12_350, 12_350, 12_900]);
  });

  test("it never glares", () => {
    const [whole, cut] = [createStarRows(4), createStarRows(4)];
    gatherQuads(whole, cut, [block([9000], true)], FORWARD, field, 10_000);
    expect(whole.count + cut.count).toBe(0);
    gatherQuads(whole, cut, [block([9000], false)], FORWARD, field, 10_000);
    expect(whole.count + cut.count).toBe(1);
  });
});

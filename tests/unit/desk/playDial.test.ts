import { describe, expect, it } from "vitest";
import { DIAL, dialOf } from "../../../src/desk/play/dial.ts";

describe("the dial of the limit", () => {
  const { ticks, limitDeg } = dialOf(9.6, 9.6);
  it("runs over four magnitudes, a tick each fifth, a figure each whole one", () => {
    expect(ticks).toHaveLength(21);
    expect(ticks.filter(({ whole }) => whole).map(({ magV }) => magV)).toEqual([7, 8, 9, 10, 11]);
    expect(ticks[0]!.atDeg).toBe(252);
    expect(ticks.at(-1)!.atDeg).toBe(300);
  });
  it("points at the limit, and ticks up to it are full", () => {
    expect(limitDeg).toBeCloseTo(252 + 12 * 2.6, 9);
    expect(ticks.filter(({ within }) => within)).toHaveLength(14);
  });
  it("holds every limit that instruments have", () => {
    for (let limit = 2; limit <= 14.5; limit += 0.1) {
      const at = dialOf(limit, limit).limitDeg;
      expect(at).toBeGreaterThanOrEqual(252);
      expect(at).toBeLessThanOrEqual(300);
    }
  });

  it("stays as it is while the eye grows used to the dark, and slides by whole magnitudes where the limit falls off it", () => {
    const firstOf = (limitMag: number) => dialOf(limitMag, 9.6).ticks[0]!.magV;
    expect([9.6, 8.4, 7].map(firstOf)).toEqual([7, 7, 7]);
    expect([6.9, 5.1].map(firstOf)).toEqual([6, 5]);
    for (let limit = 4; limit <= 9.6; limit += 0.1) {
      const { limitDeg, ticks: now } = dialOf(limit, 9.6);
      expect(limitDeg).toBeGreaterThanOrEqual(DIAL.fromDeg);
      expect(limitDeg).toBeLessThan(DIAL.toDeg);
      expect(now.some(({ within }) => within)).toBe(true);
    }
  });
});

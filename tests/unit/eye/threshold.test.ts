import { describe, expect, it } from "vitest";
import { discContrast, FIELD_FACTOR, largeContrast, pointLux, riccoSr } from "#core/eye/threshold.ts";

describe("the least light of a point", () => {
  it("never falls as the background grows, between 1e-5 and 3,400 cd/m2, where the measures are", () => {
    for (let log = -6; log < 4; log += 0.02)
      expect(pointLux(10 ** (log + 0.02)), `1e${log}`).toBeGreaterThanOrEqual(pointLux(10 ** log));
    expect(pointLux(1e-7)).toBe(pointLux(1e-5));
    expect(pointLux(1.02e-5)).toBeGreaterThan(pointLux(1e-5));
    expect(pointLux(1e5)).toBe(pointLux(3400));
    expect(pointLux(3300)).toBeLessThan(pointLux(3400));
  });

  it("stands still over the dip that the fit has from 0.02157 to 0.065 cd/m2", () => {
    for (const candela of [0.0217, 0.03, 0.05, 0.0649]) expect(pointLux(candela)).toBe(pointLux(0.02157));
    for (const candela of [0.0215, 0.066, 0.1]) expect(pointLux(candela)).toBe(candela * riccoSr(candela));
  });

  it("is asked for more than once by observers: 2.4 times by a novice, twice by most, 1.4 times by the keen (Crumey 2014, sect. 1.6)", () => {
    expect(FIELD_FACTOR).toEqual({ novice: 2.4, typical: 2, keen: 1.4 });
  });
});

// Crumey 2014, eq. 41 with the sharpness of eq. 42 to 44, by background in cd/m2.
describe("the least contrast of a disc", () => {
  it.each([
    [1e-4, 0.6],
    [0.19, 0.6],
    [0.2, 0.8861 + 0.4 * Math.log10(0.2)],
    [1, 0.8861],
    [3.3, 0.8861 + 0.4 * Math.log10(3.3)],
    [3.6, 1.146 - 0.0885 * Math.log10(3.6)],
    [100, 0.969],
  ])("passes from points to large things before %f with a sharpness of %f", (candela, q) => {
    for (const areaSr of [1e-6, 1e-5, 1e-4]) {
      const least = ((riccoSr(candela) / areaSr) ** q + largeContrast(candela) ** q) ** (1 / q);
      expect(discContrast(areaSr, candela, 2) / (2 * least)).toBeCloseTo(1, 9);
    }
  });

  it("adds as much light before a background under 1e-5 as before that one", () => {
    expect(discContrast(1e-5, 1e-6, 1) * 1e-6).toBeCloseTo(discContrast(1e-5, 1e-5, 1) * 1e-5, 15);
  });
});

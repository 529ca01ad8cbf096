import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { horizonFromIcrs, zenithDir } from "#core/celestial/frames.ts";
import { DEG, dot, normalise } from "#core/celestial/vector.ts";
import { conditionsAt, skyHere } from "#core/eye/conditions.ts";
import { atHeight, contrastTable, lossTable, lowGlowDex } from "#core/eye/lowAir.ts";

const SITE = { latDeg: 50, lonDeg: 0, heightM: 250 };
const UTC_MS = Date.UTC(2027, 7, 31, 21);

describe("what the air takes low down", () => {
  const now = conditionsAt(21, SITE, UTC_MS);
  const table = lossTable(now.extinction);
  const sineOf = (deg: number) => Math.sin(deg * DEG);

  it("is what a limit in that direction loses, for any height from three degrees on", () => {
    const zenith = now.zenith ?? zenithDir(horizonFromIcrs(SITE, UTC_MS));
    const across = normalise([zenith[1], -zenith[0], 0]);
    fc.assert(
      fc.property(fc.double({ min: 3, max: 90, noNaN: true }), (deg) => {
        const [s, c] = [sineOf(deg), Math.cos(deg * DEG)];
        const dir = normalise([
          zenith[0] * s + across[0] * c,
          zenith[1] * s + across[1] * c,
          zenith[2] * s + across[2] * c,
        ]);
        const own = atHeight(table, dot(zenith, dir)) / 1000;
        expect(Math.abs(own - skyHere(now, dir).lossMag)).toBeLessThan(0.02);
      }),
    );
  });

  it("is nothing at the zenith, grows downwards, and is as at the horizon below it", () => {
    expect(atHeight(table, 1)).toBe(0);
    for (let deg = 89; deg >= 0; deg--)
      expect(atHeight(table, sineOf(deg - 1))).toBeGreaterThanOrEqual(atHeight(table, sineOf(deg)));
    expect(atHeight(table, -0.5)).toBe(table[0]);
  });

  it("is about 0.2 mag at 30 degrees, 1 at 10, 2 at 5 (handbook values of extinction by height, from memory)", () => {
    // Green 1992 (International Comet Quarterly 14, 55), sea level and average air: .28, 1.3, 2.5 mag; a hill has less.
    expect(atHeight(table, sineOf(30)) / 1000).toBeCloseTo(0.22, 1);
    expect(atHeight(table, sineOf(10)) / 1000).toBeGreaterThan(0.85);
    expect(atHeight(table, sineOf(10)) / 1000).toBeLessThan(1.3);
    expect(atHeight(table, sineOf(5)) / 1000).toBeGreaterThan(1.7);
    expect(atHeight(table, sineOf(5)) / 1000).toBeLessThan(2.5);
  });
});

describe("what is left of the Milky Way low down", () => {
  const extinction = 0.22;
  const contrast = contrastTable(extinction);
  const at = (deg: number) => atHeight(contrast, Math.sin(deg * DEG));

  it("is all at the zenith, and the less the lower", () => {
    expect(at(90)).toBeCloseTo(1, 6);
    for (let deg = 89; deg >= 1; deg--) expect(at(deg)).toBeLessThanOrEqual(at(deg + 1));
  });

  it("is the loss of a star there over the growth of the night, worked out apart", () => {
    for (const deg of [60, 30, 15, 8]) {
      // Krisciunas & Schaefer 1991, eq. 2 and 3, at the apparent height; Bennett's refraction is less than 0.12 degree here.
      const zenithRad = (90 - deg - 0.016 / Math.tan(deg * DEG)) * DEG;
      const x = 1 / Math.sqrt(1 - 0.96 * Math.sin(zenithRad) ** 2);
      const night = x * 10 ** (-0.4 * extinction * (x - 1));
      const star = 10 ** (-0.0004 * atHeight(lossTable(extinction), Math.sin(deg * DEG)));
      expect(at(deg) / (star / night)).toBeCloseTo(1, 1);
      expect(Math.abs(at(deg) / (star / night) - 1)).toBeLessThan(0.02);
    }
  });

  it("makes a veil of half a magnitude one of a tenth, ten degrees up", () => {
    expect(2.5 * lowGlowDex(0.2, 1)).toBeCloseTo(0.5, 9);
    expect(2.5 * lowGlowDex(0.2, at(10))).toBeGreaterThan(0.08);
    expect(2.5 * lowGlowDex(0.2, at(10))).toBeLessThan(0.18);
    expect(lowGlowDex(0, 0.5)).toBe(0);
  });
});

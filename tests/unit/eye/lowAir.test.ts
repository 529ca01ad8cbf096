import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { horizonFromIcrs, zenithDir } from "#core/celestial/frames.ts";
import { DEG, dot, normalise } from "#core/celestial/vector.ts";
import { conditionsAt, skyHere } from "#core/eye/conditions.ts";
import { lossMilliMagAt, lossTable } from "#core/eye/lowAir.ts";

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
        const own = lossMilliMagAt(table, dot(zenith, dir)) / 1000;
        expect(Math.abs(own - skyHere(now, dir).lossMag)).toBeLessThan(0.02);
      }),
    );
  });

  it("is nothing at the zenith, grows downwards, and is as at the horizon below it", () => {
    expect(lossMilliMagAt(table, 1)).toBe(0);
    for (let deg = 89; deg >= 0; deg--)
      expect(lossMilliMagAt(table, sineOf(deg - 1))).toBeGreaterThanOrEqual(lossMilliMagAt(table, sineOf(deg)));
    expect(lossMilliMagAt(table, -0.5)).toBe(table[0]);
  });

  it("is about 0.2 mag at 30 degrees, 1 at 10, 2 at 5 (handbook values of extinction by height, from memory)", () => {
    // Green 1992 (International Comet Quarterly 14, 55), sea level and average air: .28, 1.3, 2.5 mag; a hill has less.
    expect(lossMilliMagAt(table, sineOf(30)) / 1000).toBeCloseTo(0.22, 1);
    expect(lossMilliMagAt(table, sineOf(10)) / 1000).toBeGreaterThan(0.85);
    expect(lossMilliMagAt(table, sineOf(10)) / 1000).toBeLessThan(1.3);
    expect(lossMilliMagAt(table, sineOf(5)) / 1000).toBeGreaterThan(1.7);
    expect(lossMilliMagAt(table, sineOf(5)) / 1000).toBeLessThan(2.5);
  });
});

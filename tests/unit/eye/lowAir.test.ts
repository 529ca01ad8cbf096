import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { kastenYoung } from "#core/celestial/airmass.ts";
import { DEG, dot, normalise } from "#core/celestial/vector.ts";
import { type Conditions, conditionsAt, skyHere, zenithConditions } from "#core/eye/conditions.ts";
import { costsOf } from "#core/eye/costs.ts";
import { starLimits } from "#core/eye/instrument.ts";
import { atHeight, contrastTable, lossTable, lowGlowDex } from "#core/eye/lowAir.ts";
import { nightUnder } from "#core/eye/nightSky.ts";
import { gearById } from "#core/optics/gear.ts";
import type { Dir } from "#core/seams/index.ts";

const SITE = { latDeg: 50, lonDeg: 0, heightM: 250 };
const UTC_MS = Date.UTC(2027, 7, 31, 21);
const sineOf = (deg: number) => Math.sin(deg * DEG);
const night = (mu: number): Conditions & { readonly zenith: Dir } => {
  const now = conditionsAt(mu, SITE, UTC_MS);
  return { ...now, zenith: now.zenith!, moon: null };
};
/** Heights over the horizon and places round it, as directions under a zenith. */
const dirAt = (zenith: Dir, altDeg: number, azDeg: number): Dir => {
  const across = normalise([zenith[1], -zenith[0], 0]);
  const third: Dir = [
    zenith[1] * across[2] - zenith[2] * across[1],
    zenith[2] * across[0] - zenith[0] * across[2],
    zenith[0] * across[1] - zenith[1] * across[0],
  ];
  const [s, c] = [sineOf(altDeg), Math.cos(altDeg * DEG)];
  const [a, b] = [c * Math.cos(azDeg * DEG), c * Math.sin(azDeg * DEG)];
  const part = (i: 0 | 1 | 2) => zenith[i] * s + across[i] * a + third[i] * b;
  return normalise([part(0), part(1), part(2)]);
};
const anyHeight = fc.double({ min: 3, max: 90, noNaN: true });
const anyAzimuth = fc.double({ min: 0, max: 360, noNaN: true });
const eye = gearById("eye");

describe("how far a star falls behind the naked eye's limit low down", () => {
  it.each([18.5, 20, 21.8])("is what the limit says of any place of a night of %f", (mu) => {
    const now = night(mu);
    const table = lossTable(now);
    const limitAt = (dir: Dir) => starLimits(eye, now, skyHere(now, dir)).avertedMag;
    fc.assert(
      fc.property(anyHeight, anyAzimuth, (altDeg, azDeg) => {
        const dir = dirAt(now.zenith, altDeg, azDeg);
        const own = atHeight(table, dot(now.zenith, dir)) / 1000;
        expect(Math.abs(own - (limitAt(now.zenith) - limitAt(dir)))).toBeLessThan(0.02);
      }),
    );
  });

  it("is nothing at the zenith, grows downwards, and is as at the horizon below it", () => {
    const table = lossTable(night(21));
    expect(atHeight(table, 1)).toBe(0);
    for (let deg = 89; deg >= 0; deg--)
      expect(atHeight(table, sineOf(deg - 1))).toBeGreaterThanOrEqual(atHeight(table, sineOf(deg)));
    expect(atHeight(table, -0.5)).toBe(table[0]);
  });

  it("is more than the air takes of the star, by what the brighter night there costs", () => {
    for (const mu of [18.5, 21.8]) {
      const now = night(mu);
      for (const altDeg of [60, 30, 10]) {
        const beyond = atHeight(lossTable(now), sineOf(altDeg)) / 1000 - now.extinction * (kastenYoung(altDeg) - 1);
        expect(beyond, `${altDeg} degrees`).toBeGreaterThan(0.03);
        expect(beyond, `${altDeg} degrees`).toBeLessThan(0.6);
      }
    }
  });

  it("is the same for a night, which knows it at a direction too", () => {
    const now = night(20.8);
    const sky = nightUnder(now, SITE.heightM, []);
    for (const altDeg of [80, 40, 15]) {
      const dir = dirAt(now.zenith, altDeg, 77);
      expect(sky.lossMilliMagAt(dir)).toBe(Math.round(atHeight(sky.lossMilliMag, sineOf(altDeg))));
    }
    expect(nightUnder(zenithConditions(21), 0, []).lossMilliMagAt([0, 1, 0])).toBe(0);
  });
});

describe("what the air takes of a star", () => {
  it("is about 0.2 mag at 30 degrees, 1 at 10, 2 at 5 (handbook values of extinction by height, from memory)", () => {
    // Green 1992 (International Comet Quarterly 14, 55), sea level and average air: .28, 1.3, 2.5 mag; a hill has less.
    const now = night(21);
    const lossAt = (altDeg: number) => skyHere(now, dirAt(now.zenith, altDeg, 0)).lossMag;
    expect(lossAt(90)).toBeCloseTo(0, 6);
    expect(lossAt(30)).toBeCloseTo(0.22, 1);
    expect(lossAt(10)).toBeGreaterThan(0.85);
    expect(lossAt(10)).toBeLessThan(1.3);
    expect(lossAt(5)).toBeGreaterThan(1.7);
    expect(lossAt(5)).toBeLessThan(2.5);
  });
});

describe("what is left of the Milky Way low down", () => {
  const extinction = 0.22;
  const contrast = contrastTable({ ...zenithConditions(21), extinction });
  const at = (deg: number) => atHeight(contrast, sineOf(deg));

  it("is all at the zenith, and the less the lower", () => {
    expect(at(90)).toBeCloseTo(1, 6);
    for (let deg = 89; deg >= 1; deg--) expect(at(deg)).toBeLessThanOrEqual(at(deg + 1));
  });

  it("is the loss of a star there over the growth of the night, worked out apart", () => {
    for (const deg of [60, 30, 15, 8]) {
      // Krisciunas & Schaefer 1991, eq. 2 and 3, at the apparent height; Bennett's refraction is less than 0.12 degree here.
      const apparentDeg = deg + 0.016 / Math.tan(deg * DEG);
      const x = 1 / Math.sqrt(1 - 0.96 * Math.cos(apparentDeg * DEG) ** 2);
      const growth = x * 10 ** (-0.4 * extinction * (x - 1));
      const star = 10 ** (-0.4 * extinction * (kastenYoung(apparentDeg) - 1));
      expect(Math.abs(at(deg) / (star / growth) - 1)).toBeLessThan(0.02);
    }
  });

  it("makes a veil of half a magnitude one of a tenth, ten degrees up", () => {
    expect(2.5 * lowGlowDex(0.2, 1)).toBeCloseTo(0.5, 9);
    expect(2.5 * lowGlowDex(0.2, at(10))).toBeGreaterThan(0.08);
    expect(2.5 * lowGlowDex(0.2, at(10))).toBeLessThan(0.18);
    expect(lowGlowDex(0, 0.5)).toBe(0);
  });

  it.each([19, 21.8])("is the same in the picture as in the sky by which limits are reckoned, under %f", (mu) => {
    const [dark, glowMu] = [night(mu), 21];
    const now = { ...dark, glowMuAt: () => glowMu };
    const table = contrastTable(dark);
    const zenithDex = Math.log10(1 + 10 ** (0.4 * (skyHere(dark, dark.zenith).skyMu - glowMu)));
    fc.assert(
      fc.property(anyHeight, anyAzimuth, (altDeg, azDeg) => {
        const dir = dirAt(now.zenith, altDeg, azDeg);
        const said = skyHere(dark, dir).skyMu - skyHere(now, dir).skyMu;
        expect(Math.abs(2.5 * lowGlowDex(zenithDex, atHeight(table, sineOf(altDeg))) - said)).toBeLessThan(0.01);
      }),
    );
  });
});

describe("the Milky Way as a part of the sky's light", () => {
  const now = { ...night(21.7), glowMuAt: () => 20.5 };
  const lightOf = (mu: number) => 10 ** (-0.4 * mu);
  const glowMuAt = (altDeg: number) => {
    const dir = dirAt(now.zenith, altDeg, 40);
    const dark = skyHere({ ...now, glowMuAt: undefined }, dir);
    return -2.5 * Math.log10(lightOf(skyHere(now, dir).skyMu) - lightOf(dark.skyMu));
  };

  it("comes from beyond the air, which takes of it as of a star: 1 mag and more ten degrees up", () => {
    for (const altDeg of [90, 60, 30, 10, 5]) {
      const airMass = kastenYoung(altDeg + (altDeg < 90 ? 0.016 / Math.tan(altDeg * DEG) : 0));
      expect(Math.abs(glowMuAt(altDeg) - 20.5 - now.extinction * (airMass - 1)), `${altDeg}`).toBeLessThan(0.02);
    }
    expect(glowMuAt(10) - 20.5).toBeGreaterThan(0.8);
  });

  it("is charged to the sky's glow for the place in view, and never makes a height a gain", () => {
    const band = (dir: Dir) => (dot(dir, now.zenith) > 0.9 ? 20 : 23);
    for (const glowMu of [band, (dir: Dir) => (dot(dir, now.zenith) > 0.9 ? 23 : 20)])
      for (const altDeg of [60, 30, 10]) {
        const dir = dirAt(now.zenith, altDeg, 200);
        const costs = costsOf(gearById("finder-9x50"), { ...now, glowMuAt: glowMu }, dir);
        const evenly = costsOf(gearById("finder-9x50"), { ...now, glowMuAt: () => glowMu(dir) }, dir);
        expect(costs).toEqual(evenly);
        expect(costs.altitude).toBeGreaterThan(0);
      }
  });
});

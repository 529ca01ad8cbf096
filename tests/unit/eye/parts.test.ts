import { describe, expect, it } from "vitest";
import { adaptationLossMag, adaptingLimitMag, ROD_DELAY_MIN } from "#core/eye/adaptation.ts";
import { extinctionOfHeight, imageArcsec, scintillation, seeingArcsec } from "#core/eye/air.ts";
import { pupilOfAge } from "#core/eye/conditions.ts";
import { dawesArcsec, rayleighArcsec, splitOf } from "#core/eye/doubles.ts";
import { noticing } from "#core/eye/instrument.ts";
import { candelaOfMu, muOfNanolambert, nanolambertOfMu } from "#core/eye/light.ts";
import { enclosedLight } from "#core/eye/profiles.ts";
import { moonMagV, moonNl, muOfSum, nightNl, twilightNl } from "#core/eye/skyLight.ts";
import { nakedLimitMag } from "#core/eye/threshold.ts";

const RAD = Math.PI / 180;

describe("units", () => {
  it("agree on a dark sky to the 0.7 % of their zero points", () => {
    expect(candelaOfMu(22)).toBeCloseTo(1.706e-4, 7);
    expect(nanolambertOfMu(22)).toBeCloseTo(54, 0);
    expect(muOfNanolambert(nanolambertOfMu(19.3))).toBeCloseTo(19.3, 12);
  });
});

describe("the sky's light", () => {
  const night = nanolambertOfMu(21.6);
  it.each([
    [-6, 13.3],
    [-9, 17],
    [-12, 19.7],
    [-15, 21.3],
    [-18, 21.6],
  ])("with the Sun at %i degrees is %f at the zenith", (sunDeg, mu) => {
    expect(Math.abs(muOfSum([night, twilightNl(sunDeg)]) - mu)).toBeLessThan(0.06);
  });
  it("never grows as the Sun sinks", () => {
    for (let deg = 0; deg < 20; deg += 0.1) expect(twilightNl(-deg - 0.1)).toBeLessThanOrEqual(twilightNl(-deg));
  });
  it.each([
    [60, 21.58],
    [45, 21.41],
    [30, 21.16],
    [20, 20.95],
  ])("at %i degrees is %f where the zenith has 21.7", (altDeg, mu) => {
    expect(Math.abs(muOfNanolambert(nightNl(21.7, (90 - altDeg) * RAD, 0.172)) - mu)).toBeLessThan(0.01);
  });
  it.each([
    [0, 20, 17.46],
    [0, 45, 18.15],
    [0, 90, 18.77],
    [90, 45, 20.37],
  ])("a Moon of phase angle %i at %i degrees brightens 21.7 to %f", (phaseDeg, separationDeg, mu) => {
    const zenithRad = 30 * RAD;
    const moon = moonNl({ phaseDeg, zenithDeg: 45, separationDeg }, zenithRad, 0.172);
    expect(Math.abs(muOfSum([nightNl(21.7, zenithRad, 0.172), moon]) - mu)).toBeLessThan(0.12);
  });
  it("has a Moon that fades with its phase and gives nothing below the horizon", () => {
    expect([0, 30, 60, 90, 120].map((deg) => Number(moonMagV(deg).toFixed(2)))).toEqual([
      -12.73, -11.95, -11.12, -10.13, -8.78,
    ]);
    expect(moonNl({ phaseDeg: 0, zenithDeg: 95, separationDeg: 60 }, 0, 0.2)).toBe(0);
  });
});

describe("the eye", () => {
  it("narrows with age", () => {
    expect([20, 40, 60, 80].map((years) => Number(pupilOfAge(years).toFixed(2)))).toEqual([6.86, 6.46, 5.85, 5.08]);
  });
  it("notices half the stars at its limit", () => {
    expect(noticing(6, 6)).toBe(0.5);
    expect(noticing(5.88, 6)).toBeCloseTo(0.731, 3);
  });
  it.each([
    [0, 1.8],
    [2, 3.6],
    [8, 4.3],
    [18, 4.6],
    [20, 5.8],
    [25, 6.06],
  ])("%i minutes after daylight sees %f (a model)", (minutes, mag) => {
    expect(Math.abs(adaptingLimitMag(minutes, ROD_DELAY_MIN.daylight, 21.5) - mag)).toBeLessThan(0.06);
  });
  it("loses nothing once adapted", () => {
    expect(adaptationLossMag(40, ROD_DELAY_MIN.daylight, 21.5)).toBe(0);
    expect(adaptationLossMag(0, 0, 21.5)).toBeCloseTo(nakedLimitMag(21.5, 2) - 1.8, 10);
  });
});

describe("the air", () => {
  it("swallows less on a mountain", () => {
    expect(extinctionOfHeight(0)).toBeCloseTo(0.24, 2);
    expect(extinctionOfHeight(2000)).toBeCloseTo(0.13, 2);
  });
  it("blurs more toward the horizon: 2 arcsec become 3.0 at air mass 2 and 5.6 at 5.59", () => {
    expect(seeingArcsec(2, 1.994)).toBeCloseTo(3, 1);
    expect(seeingArcsec(2, 5.586)).toBeCloseTo(5.6, 1);
    expect(imageArcsec(0, 100)).toBeCloseTo(1.17, 2);
  });
  it("shakes small apertures most", () => {
    // Osborn et al. 2015, eq. 7: 0.5 m, 1 s, air mass 1.5 from 1515 m, with the constant of 1.5 about 0.0114.
    expect(Math.abs(scintillation(500, 1.5, 1515, 1) - 0.0114)).toBeLessThan(0.0015);
    expect(scintillation(50, 1, 0)).toBeCloseTo(0.15, 10);
    expect(scintillation(5, 10, 0)).toBe(0.8);
    for (const mm of [60, 150, 300]) expect(scintillation(mm, 1, 0)).toBeLessThanOrEqual(scintillation(mm / 1.2, 1, 0));
  });
});

describe("profiles", () => {
  it("hold their light within their size", () => {
    for (const profile of ["uniform", "exponential", "bulge", "plummer", "ring", "members"] as const) {
      let before = 0;
      for (let share = 0.04; share <= 1.0001; share += 0.04) {
        const light = enclosedLight(profile, Math.min(1, share));
        expect(light).toBeGreaterThanOrEqual(before);
        before = light;
      }
      expect(before).toBeGreaterThan(0.75);
      expect(before).toBeLessThanOrEqual(1);
    }
    expect(enclosedLight("exponential", 0.524)).toBeCloseTo(0.5, 2);
    expect(enclosedLight("bulge", 0.35)).toBeCloseTo(0.5, 3);
    expect(enclosedLight("plummer", 0.2)).toBeCloseTo(0.5, 12);
  });
});

describe("double stars", () => {
  it.each([
    [50, 2.32, 2.77],
    [100, 1.16, 1.38],
    [200, 0.58, 0.69],
  ])("in %i mm end at Dawes %f and Rayleigh %f", (mm, dawes, rayleigh) => {
    expect(dawesArcsec(mm)).toBeCloseTo(dawes, 2);
    expect(rayleighArcsec(mm)).toBeCloseTo(rayleigh, 2);
  });
  it("need power for the eye, aperture for themselves, and more for unequal pairs", () => {
    expect(splitOf(5, 0, 100, 20)).toEqual({ neededArcsec: 6, limit: "eye", isSplit: false });
    expect(splitOf(5, 0, 100, 30)).toMatchObject({ limit: "eye", isSplit: true });
    expect(splitOf(5, 5, 50, 200)).toMatchObject({ limit: "aperture", isSplit: false });
    expect(splitOf(1.2, 0, 200, 300, 3)).toMatchObject({ limit: "air", isSplit: false });
  });
});

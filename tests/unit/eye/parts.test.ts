import { describe, expect, it } from "vitest";
import { adaptationLossMag, adaptingLimitMag, ROD_DELAY_MIN } from "#core/eye/adaptation.ts";
import { extinctionOfHeight, imageArcsec, scintillation, seeingArcsec } from "#core/eye/air.ts";
import { pupilOfAge } from "#core/eye/conditions.ts";
import { dawesArcsec, rayleighArcsec, splitOf } from "#core/eye/doubles.ts";
import { candelaOfMu, muOfNanolambert, nanolambertOfMu } from "#core/eye/light.ts";
import { NOTICING, noticing, standing } from "#core/eye/noticing.ts";
import { enclosedLight } from "#core/eye/profiles.ts";
import { moonMagV, moonNl, muOfSum, nightNl, twilightNl } from "#core/eye/skyLight.ts";
import { starWidthArcsec } from "#core/eye/starImage.ts";
import { nakedLimitMag } from "#core/eye/threshold.ts";
import { exitPupilMm, GEAR, gearById } from "#core/optics/gear.ts";

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
  it("is bright in twilight as it was measured: 6.55 at sunset, 1.057 mag a degree to 5 degrees below (Patat et al. 2006)", () => {
    const muAt = (sunDeg: number) => muOfNanolambert(twilightNl(sunDeg));
    expect(muAt(0)).toBeCloseTo(6.555, 2);
    expect(muAt(-2.5)).toBeCloseTo(9.197, 2);
    expect(muAt(-4.999)).toBeCloseTo(muAt(-5.001), 1);
    // From there on by the table's curve, the measures' own night of 21.6 taken off; half a degree below 15 five sixths are left.
    const curve = (x: number) => nanolambertOfMu(11.84 + 1.518 * x - 0.057 * x * x) - nanolambertOfMu(21.6);
    expect(twilightNl(-5.2) / curve(0.2)).toBeCloseTo(1, 9);
    expect(twilightNl(-14.9) / curve(9.9)).toBeCloseTo(1, 9);
    expect(twilightNl(-15.5) / curve(10.5)).toBeCloseTo(5 / 6, 9);
    // By day as bright as the eye's measures reach, 3,400 cd/m2 and no more.
    expect(candelaOfMu(muAt(30))).toBeGreaterThan(3000);
    expect(candelaOfMu(muAt(30))).toBeLessThan(3500);
  });
  it("never grows as the Sun sinks", () => {
    for (let deg = 0; deg < 20; deg += 0.1) expect(twilightNl(-deg - 0.1)).toBeLessThanOrEqual(twilightNl(-deg));
  });
  it.each([
    [60, 21.58],
    [45, 21.41],
    [30, 21.16],
    [20, 20.95],
    [10, 20.73],
  ])("at %i degrees is %f where the zenith has 21.7", (altDeg, mu) => {
    expect(Math.abs(muOfNanolambert(nightNl(21.7, (90 - altDeg) * RAD, 0.172)) - mu)).toBeLessThan(0.01);
  });
  it.each([
    [0, 20, 17.46],
    [0, 45, 18.15],
    [0, 90, 18.77],
    [90, 20, 19.84],
    [90, 45, 20.37],
    [90, 90, 20.77],
  ])("a Moon of phase angle %i at %i degrees brightens 21.7 to %f", (phaseDeg, separationDeg, mu) => {
    const zenithRad = 30 * RAD;
    const moon = moonNl({ phaseDeg, zenithDeg: 45, separationDeg }, zenithRad, 0.172);
    expect(Math.abs(muOfSum([nightNl(21.7, zenithRad, 0.172), moon]) - mu)).toBeLessThan(0.006);
  });
  it("is brightest close to the Moon, by air and by dust (Krisciunas & Schaefer 1991, eq. 17 to 19 and 21)", () => {
    const lightAt = (separationDeg: number) => moonNl({ phaseDeg: 0, zenithDeg: 45, separationDeg }, 30 * RAD, 0.172);
    const air = (deg: number) => 10 ** 5.36 * (1.06 + Math.cos(deg * RAD) ** 2);
    const wide = air(30) + 10 ** (6.15 - 30 / 40);
    for (const deg of [2, 5, 9])
      expect(lightAt(deg) / lightAt(30)).toBeCloseTo((air(deg) + 6.2e7 / deg ** 2) / wide, 6);
    expect(lightAt(120) / lightAt(30)).toBeCloseTo((air(120) + 10 ** (6.15 - 3)) / wide, 6);
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
  it("notices a star at its limit half the time, and is sure of it only beyond the edge", () => {
    expect(noticing(0)).toBeCloseTo(0.5, 12);
    expect(noticing(0.12)).toBeCloseTo(0.748, 3);
    expect([noticing(NOTICING.edgeMag), noticing(1), noticing(-NOTICING.edgeMag), noticing(-1)]).toEqual([1, 1, 0, 0]);
    for (let mag = -0.39; mag < 0.4; mag += 0.01) {
      expect(noticing(mag)).toBeGreaterThan(noticing(mag - 0.01));
      expect(noticing(mag) + noticing(-mag)).toBeCloseTo(1, 12);
    }
  });
  it("lets a star stand whole at its limit where nothing comes and goes, and softly go below it", () => {
    expect([standing(0), standing(0.1), standing(3)]).toEqual([1, 1, 1]);
    expect(standing(-0.12)).toBeCloseTo(2 * noticing(-0.12), 12);
    expect([standing(-NOTICING.edgeMag), standing(-1)]).toEqual([0, 0]);
    for (let mag = -0.39; mag < 0; mag += 0.01) expect(standing(mag)).toBeGreaterThan(standing(mag - 0.01));
  });
  it.each([
    [0, 1.8],
    [1, 3.02],
    [2, 3.64],
    [8, 4.3],
    [18, 4.6],
    [20, 5.8],
    [25, 6.06],
  ])("%i minutes after daylight sees %f (a model)", (minutes, mag) => {
    expect(Math.abs(adaptingLimitMag(minutes, ROD_DELAY_MIN.daylight, 21.5) - mag)).toBeLessThan(0.06);
  });
  it.each([
    [8, 4.3],
    [10, 4.6],
    [12, 5.8],
    [15, 6.06],
  ])("%i minutes after dim indoor light sees %f (a model)", (minutes, mag) => {
    expect(Math.abs(adaptingLimitMag(minutes, ROD_DELAY_MIN.indoors, 21.5) - mag)).toBeLessThan(0.06);
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
    // Four kilometres up: .1066 / e^.488 of air, .12 / e^2.667 of dust, .016 of ozone.
    expect(extinctionOfHeight(4000)).toBeCloseTo(0.0898, 4);
  });
  it("blurs more toward the horizon: 2 arcsec become 3.0 at air mass 2 and 5.6 at 5.59", () => {
    expect(seeingArcsec(2, 1.994)).toBeCloseTo(3, 1);
    expect(seeingArcsec(2, 5.586)).toBeCloseTo(5.6, 1);
    expect(imageArcsec(0, 100)).toBeCloseTo(1.17, 2);
  });
  it("shakes small apertures most", () => {
    // Osborn et al. 2015, eq. 7: 0.5 m, 1 s, air mass 1.5 from 1515 m, with the constant of 1.5 about 0.0114.
    expect(Math.abs(scintillation(500, 1.5, 1515, 1) - 0.0114)).toBeLessThan(0.0001);
    expect(scintillation(500, 1.5, 1515, 1, 1.3) / scintillation(500, 1.5, 1515, 1)).toBeCloseTo(1.3 / 1.5, 3);
    // Common values of small apertures: .10 to .20 at the zenith, about .3 at air mass 2 (fitted, no source).
    for (const mm of [6, 30]) {
      expect(Math.abs(scintillation(mm, 1, 0) - 0.15)).toBeLessThan(0.05);
      expect(Math.abs(scintillation(mm, 2, 0) - 0.35)).toBeLessThan(0.06);
    }
    expect(scintillation(6, 10, 0)).toBeGreaterThan(0.7);
    for (let mm = 6; mm < 500; mm *= 1.2) {
      expect(scintillation(mm, 1, 0)).toBeLessThan(scintillation(mm / 1.2, 1, 0));
      expect(scintillation(mm, 10, 0)).toBeLessThan(0.8);
      expect(scintillation(mm, 1, 2000)).toBeLessThan(scintillation(mm, 1, 0));
      expect(scintillation(mm, 1.5, 0) / scintillation(mm, 1, 0)).toBeCloseTo(1.5 ** 1.5, 10);
    }
  });
});

describe("the image of a star", () => {
  const width = (id: string, zenithArcsec = 2.5, airMass = 1) => starWidthArcsec(gearById(id), zenithArcsec, airMass);
  it("is a point to the naked eye and at low power", () => {
    expect(["eye", "sight", "finder-9x50", "newton150-30x"].map((id) => width(id))).toEqual([0, 0, 0, 0]);
  });
  it("is a disc at high power, wider toward the horizon, and by the aperture's own share", () => {
    expect(width("newton400-200x")).toBeCloseTo(2.52, 2);
    expect(width("newton400-200x", 2.5, 1.994)).toBeCloseTo(3.79, 1);
    expect(width("newton400-200x", 0)).toBeCloseTo(0, 12);
    // 1.03 lambda / D of 200 mm at 550 nm is .58 arcsec (textbook).
    expect(width("newton200-100x", 1.2) ** 2).toBeCloseTo(1.2 ** 2 + 0.584 ** 2, 2);
  });
  it("is a disc from the power on that shows it 2 arcmin wide", () => {
    const at100 = (zenithArcsec: number) =>
      starWidthArcsec({ kind: "eyepiece", apertureMm: 1000, magnification: 100 }, zenithArcsec, 1);
    expect([at100(1.15), at100(1.18), at100(1.21) > 1.2, at100(1.25) > 1.2]).toEqual([0, 0, true, true]);
  });
  it("shows no ring in any instrument: the eye tells the first from its disc at exit pupils well under 1 mm", () => {
    for (const gear of GEAR.values()) if (gear.kind !== "eye") expect(exitPupilMm(gear)).toBeGreaterThanOrEqual(2);
  });
});

describe("profiles", () => {
  it("hold their light within their size", () => {
    for (const profile of ["uniform", "exponential", "bulge", "plummer", "coma", "ring", "members"] as const) {
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
    expect(enclosedLight("coma", 0.5)).toBe(0.5);
    // A ring as a patch of the area between 0.6 and 1 of its size.
    expect(enclosedLight("ring", 0.4)).toBeCloseTo(0.16 / (1 - 0.36), 12);
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

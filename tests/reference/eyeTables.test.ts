/**
 * Tables of limits worked out apart from the project, from the equations of the papers alone: Crumey 2014 (MNRAS 442, 2600, eq.
 * 25 to 34 and 65 to 73) and Schaefer 1990 (PASP 102, 212, Hecht's form). Two digits are given.
 */
import { describe, expect, it } from "vitest";
import { apparentAltDeg, skyHere, zenithConditions } from "#core/eye/conditions.ts";
import { starLimits } from "#core/eye/instrument.ts";
import { nakedLimitMag, rodLimitMag, schaeferLimitMag } from "#core/eye/threshold.ts";
import { gearById } from "#core/optics/gear.ts";

const ROUNDED = 0.0071;

// The last column asks for more light under a lit sky, for the naked eye alone (fitted, no source).
const NAKED = [
  [16, 2.19, 4.04, 4.86, 5.25, 4.66, 4.35],
  [17, 3.1, 4.13, 4.86, 5.25, 4.67, 4.35],
  [18, 3.97, 4.19, 4.98, 5.37, 4.78, 4.47],
  [18.5, 4.38, 4.38, 5.08, 5.47, 4.88, 4.68],
  [19, 4.77, 4.77, 5.21, 5.6, 5.01, 4.92],
  [19.5, 5.14, 5.14, 5.35, 5.74, 5.15, 5.2],
  [20, 5.49, 5.49, 5.51, 5.9, 5.31, 5.51],
  [20.5, 5.82, 5.82, 5.69, 6.07, 5.49, 5.69],
  [21, 6.12, 6.12, 5.87, 6.26, 5.67, 5.87],
  [21.5, 6.38, 6.38, 6.06, 6.45, 5.86, 6.06],
  [22, 6.62, 6.62, 6.26, 6.65, 6.06, 6.26],
] as const;

describe("the naked eye's limit", () => {
  it.each(NAKED)("under a sky of %f", (mu, rods, twoBranches, typical, keen, novice, lit) => {
    const now = zenithConditions(mu, { fieldFactor: 2, pupilMm: 7 });
    const found = [
      rodLimitMag(mu),
      schaeferLimitMag(mu),
      nakedLimitMag(mu, 2),
      nakedLimitMag(mu, 1.4),
      nakedLimitMag(mu, 2.4),
      starLimits(gearById("eye"), now, skyHere(now, [1, 0, 0])).avertedMag,
    ];
    [rods, twoBranches, typical, keen, novice, lit].forEach((wanted, i) => {
      expect(Math.abs(found[i]! - wanted), `column ${i + 1}`).toBeLessThan(ROUNDED);
    });
  });
});

/** Transmission 0.8, pupil 6.5 mm, F = 2, one eye, no obstruction; skies of 18, 19.5, 21 and 21.7. */
const GLASSES = [
  [30, 10, 8.19, 8.73, 9.35, 9.65],
  [50, 8, 8.86, 9.27, 9.81, 10.08],
  [80, 16, 9.99, 10.45, 11.02, 11.3],
  [80, 40, 10.63, 11.22, 11.86, 12.17],
  [80, 100, 11.42, 12.08, 12.43, 12.43],
  [150, 25, 11.26, 11.68, 12.23, 12.5],
  [150, 75, 11.99, 12.58, 13.22, 13.54],
  [150, 150, 12.58, 13.23, 13.8, 13.8],
  [200, 30, 11.79, 12.2, 12.73, 13],
  [200, 100, 12.62, 13.21, 13.85, 14.16],
  [200, 200, 13.21, 13.85, 14.42, 14.42],
  [300, 45, 12.67, 13.08, 13.61, 13.88],
  [300, 150, 13.5, 14.09, 14.73, 15.04],
  [300, 300, 14.09, 14.73, 15.3, 15.3],
] as const;

describe("a telescope's limit", () => {
  it.each(GLASSES)("of %i mm at %i times", (apertureMm, magnification, ...wanted) => {
    const glass = {
      kind: "eyepiece",
      apertureMm,
      magnification,
      obstructionMm: 0,
      transmission: 0.8,
      eyes: 1,
    } as const;
    [18, 19.5, 21, 21.7].forEach((mu, i) => {
      const now = zenithConditions(mu, { fieldFactor: 2, pupilMm: 6.5 });
      const here = skyHere(now, [1, 0, 0]);
      expect(Math.abs(starLimits(glass, now, here).avertedMag - wanted[i]!), `sky ${mu}`).toBeLessThan(ROUNDED);
      // Two eyes gain root 2, a keen one another .39 (Crumey 2014, sect. 1.6).
      const both = starLimits({ ...glass, eyes: 2 }, now, here).avertedMag;
      expect(both - starLimits(glass, now, here).avertedMag).toBeCloseTo(2.5 * Math.log10(Math.SQRT2), 9);
    });
  });
});

// Saemundsson 1986, arcminutes by the true altitude; the zenith is left where it is.
it.each([
  [0, 28.98],
  [1, 21.74],
  [3, 13.66],
  [10, 5.41],
  [30, 1.75],
])("at %i degrees things look %f arcmin higher", (altDeg, arcmin) => {
  expect(Math.abs(60 * (apparentAltDeg(altDeg) - altDeg) - arcmin)).toBeLessThan(0.0051);
});

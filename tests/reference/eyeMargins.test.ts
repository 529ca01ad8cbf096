/**
 * Margins of well-known objects worked out apart from the project, from the equations of Crumey 2014 (MNRAS 442, 2600, eq. 41
 * to 44 and 65 to 70) over each profile's best part: F = 2, transmission 0.8, pupil 6.5 mm, one eye at the eyepiece and two
 * without. Sizes are given as a mean surface brightness to a tenth of a magnitude: that is the tolerance, half a step.
 */
import { describe, expect, it } from "vitest";
import { skyHere, zenithConditions } from "#core/eye/conditions.ts";
import { bestPower, type Glass, objectMargin } from "#core/eye/margin.ts";
import { gearById } from "#core/optics/gear.ts";
import type { ObjectProfile } from "#core/seams/index.ts";

/** V, V of a square arcsecond of the mean, the naked eye under 21.5; then 50 mm at 8 times, 80, 150 and 200 mm at their best. */
type Row = readonly [string, ObjectProfile, number, number, number, ...Of4<readonly [number, number, number]>];
type Of4<T> = [T, T, T, T];
const ROWS: readonly Row[] = [
  [
    "M31",
    "exponential",
    3.4,
    22.3,
    0.84,
    [0.17, 1.05, 1.98],
    [0.34, 1.23, 2.18],
    [0.52, 1.44, 2.4],
    [0.58, 1.51, 2.49],
  ],
  ["M42", "exponential", 4, 21.6, 0.81, [0.59, 1.44, 2.34], [0.8, 1.67, 2.6], [1.04, 1.94, 2.89], [1.13, 2.04, 3]],
  ["M13", "plummer", 5.8, 20.9, -0.06, [1.57, 2.24, 2.98], [2.11, 2.87, 3.79], [2.69, 3.48, 4.32], [2.89, 3.72, 4.58]],
  ["M57", "uniform", 8.8, 17.9, -2.76, [-0.08, 0.44, 1.05], [1.23, 2.13, 2.8], [1.8, 2.67, 3.57], [2.12, 2.92, 3.84]],
  ["M27", "uniform", 7.4, 20.2, -1.45, [0.19, 0.91, 1.68], [0.58, 1.38, 2.22], [0.93, 1.8, 2.72], [1.04, 1.93, 2.87]],
  [
    "M81",
    "exponential",
    6.9,
    22,
    -1.39,
    [-0.57, 0.19, 1.01],
    [-0.22, 0.59, 1.45],
    [0.18, 1.03, 1.93],
    [0.33, 1.19, 2.11],
  ],
  [
    "M82",
    "exponential",
    8.4,
    21.2,
    -2.65,
    [-0.92, -0.25, 0.48],
    [-0.38, 0.39, 1.31],
    [0.21, 0.99, 1.83],
    [0.44, 1.24, 2.09],
  ],
  ["M1", "uniform", 8.4, 20.5, -2.41, [-0.47, 0.2, 0.92], [0.02, 0.77, 1.64], [0.47, 1.31, 2.19], [0.61, 1.48, 2.39]],
  [
    "M51",
    "exponential",
    8.4,
    21.7,
    -2.69,
    [-1.15, -0.46, 0.3],
    [-0.66, 0.09, 0.99],
    [-0.11, 0.69, 1.53],
    [0.1, 0.92, 1.78],
  ],
  [
    "M33",
    "exponential",
    5.7,
    23,
    -0.78,
    [-0.87, -0.03, 0.86],
    [-0.65, 0.22, 1.14],
    [-0.39, 0.5, 1.45],
    [-0.3, 0.61, 1.56],
  ],
  [
    "M97",
    "uniform",
    9.9,
    21.2,
    -3.89,
    [-1.66, -1.04, -0.36],
    [-1.05, -0.26, 0.65],
    [-0.45, 0.34, 1.18],
    [-0.26, 0.57, 1.44],
  ],
  [
    "M101",
    "exponential",
    7.9,
    23.8,
    -2.55,
    [-2.06, -1.27, -0.42],
    [-1.75, -0.92, -0.04],
    [-1.42, -0.55, 0.37],
    [-1.28, -0.41, 0.53],
  ],
  [
    "M74",
    "exponential",
    9.4,
    23,
    -3.71,
    [-2.29, -1.58, -0.81],
    [-1.81, -1.06, -0.18],
    [-1.29, -0.49, 0.37],
    [-1.1, -0.27, 0.61],
  ],
  [
    "NGC7000",
    "uniform",
    4,
    22.8,
    0.3,
    [-1.39, -0.42, 0.59],
    [-1.33, -0.36, 0.65],
    [-1.32, -0.34, 0.68],
    [-1.31, -0.33, 0.69],
  ],
];
const SKIES = [18.5, 20, 21.5];
const APERTURES_MM = [50, 80, 150, 200];

const under = (mu: number) => {
  const now = zenithConditions(mu, { fieldFactor: 2, pupilMm: 6.5 });
  return { now, here: skyHere(now, [1, 0, 0]) };
};

describe.each(ROWS)("the margin of %s", (_, profile, magV, meanMu, nakedMag, ...byAperture) => {
  const diameterArcmin = Math.sqrt(((4 / Math.PI) * 10 ** (0.4 * (meanMu - magV))) / 3600);
  const object = { kind: "galaxy", magV, majorArcmin: diameterArcmin, minorArcmin: diameterArcmin, profile } as const;
  const near = (found: number, wanted: number, what: string) =>
    expect(Math.abs(found - wanted), what).toBeLessThanOrEqual(0.055);

  it("to the naked eye", () => {
    const { now, here } = under(21.5);
    near(objectMargin(object, gearById("eye"), now, here), nakedMag, "eye");
  });

  it.each(APERTURES_MM)("in %i mm", (apertureMm) => {
    const wide: Glass = {
      kind: "eyepiece",
      apertureMm,
      magnification: apertureMm === 50 ? 8 : apertureMm / 5,
      obstructionMm: 0,
      transmission: 0.8,
      eyes: 1,
      fieldDeg: 200,
    };
    SKIES.forEach((mu, i) => {
      const { now, here } = under(mu);
      const found =
        apertureMm === 50 ? objectMargin(object, wide, now, here) : bestPower(object, wide, now, here).marginMag;
      near(found, byAperture[APERTURES_MM.indexOf(apertureMm)]![i]!, `sky ${mu}`);
    });
  });
});

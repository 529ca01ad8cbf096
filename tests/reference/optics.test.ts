/**
 * Worked values of image orientation, each derived from plane mirrors and checked by a ray trace of its own: clockwise
 * rotation of sky-up for an observer who stands upright, facing the target; clock angle of the eyepiece 0 on top, +90 right.
 */
import { describe, expect, it } from "vitest";
import { exitPupilMm, gearById } from "#core/optics/gear.ts";
import { imageOrientation } from "#core/optics/orientation.ts";
import type { LightPath } from "#core/seams/index.ts";

const DEG = Math.PI / 180;
const ROWS: readonly (readonly [LightPath, clockDeg: number, altDeg: number, rotationDeg: number, parity: 1 | -1])[] = [
  ["direct", 0, 40, 0, 1],
  ["halfTurn", 0, 40, 180, 1],
  ["newtonian", 0, 10, 180, 1],
  ["newtonian", 0, 80, 180, 1],
  ["newtonian", 90, 0, 180, 1],
  ["newtonian", 90, 30, 150, 1],
  ["newtonian", 90, 70, 110, 1],
  ["newtonian", -90, 30, 210, 1],
  ["newtonian", 45, 45, 170.3, 1],
  ["mirrorDiagonal", 0, 0, 0, -1],
  ["mirrorDiagonal", 0, 65, 0, -1],
  ["mirrorDiagonal", 90, 20, 160, -1],
  ["mirrorDiagonal", 45, 45, 80.3, -1],
  ["mirrorDiagonal", 90, 70, 110, -1],
  ["erectingDiagonal", 0, 65, 0, 1],
  ["erectingDiagonal", 90, 20, -20, 1],
  ["erectingDiagonal", 90, 45, -45, 1],
  ["erectingDiagonal", 45, 45, -9.7, 1],
];

describe("image orientation, worked values", () => {
  it.each(ROWS)(
    "%s, eyepiece at %d, altitude %d: turned by %d, parity %d",
    (path, clockDeg, altDeg, rotation, parity) => {
      const gear = { ...gearById("newton200-48x"), path, clockDeg };
      const o = imageOrientation(gear, altDeg * DEG, 0, "upright");
      const off = o.rotationRad / DEG - rotation;
      expect(Math.abs(off - 360 * Math.round(off / 360))).toBeLessThan(0.05);
      expect(o.parity).toBe(parity);
    },
  );
});

it("a 150 mm telescope at 30x has an exit pupil of 5.0 mm (textbook: aperture over magnification)", () => {
  expect(exitPupilMm(gearById("newton150-30x"))).toBeCloseTo(5, 12);
});

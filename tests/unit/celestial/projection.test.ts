import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { equalArea, equidistant, gnomonic, orthographic, stereographic } from "#core/celestial/projection.ts";
import { separationRad } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { aDir, anAngle } from "./arbitrary.ts";

/** How far from the centre (radians) each is tried, and the error that its stretching leaves there. */
const ALL = [
  ["gnomonic", gnomonic, 1.5, 1e-14],
  ["stereographic", stereographic, 3.1, 1e-13],
  ["equidistant", equidistant, 3.1, 1e-13],
  ["equalArea", equalArea, 3.1, 1e-13],
  ["orthographic", orthographic, 1.5, 1e-13],
] as const;

describe.each(ALL)("%s", (_, projection, reachRad, tolerance) => {
  const within = aDir.filter((d) => separationRad(d, [0, 0, 1]) < reachRad);

  it("comes back to the direction", () => {
    fc.assert(
      fc.property(within, (dir) => {
        const plane = [0, 0];
        const back = [0, 0, 0];
        expect(projection.project(...dir, plane)).toBe(true);
        expect(projection.unproject(plane[0]!, plane[1]!, back)).toBe(true);
        expect(separationRad(back as unknown as Dir, dir)).toBeLessThan(tolerance);
      }),
    );
  });

  it("turns with the direction and mirrors with it", () => {
    fc.assert(
      fc.property(within, ([x, y, z]) => {
        const [here, turned, mirrored] = [new Float64Array(2), new Float64Array(2), new Float64Array(2)];
        projection.project(x, y, z, here);
        projection.project(-y, x, z, turned);
        projection.project(-x, y, z, mirrored);
        expect([turned[0]! + here[1]!, turned[1]! - here[0]!]).toEqual([0, 0]);
        expect([mirrored[0]! + here[0]!, mirrored[1]! - here[1]!]).toEqual([0, 0]);
      }),
    );
  });

  it("has scale 1 at the centre, x to the right and y up", () => {
    const plane = [0, 0];
    projection.project(1e-6, 2e-6, Math.sqrt(1 - 5e-12), plane);
    expect(plane[0]! * 1e6).toBeCloseTo(1, 9);
    expect(plane[1]! * 1e6).toBeCloseTo(2, 9);
    expect(projection.project(0, 0, 1, plane)).toBe(true);
    expect(plane.map(Math.abs)).toEqual([0, 0]);
  });

  it("leaves out the antipode and leaves the plane point alone then", () => {
    const plane = [7, 8];
    expect(projection.project(0, 0, -1, plane)).toBe(false);
    expect(plane).toEqual([7, 8]);
  });
});

it("keeps distances (equidistant), angles at the edge of the field (gnomonic) and areas (equal-area)", () => {
  fc.assert(
    fc.property(anAngle(0.01, 1.4), (c) => {
      const plane = [0, 0];
      const radius = (p: typeof gnomonic) => {
        p.project(Math.sin(c), 0, Math.cos(c), plane);
        return plane[0]!;
      };
      expect(radius(equidistant)).toBeCloseTo(c, 14);
      expect(radius(gnomonic)).toBeCloseTo(Math.tan(c), 12);
      expect(radius(stereographic)).toBeCloseTo(2 * Math.tan(c / 2), 14);
      // Area of the disc is that of the cap, 2 pi (1 - cos c).
      expect(radius(equalArea) ** 2).toBeCloseTo(2 * (1 - Math.cos(c)), 14);
    }),
  );
});

it("refuses plane points off the map", () => {
  const out = [0, 0, 0];
  expect(orthographic.unproject(0.8, 0.8, out)).toBe(false);
  expect(equalArea.unproject(2, 0.1, out)).toBe(false);
  expect(equidistant.unproject(3, 1, out)).toBe(false);
});

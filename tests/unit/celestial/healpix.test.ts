import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { MAX_ORDER, neighbours, pixelCentre, pixelCorners, pixelOf, pixelsInCone } from "#core/celestial/healpix.ts";
import { offsetDir, separationRad, TWO_PI } from "#core/celestial/vector.ts";
import { aDir, anAngle } from "./arbitrary.ts";

const anOrder = fc.integer({ min: 0, max: MAX_ORDER });
const count = (order: number) => 12 * 4 ** order;

describe("pixels", () => {
  it("hold their centre, at every order", () => {
    for (let order = 0; order <= 5; order++) {
      for (let pixel = 0; pixel < count(order); pixel++) expect(pixelOf(order, pixelCentre(order, pixel))).toBe(pixel);
    }
    fc.assert(
      fc.property(anOrder, anAngle(0, 0.999999), (order, part) => {
        const pixel = Math.floor(part * count(order));
        expect(pixelOf(order, pixelCentre(order, pixel))).toBe(pixel);
      }),
    );
  });

  it("lie nested: a pixel holds the four of the next order", () => {
    fc.assert(
      fc.property(aDir, fc.integer({ min: 0, max: MAX_ORDER - 1 }), (dir, order) => {
        expect(pixelOf(order + 1, dir) >> 2).toBe(pixelOf(order, dir));
      }),
    );
  });

  it("have equal areas: every pixel gets its share of an even net", () => {
    const hits = new Array<number>(count(2)).fill(0);
    const net = 200_000;
    for (let i = 0; i < net; i++) {
      // Golden-angle spiral: even over the sphere.
      const z = 1 - (2 * i + 1) / net;
      const phi = i * Math.PI * (3 - Math.sqrt(5));
      hits[pixelOf(2, [Math.sqrt(1 - z * z) * Math.cos(phi), Math.sqrt(1 - z * z) * Math.sin(phi), z])]! += 1;
    }
    const share = net / count(2);
    expect(Math.min(...hits)).toBeGreaterThan(share * 0.99);
    expect(Math.max(...hits)).toBeLessThan(share * 1.01);
  });

  it("have corners that lie on the pixel: just inside is the pixel, just outside is not", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 6 }), anAngle(0, 0.999999), (order, part) => {
        const pixel = Math.floor(part * count(order));
        const centre = pixelCentre(order, pixel);
        for (const corner of pixelCorners(order, pixel)) {
          const towards = (t: number) => centre.map((c, i) => c + t * (corner[i]! - c)) as [number, number, number];
          expect(pixelOf(order, unit(towards(0.98)))).toBe(pixel);
          expect(pixelOf(order, unit(towards(1.02)))).not.toBe(pixel);
        }
      }),
    );
  });
});

function unit([x, y, z]: readonly [number, number, number]): [number, number, number] {
  const length = Math.hypot(x, y, z);
  return [x / length, y / length, z / length];
}

describe("neighbours", () => {
  it("share a corner with the pixel, and all that do are named", () => {
    for (let order = 0; order <= 3; order++) {
      const corners = Array.from({ length: count(order) }, (_, pixel) => pixelCorners(order, pixel));
      for (let pixel = 0; pixel < count(order); pixel++) {
        const touching = corners.flatMap((theirs, other) =>
          other !== pixel && theirs.some((c) => corners[pixel]!.some((d) => separationRad(c, d) < 1e-9)) ? [other] : [],
        );
        expect(neighbours(order, pixel).sort((a, b) => a - b)).toEqual(touching);
      }
    }
  });

  it("are neighbours of each other", () => {
    fc.assert(
      fc.property(anOrder, aDir, (order, dir) => {
        const pixel = pixelOf(order, dir);
        for (const near of neighbours(order, pixel)) expect(neighbours(order, near)).toContain(pixel);
      }),
    );
  });
});

describe("pixels in a cone", () => {
  it("never miss the pixel of a direction inside", () => {
    const anyRadius = fc.oneof(anAngle(0, 0.05), anAngle(0, 0.5), anAngle(0, Math.PI));
    const small = fc.integer({ min: 0, max: 5 });
    fc.assert(
      fc.property(small, aDir, anyRadius, anAngle(0, TWO_PI), anAngle(0, 1), (order, centre, radius, angle, part) => {
        const pixels = pixelsInCone(order, centre, radius);
        for (const p of [part, 1 - 1e-9]) {
          expect(pixels).toContain(pixelOf(order, offsetDir(centre, angle, radius * p)));
        }
      }),
      { numRuns: 2000 },
    );
    fc.assert(
      fc.property(anOrder, aDir, anAngle(0, 0.02), anAngle(0, TWO_PI), (order, centre, radius, angle) => {
        expect(pixelsInCone(order, centre, radius)).toContain(
          pixelOf(order, offsetDir(centre, angle, radius * (1 - 1e-9))),
        );
      }),
      { numRuns: 1000 },
    );
  });

  it("hold the pixel of the axis however narrow the cone", () => {
    fc.assert(
      fc.property(anOrder, aDir, (order, dir) => {
        expect(pixelsInCone(order, dir, 0)).toContain(pixelOf(order, dir));
      }),
      { numRuns: 1000 },
    );
  });

  it("come in rising order, without repeats, all of them for the whole sphere", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5 }), aDir, anAngle(0, 3), (order, dir, radius) => {
        const pixels = pixelsInCone(order, dir, radius);
        for (let i = 1; i < pixels.length; i++) expect(pixels[i]! > pixels[i - 1]!).toBe(true);
      }),
    );
    expect(pixelsInCone(3, [0, 0, 1], Math.PI)).toHaveLength(count(3));
    expect(pixelsInCone(3, [0, 0, 1], 9)).toHaveLength(count(3));
  });

  it("are few beside those that touch", () => {
    fc.assert(
      fc.property(aDir, (dir) => {
        // 10 degrees at order 6: 373 pixels by area, and a ring of the circumference's length on each side.
        expect(pixelsInCone(6, dir, 0.1745).length).toBeLessThan(373 * 1.35);
      }),
    );
  });

  it("go into the given array, emptied first", () => {
    const out = [99, 98];
    expect(pixelsInCone(0, [0, 0, 1], 0.1, out)).toBe(out);
    expect(out).toEqual([0, 1, 2, 3]);
  });
});

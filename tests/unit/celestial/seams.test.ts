/** One test for each seam of the sky that is made here: Dir, MasDir, Mat3, TileKey, StarId. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { exactHypot3 } from "#core/celestial/exactMath.ts";
import { MAX_ORDER, starId, starIdParts } from "#core/celestial/healpix.ts";
import { mulMatVec, rotationAbout } from "#core/celestial/matrix.ts";
import { dirFromMas, dirFromRadec, masFromDir, separationDas, separationRad } from "#core/celestial/vector.ts";
import { InputError } from "#core/seams/errors.ts";
import { aDir, anAngle } from "./arbitrary.ts";

const aMasDir = fc.record({
  raMas: fc.integer({ min: 0, max: 1_295_999_999 }),
  decMas: fc.integer({ min: -323_999_000, max: 323_999_000 }),
});

it("Dir: a unit vector, +x to the March equinox, +z to the north pole", () => {
  expect(dirFromRadec(0, 0)).toEqual([1, 0, 0]);
  expect(dirFromRadec(1, Math.PI / 2)[2]).toBe(1);
  expect(dirFromRadec(Math.PI / 2, 0)[1]).toBe(1);
  fc.assert(
    fc.property(aDir, (dir) => {
      expect(Math.abs(exactHypot3(...dir) - 1)).toBeLessThan(4e-16);
    }),
  );
});

it("MasDir: whole milliarcseconds that survive the way to a vector and back", () => {
  fc.assert(
    fc.property(aMasDir, (at) => {
      expect(masFromDir(dirFromMas(at))).toEqual(at);
    }),
  );
  // Just short of a full turn rounds to 0, not to 1 296 000 000.
  expect(masFromDir(dirFromRadec(-1e-12, 0))).toEqual({ raMas: 0, decMas: 0 });
  expect(separationDas({ raMas: 0, decMas: 0 }, { raMas: 1_295_999_900, decMas: 0 })).toBe(1);
  expect(separationDas({ raMas: 0, decMas: 324_000_000 }, { raMas: 5, decMas: -324_000_000 })).toBe(6_480_000);
});

it("Mat3: row-major, out = m · v", () => {
  fc.assert(
    fc.property(aDir, anAngle(-7, 7), aDir, (axis, angle, v) => {
      const m = rotationAbout(axis, angle);
      expect(mulMatVec(m, v)[1]).toBe(m[3]! * v[0] + m[4]! * v[1] + m[5]! * v[2]);
      expect(separationRad(mulMatVec(m, axis), axis)).toBeLessThan(1e-15);
    }),
  );
});

it("TileKey and StarId: one number for tile, layer and rank, and the way back", () => {
  const aTile = fc.integer({ min: 0, max: MAX_ORDER }).chain((order) =>
    fc.record({
      order: fc.constant(order),
      pixel: fc.integer({ min: 0, max: 12 * 4 ** order - 1 }),
      layer: fc.integer({ min: 0, max: 63 }),
    }),
  );
  fc.assert(
    fc.property(aTile, fc.integer({ min: 0, max: 65535 }), (key, rank) => {
      const id = starId(key, rank);
      expect(Number.isSafeInteger(id)).toBe(true);
      expect(starIdParts(id)).toEqual({ key, rank });
    }),
  );
  expect(starId({ order: 0, pixel: 0, layer: 0 }, 0)).toBe(4 * 64 * 65536);
  for (const [pixel, layer, rank] of [
    [12, 0, 0],
    [0, 64, 0],
    [0, 0, 65536],
    [0.5, 0, 0],
    [-1, 0, 0],
  ] as const) {
    expect(() => starId({ order: 0, pixel, layer }, rank)).toThrow(InputError);
  }
});

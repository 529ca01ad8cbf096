import fc from "fast-check";
import { expect, it } from "vitest";
import { mulMat, mulMatVec, rotationAbout, transpose } from "#core/celestial/matrix.ts";
import { separationRad } from "#core/celestial/vector.ts";
import { aDir, anAngle } from "./arbitrary.ts";

it("turns right-handed about the axis", () => {
  const turned = mulMatVec(rotationAbout([0, 0, 1], Math.PI / 2), [1, 0, 0]);
  expect(separationRad(turned, [0, 1, 0])).toBeLessThan(1e-15);
});

it("undoes a rotation by its transpose and keeps angles", () => {
  fc.assert(
    fc.property(aDir, anAngle(-10, 10), aDir, aDir, (axis, angle, v, w) => {
      const m = rotationAbout(axis, angle);
      expect(separationRad(mulMatVec(transpose(m), mulMatVec(m, v)), v)).toBeLessThan(2e-15);
      expect(Math.abs(separationRad(mulMatVec(m, v), mulMatVec(m, w)) - separationRad(v, w))).toBeLessThan(3e-15);
    }),
  );
});

it("does the right-hand factor first", () => {
  const a = rotationAbout([1, 0, 0], 0.7);
  const b = rotationAbout([0, 1, 0], -0.4);
  const v = [0.6, 0, 0.8] as const;
  expect(separationRad(mulMatVec(mulMat(a, b), v), mulMatVec(a, mulMatVec(b, v)))).toBeLessThan(1e-15);
});

it("writes where it is told, the input itself included", () => {
  const quarter = rotationAbout([0, 0, 1], Math.PI / 2);
  const v = new Float32Array([1, 0, 0]);
  expect(mulMatVec(quarter, v, v)).toBe(v);
  expect([...v]).toEqual([expect.closeTo(0, 7), 1, 0]);
  const out = new Float64Array(9);
  expect(mulMat(quarter, quarter, out)).toBe(out);
  expect(out[0]).toBeCloseTo(-1, 15);
  expect(transpose(quarter, out)[1]).toBeCloseTo(1, 15);
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { offsetDir } from "#core/celestial/vector.ts";
import { viewFromIcrs } from "#core/optics/viewFrame.ts";
import type { Dir } from "#core/seams/index.ts";

const DEG = Math.PI / 180;
const EQUINOX: Dir = [1, 0, 0];
const POLE: Dir = [0, 0, 1];

/** Where a direction stands in a picture, on the tangent plane. */
function place(view: ArrayLike<number>, dir: Dir): [number, number] {
  const row = (i: number) => view[i]! * dir[0] + view[i + 1]! * dir[1] + view[i + 2]! * dir[2];
  return [row(0) / row(6), row(3) / row(6)];
}
const [north, east] = [offsetDir(EQUINOX, 0, DEG), offsetDir(EQUINOX, 90 * DEG, DEG)];
const t = Math.tan(DEG);
const view = (parity: 1 | -1, rotationDeg: number) =>
  viewFromIcrs(EQUINOX, POLE, { parity, rotationRad: rotationDeg * DEG }, new Float64Array(9));
const near = ([x, y]: [number, number], [wantX, wantY]: [number, number]) => {
  expect(x).toBeCloseTo(wantX, 12);
  expect(y).toBeCloseTo(wantY, 12);
};

describe("viewFromIcrs", () => {
  it("with the pole up: north above, east to the left, as in the sky", () => {
    near(place(view(1, 0), north), [0, t]);
    near(place(view(1, 0), east), [-t, 0]);
  });

  it("flips left and right first, then turns clockwise", () => {
    near(place(view(-1, 0), north), [0, t]);
    near(place(view(-1, 0), east), [t, 0]);
    near(place(view(1, 90), north), [t, 0]);
    near(place(view(1, 90), east), [0, t]);
    near(place(view(-1, 90), north), [t, 0]);
    near(place(view(-1, 90), east), [0, -t]);
    near(place(view(1, 180), north), [0, -t]);
  });

  it("is a rotation, or one with a flip, whatever it is given", () => {
    const unitDir = fc
      .tuple(fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }), fc.double({ min: -1.5, max: 1.5, noNaN: true }))
      .map(([ra, dec]): Dir => [Math.cos(dec) * Math.cos(ra), Math.cos(dec) * Math.sin(ra), Math.sin(dec)]);
    const turn = fc.double({ min: -7, max: 7, noNaN: true });
    fc.assert(
      fc.property(unitDir, turn, fc.constantFrom<1 | -1>(1, -1), (dir, rotationRad, parity) => {
        const m = viewFromIcrs(dir, POLE, { parity, rotationRad }, new Float64Array(9));
        for (let i = 0; i < 3; i++) {
          for (let j = 0; j < 3; j++) {
            let sum = 0;
            for (let k = 0; k < 3; k++) sum += m[3 * i + k]! * m[3 * j + k]!;
            expect(sum).toBeCloseTo(i === j ? 1 : 0, 12);
          }
        }
        // Right, up and forward are left-handed in the direct view: one looks from inside the sphere.
        const minor = (j: number, k: number) => m[3 + j]! * m[6 + k]! - m[3 + k]! * m[6 + j]!;
        const whole = m[0]! * minor(1, 2) + m[1]! * minor(2, 0) + m[2]! * minor(0, 1);
        expect(whole).toBeCloseTo(-parity, 12);
      }),
    );
  });
});

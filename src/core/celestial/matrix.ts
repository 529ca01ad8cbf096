/** 3x3 rotations, row-major, nine numbers: `out = m · v`. */
import type { Dir, Mat3 } from "#core/seams/index.ts";
import { exactCos, exactSin } from "./exactMath.ts";

type Vec3 = [number, number, number];

/** `m · v`, written into `out` (which may be `v` itself) where given. */
export function mulMatVec(m: Mat3, v: ArrayLike<number>): Vec3;
export function mulMatVec<T extends Vec3 | Float64Array | Float32Array>(m: Mat3, v: ArrayLike<number>, out: T): T;
export function mulMatVec(
  m: Mat3,
  v: ArrayLike<number>,
  out: Vec3 | Float64Array | Float32Array = [0, 0, 0],
): Vec3 | Float64Array | Float32Array {
  const x = v[0]!;
  const y = v[1]!;
  const z = v[2]!;
  out[0] = m[0]! * x + m[1]! * y + m[2]! * z;
  out[1] = m[3]! * x + m[4]! * y + m[5]! * z;
  out[2] = m[6]! * x + m[7]! * y + m[8]! * z;
  return out;
}

/** `a · b`: the rotation that does `b` first. `out` (fresh if left out) must be neither. */
export function mulMat(a: Mat3, b: Mat3, out: Float64Array = new Float64Array(9)): Float64Array {
  for (let row = 0; row < 9; row += 3) {
    for (let col = 0; col < 3; col++) {
      out[row + col] = a[row]! * b[col]! + a[row + 1]! * b[col + 3]! + a[row + 2]! * b[col + 6]!;
    }
  }
  return out;
}

/** The transpose, which undoes a rotation. `out` (fresh if left out) must not be `m`. */
export function transpose(m: Mat3, out: Float64Array = new Float64Array(9)): Float64Array {
  for (let row = 0; row < 3; row++) {
    for (let col = 0; col < 3; col++) out[row * 3 + col] = m[col * 3 + row]!;
  }
  return out;
}

/** The rotation that turns directions about the unit vector `axis` by `angleRad`, right-handed (Rodrigues' formula). */
export function rotationAbout(axis: Dir, angleRad: number): Float64Array {
  const [x, y, z] = axis;
  const c = exactCos(angleRad);
  const s = exactSin(angleRad);
  const k = 1 - c;
  return Float64Array.of(
    c + k * x * x,
    k * x * y - s * z,
    k * x * z + s * y,
    k * x * y + s * z,
    c + k * y * y,
    k * y * z - s * x,
    k * x * z - s * y,
    k * y * z + s * x,
    c + k * z * z,
  );
}

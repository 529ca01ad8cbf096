/**
 * The five azimuthal projections of use for views and charts (Calabretta & Greisen 2002, A&A 395, 1077, section 5.1).
 * Input is a unit vector in a frame that looks along +z: x right, y up. Scale at the centre is 1 per radian.
 */
import { exactAtan2, exactCos, exactSin } from "./exactMath.ts";

/** What `project` (two numbers) and `unproject` (three) write into: a plain or typed array. */
export type NumbersOut = number[] | Float64Array | Float32Array;

export interface Projection {
  /** Writes the plane point of a unit vector into `out` and tells whether it is on the map; where not, `out` is left alone. */
  project(x: number, y: number, z: number, out: NumbersOut): boolean;
  /** Writes the unit vector of a plane point into `out` and tells whether the point is on the map; where not, `out` is left alone. */
  unproject(u: number, v: number, out: NumbersOut): boolean;
}

function put2(out: NumbersOut, u: number, v: number): true {
  out[0] = u;
  out[1] = v;
  return true;
}

function put3(out: NumbersOut, x: number, y: number, z: number): true {
  out[0] = x;
  out[1] = y;
  out[2] = z;
  return true;
}

/** 1 + z without the loss of digits near the antipode. */
function onePlusZ(x: number, y: number, z: number): number {
  return z < 0 ? (x * x + y * y) / (1 - z) : 1 + z;
}

/** Straight lines are great circles; less than a hemisphere. Views through instruments. */
export const gnomonic: Projection = {
  project: (x, y, z, out) => z > 0 && put2(out, x / z, y / z),
  unproject(u, v, out) {
    const z = 1 / Math.sqrt(1 + u * u + v * v);
    return put3(out, u * z, v * z, z);
  },
};

/** Keeps shapes; all but the antipode. The naked eye's view. */
export const stereographic: Projection = {
  project(x, y, z, out) {
    const w = onePlusZ(x, y, z);
    return w > 0 && put2(out, (2 * x) / w, (2 * y) / w);
  },
  unproject(u, v, out) {
    const r2 = u * u + v * v;
    const k = 4 / (4 + r2);
    return put3(out, u * k, v * k, (4 - r2) / (4 + r2));
  },
};

/** Keeps distances from the centre; the whole sphere but the antipode. */
export const equidistant: Projection = {
  project(x, y, z, out) {
    const rho = Math.sqrt(x * x + y * y);
    if (rho === 0) return z > 0 && put2(out, 0, 0);
    const k = exactAtan2(rho, z) / rho;
    return put2(out, x * k, y * k);
  },
  unproject(u, v, out) {
    const r = Math.sqrt(u * u + v * v);
    const k = r === 0 ? 1 : exactSin(r) / r;
    return r < Math.PI && put3(out, u * k, v * k, exactCos(r));
  },
};

/** Keeps areas; the whole sphere but the antipode. Star counts and all-sky charts. */
export const equalArea: Projection = {
  project(x, y, z, out) {
    const k = Math.sqrt(2 / onePlusZ(x, y, z));
    return k < Number.POSITIVE_INFINITY && put2(out, x * k, y * k);
  },
  unproject(u, v, out) {
    const r2 = u * u + v * v;
    const k = Math.sqrt(1 - r2 / 4);
    return r2 < 4 && put3(out, u * k, v * k, 1 - r2 / 2);
  },
};

/** A hemisphere seen from afar. */
export const orthographic: Projection = {
  project: (x, y, z, out) => z >= 0 && put2(out, x, y),
  unproject(u, v, out) {
    const r2 = u * u + v * v;
    return r2 <= 1 && put3(out, u, v, Math.sqrt(1 - r2));
  },
};

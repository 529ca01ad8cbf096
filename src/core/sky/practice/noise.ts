/** Smooth chance over the sphere: what makes one part of a sky fuller than the next. */
import type { Dir } from "#core/seams/index.ts";

/** Standard deviation of lattice values blended over a cell: sqrt(1/3) times sqrt(26/35)^3 of the smooth step. */
const SPREAD = 0.3698;

/** A value in [-1, 1) of a lattice point: the finaliser of MurmurHash3 (A. Appleby, public domain, from memory). */
function latticeValue(seed: number, x: number, y: number, z: number): number {
  let h = seed ^ Math.imul(x, 0x8da6b343) ^ Math.imul(y, 0xd8163841) ^ Math.imul(z, 0xcb1ab31f);
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) / 2147483648;
}

const smooth = (t: number): number => t * t * (3 - 2 * t);

const between = (low: number, high: number, share: number): number => low + share * (high - low);

/** A field over the sphere. */
export type SkyNoise = (dir: Dir) => number;

/**
 * A field of mean 0 and variance 1 whose hills are about `spacingRad` apart: values on a cubic lattice through which the
 * sphere is cut, blended smoothly. The corners of the last cube asked about are kept: places come in near one another.
 */
export function createSkyNoise(seed: number, spacingRad: number): SkyNoise {
  let [x, y, z] = [Number.NaN, Number.NaN, Number.NaN];
  const corners = new Float64Array(8);
  const enter = (nextX: number, nextY: number, nextZ: number) => {
    [x, y, z] = [nextX, nextY, nextZ];
    for (let i = 0; i < 8; i++) corners[i] = latticeValue(seed, x + (i & 1), y + ((i >> 1) & 1), z + (i >> 2));
  };
  const onFace = (first: number, u: number, v: number) => {
    const low = between(corners[first]!, corners[first + 1]!, u);
    return between(low, between(corners[first + 2]!, corners[first + 3]!, u), v);
  };
  return (dir) => {
    const px = dir[0] / spacingRad;
    const py = dir[1] / spacingRad;
    const pz = dir[2] / spacingRad;
    const inX = Math.floor(px);
    const inY = Math.floor(py);
    const inZ = Math.floor(pz);
    if (inX !== x || inY !== y || inZ !== z) enter(inX, inY, inZ);
    const u = smooth(px - inX);
    const v = smooth(py - inY);
    return between(onFace(0, u, v), onFace(4, u, v), smooth(pz - inZ)) / SPREAD;
  };
}

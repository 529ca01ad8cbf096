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

function alongX(seed: number, x: number, y: number, z: number, u: number): number {
  const low = latticeValue(seed, x, y, z);
  return low + u * (latticeValue(seed, x + 1, y, z) - low);
}

function alongY(seed: number, x: number, y: number, z: number, u: number, v: number): number {
  const low = alongX(seed, x, y, z, u);
  return low + v * (alongX(seed, x, y + 1, z, u) - low);
}

/**
 * A field of mean 0 and variance 1 whose hills are about `spacingRad` apart: values on a cubic lattice through which the
 * sphere is cut, blended smoothly.
 */
export function skyNoise(seed: number, spacingRad: number, dir: Dir): number {
  const px = dir[0] / spacingRad;
  const py = dir[1] / spacingRad;
  const pz = dir[2] / spacingRad;
  const x = Math.floor(px);
  const y = Math.floor(py);
  const z = Math.floor(pz);
  const u = smooth(px - x);
  const v = smooth(py - y);
  const low = alongY(seed, x, y, z, u, v);
  return (low + smooth(pz - z) * (alongY(seed, x, y, z + 1, u, v) - low)) / SPREAD;
}

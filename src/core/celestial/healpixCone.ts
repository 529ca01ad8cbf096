/** Which HEALPix pixels a cone touches. */
import type { Dir } from "#core/seams/index.ts";
import { exactCos, exactSin } from "./exactMath.ts";
import { MAX_ORDER, placeOfPixel } from "./healpixPixel.ts";

const scratch = new Float64Array(3);
/** How many pixels are written so far: emptying the array first would throw its store away. */
let found = 0;

/** Cosine and sine of the radius of a circle about the centre that holds any pixel of the order: the one whose corner touches |z| = 2/3. */
const REACH = Array.from({ length: MAX_ORDER + 1 }, (_, order) => {
  const step = (1 - 1 / (1 << order)) ** 2;
  const z = 1 - step / 3;
  const phi = Math.PI / 4 / (1 << order);
  const r = Math.sqrt(5) / 3;
  const cos = (2 / 3) * z + r * Math.sqrt(1 - z * z) * exactCos(phi);
  return { cos, sin: Math.sqrt(1 - cos * cos) };
});

/**
 * Every pixel that touches the cone, in rising order, and perhaps a few beside it; never one too few. Written into `out`
 * where given (in place of what it held): then nothing is allocated.
 */
export function pixelsInCone(order: number, centre: Dir, radiusRad: number, out: number[] = []): number[] {
  found = 0;
  const cos = exactCos(Math.min(radiusRad, Math.PI));
  const sin = exactSin(Math.min(radiusRad, Math.PI));
  for (let face = 0; face < 12; face++) descend(0, face, order, centre, cos, sin, out);
  if (out.length !== found) out.length = found;
  return out;
}

function descend(
  level: number,
  pixel: number,
  order: number,
  centre: Dir,
  cos: number,
  sin: number,
  out: number[],
): void {
  const reach = REACH[level]!;
  // Where cone radius and pixel radius together pass 180 degrees nothing can be left out.
  if (cos * reach.sin + sin * reach.cos > 0) {
    placeOfPixel(level, pixel, 0.5, 0.5, scratch);
    const facing = centre[0] * scratch[0]! + centre[1] * scratch[1]! + centre[2] * scratch[2]!;
    // 1e-12 covers the rounding of cosines near 1 many times over.
    if (facing < cos * reach.cos - sin * reach.sin - 1e-12) return;
  }
  if (level === order) {
    out[found++] = pixel;
    return;
  }
  for (let child = 0; child < 4; child++) descend(level + 1, pixel * 4 + child, order, centre, cos, sin, out);
}

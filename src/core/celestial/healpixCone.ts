/** Which HEALPix pixels a cone touches. */
import type { Dir } from "#core/seams/index.ts";
import { exactCos, exactSin } from "./exactMath.ts";
import { MAX_ORDER, placeOfPixel } from "./healpixPixel.ts";

/** How many pixels are written so far: emptying the array first would throw its store away. */
let found = 0;
/** The cone in hand: its centre, cosine and sine of its radius. Numbers handed down a recursion would each be made anew on the heap. */
const cone = new Float64Array(5);

/** Centres of the pixels of these orders are kept once they were asked for; x is NaN until then. */
const KEPT_ORDERS = 6;
const centres = Array.from({ length: KEPT_ORDERS + 1 }, () => new Float64Array());
const scratch = new Float64Array(3);

/** Where the centre of a pixel is to be found: in the list of its order, or in `scratch` where there is none. */
function centreIn(order: number, pixel: number): Float64Array {
  if (order > KEPT_ORDERS) {
    placeOfPixel(order, pixel, 0.5, 0.5, scratch);
    return scratch;
  }
  if (centres[order]!.length === 0) centres[order] = new Float64Array(36 << (2 * order)).fill(Number.NaN);
  const list = centres[order]!;
  if (Number.isNaN(list[3 * pixel])) {
    placeOfPixel(order, pixel, 0.5, 0.5, scratch);
    list.set(scratch, 3 * pixel);
  }
  return list;
}

/** Cosine of the angle between the cone's axis and a pixel's centre. */
function facingOf(order: number, pixel: number): number {
  const list = centreIn(order, pixel);
  const at = list === scratch ? 0 : 3 * pixel;
  return cone[0]! * list[at]! + cone[1]! * list[at + 1]! + cone[2]! * list[at + 2]!;
}

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
  cone.set(centre);
  cone[3] = exactCos(Math.min(radiusRad, Math.PI));
  cone[4] = exactSin(Math.min(radiusRad, Math.PI));
  for (let face = 0; face < 12; face++) descend(0, face, order, out);
  if (out.length !== found) out.length = found;
  return out;
}

function descend(level: number, pixel: number, order: number, out: number[]): void {
  const reach = REACH[level]!;
  const cos = cone[3]!;
  const sin = cone[4]!;
  // Where cone radius and pixel radius together pass 180 degrees nothing can be left out.
  // 1e-12 covers the rounding of cosines near 1 many times over.
  if (cos * reach.sin + sin * reach.cos > 0 && facingOf(level, pixel) < cos * reach.cos - sin * reach.sin - 1e-12)
    return;
  if (level === order) {
    out[found++] = pixel;
    return;
  }
  for (let child = 0; child < 4; child++) descend(level + 1, pixel * 4 + child, order, out);
}

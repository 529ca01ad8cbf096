/** The stars of a field as an eye gets them: places in the picture and brightness, without their directions. */

import { gearById } from "#core/optics/gear.ts";
import { fieldRadiusPlane, projectionOf } from "#core/optics/viewFrame.ts";
import type { Mat3, StarBlock } from "#core/seams/index.ts";
import type { SeenField } from "./seenField.ts";

/** Planar; the first `count` places hold. x right and y up in the picture, in radii of the field stop. */
export interface VisibleStars {
  count: number;
  x: Float32Array;
  y: Float32Array;
  milliMag: Int16Array;
  colourBV: Float32Array;
}

const FIRST_SIZE = 512;

export function emptyStars(size = FIRST_SIZE): VisibleStars {
  return {
    count: 0,
    x: new Float32Array(size),
    y: new Float32Array(size),
    milliMag: new Int16Array(size),
    colourBV: new Float32Array(size),
  };
}

/**
 * Every star within the field stop and no fainter than the limit, in the order of the blocks; invented ones are nobody's, and
 * left out. Written into `out` where given,
 * whose arrays grow when they must.
 * @param viewFromIcrs row-major: rows right, up and forward of the picture
 * @param limitMilliMag default: what free gaze reaches
 */
export function visibleStars(
  seen: SeenField,
  viewFromIcrs: Mat3,
  out = emptyStars(),
  limitMilliMag = seen.limitMilliMag,
): VisibleStars {
  const gear = gearById(seen.gear);
  const stereographic = projectionOf(gear) === "stereographic";
  const scale = (stereographic ? 2 : 1) / fieldRadiusPlane(gear);
  out.count = 0;
  for (const block of seen.blocks)
    if (!block.invented) addBlock(block, viewFromIcrs, stereographic ? 1 : 0, scale, limitMilliMag, out);
  return out;
}

/** Gnomonic divides by z, stereographic by 1 + z: `shift` is 0 or 1. */
function addBlock(
  { count, dirs, milliMag, colourBV }: StarBlock,
  m: Mat3,
  shift: 0 | 1,
  scale: number,
  limitMilliMag: number,
  out: VisibleStars,
): void {
  for (let i = 0; i < count && milliMag[i]! <= limitMilliMag; i++) {
    const x = dirs[3 * i]!;
    const y = dirs[3 * i + 1]!;
    const z = dirs[3 * i + 2]!;
    const depth = shift + m[6]! * x + m[7]! * y + m[8]! * z;
    if (depth <= 0) continue;
    const right = (scale * (m[0]! * x + m[1]! * y + m[2]! * z)) / depth;
    const up = (scale * (m[3]! * x + m[4]! * y + m[5]! * z)) / depth;
    if (right * right + up * up > 1) continue;
    if (out.count === out.x.length) grow(out);
    out.x[out.count] = right;
    out.y[out.count] = up;
    out.milliMag[out.count] = milliMag[i]!;
    out.colourBV[out.count] = colourBV[i]!;
    out.count += 1;
  }
}

function grow(stars: VisibleStars): void {
  const wider = emptyStars(2 * stars.x.length);
  wider.x.set(stars.x);
  wider.y.set(stars.y);
  wider.milliMag.set(stars.milliMag);
  wider.colourBV.set(stars.colourBV);
  Object.assign(stars, wider, { count: stars.count });
}

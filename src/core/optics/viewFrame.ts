/** The view frame: where a direction stands in the picture that the eye gets. */
import type { Dir, Gear, Orientation } from "#core/seams/index.ts";

const RAD_PER_DEG = Math.PI / 180;

/**
 * Writes the rotation ICRS -> view into `out` (row-major 9; rows are right, up and forward of the picture) and allocates
 * nothing. Start from the direct view (zenith up, right = forward x up), flip x where parity is -1, then turn the picture
 * clockwise by `rotationRad`.
 * @param zenith unit vector, ICRS; any vector that is up in the direct view and not along the pointing will do
 */
export function viewFromIcrs<Out extends Float64Array | Float32Array>(
  pointing: Dir,
  zenith: Dir,
  orientation: Orientation,
  out: Out,
): Out {
  const fx = pointing[0];
  const fy = pointing[1];
  const fz = pointing[2];
  const along = zenith[0] * fx + zenith[1] * fy + zenith[2] * fz;
  let ux = zenith[0] - along * fx;
  let uy = zenith[1] - along * fy;
  let uz = zenith[2] - along * fz;
  const length = Math.sqrt(ux * ux + uy * uy + uz * uz);
  ux /= length;
  uy /= length;
  uz /= length;
  const rx = fy * uz - fz * uy;
  const ry = fz * ux - fx * uz;
  const rz = fx * uy - fy * ux;
  const c = Math.cos(orientation.rotationRad);
  const s = Math.sin(orientation.rotationRad);
  const pc = orientation.parity * c;
  const ps = orientation.parity * s;
  out[0] = pc * rx + s * ux;
  out[1] = pc * ry + s * uy;
  out[2] = pc * rz + s * uz;
  out[3] = c * ux - ps * rx;
  out[4] = c * uy - ps * ry;
  out[5] = c * uz - ps * rz;
  out[6] = fx;
  out[7] = fy;
  out[8] = fz;
  return out;
}

/** Instruments show true angles on a plane; the wide views of the naked eye keep shapes. */
export function projectionOf(gear: Gear): "gnomonic" | "stereographic" {
  return gear.kind === "eye" || gear.kind === "sight" ? "stereographic" : "gnomonic";
}

/** Radius of the field stop on the plane of the gear's projection: tan(field/2), or 2 tan(field/4). */
export function fieldRadiusPlane(gear: Gear): number {
  const fieldRad = gear.fieldDeg * RAD_PER_DEG;
  return projectionOf(gear) === "gnomonic" ? Math.tan(fieldRad / 2) : 2 * Math.tan(fieldRad / 4);
}

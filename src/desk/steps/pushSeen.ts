/** Which way, and how far, the next mark stands in an instrument's own image. */
import { altAzFromDir, equatorialOfDateFromIcrs, horizonFromIcrs, zenithDir } from "#core/celestial/frames.ts";
import { gearById } from "#core/optics/gear.ts";
import { acrossAxis2, axesFromDir, tubeRollRad } from "#core/optics/mount.ts";
import { imageOrientation } from "#core/optics/orientation.ts";
import { fieldRadiusPlane, projectionOf, viewFromIcrs } from "#core/optics/viewFrame.ts";
import type { Dir, GearId, HopSpec } from "#core/seams/index.ts";
import type { Push } from "./stepShape.ts";

const MAS_PER_DEG = 3_600_000;
/** The least depth at which a place is still taken to lie before the instrument. */
const LEAST_DEPTH = 0.05;

type Standing = Pick<HopSpec, "mount" | "stance" | "siteMas" | "startMs">;

/**
 * The rotation ICRS -> view (row-major 9) of an instrument that points there at a hop's start.
 * @throws InputError where no instrument has this id
 */
export function viewOfGear({ mount, stance, siteMas, startMs }: Standing, gearId: GearId, pointing: Dir): Float64Array {
  const site = { latDeg: siteMas[0] / MAS_PER_DEG, lonDeg: siteMas[1] / MAS_PER_DEG, heightM: 0 };
  const horizon = horizonFromIcrs(site, startMs);
  const frame = mount === "equatorial" ? equatorialOfDateFromIcrs(site, startMs) : horizon;
  const zenith = zenithDir(horizon);
  const { axis1Rad, axis2Rad } = axesFromDir(mount, frame, pointing);
  const top = acrossAxis2(mount, frame, axis1Rad, axis2Rad);
  const rollRad = tubeRollRad(mount, pointing, zenith, top);
  const { altRad } = altAzFromDir(horizon, pointing);
  const orientation = imageOrientation(gearById(gearId), altRad, rollRad, stance);
  return viewFromIcrs(pointing, zenith, orientation, new Float64Array(9));
}

/** A place in a view, radii of the instrument's field to the right and up; far places are brought to the edge of depth. */
export function placeInView(view: Float64Array, gearId: GearId, [x, y, z]: Dir): Push {
  const gear = gearById(gearId);
  const along = (row: number) => view[row]! * x + view[row + 1]! * y + view[row + 2]! * z;
  const shift = projectionOf(gear) === "stereographic" ? 1 : 0;
  const scale = (1 + shift) / (fieldRadiusPlane(gear) * Math.max(LEAST_DEPTH, shift + along(6)));
  return { right: along(0) * scale, up: along(3) * scale };
}

/** The push from one mark to the next as the instrument shows it while it points at the first. */
export const pushSeen = (spec: Standing, gearId: GearId, from: Dir, to: Dir): Push =>
  placeInView(viewOfGear(spec, gearId, from), gearId, to);

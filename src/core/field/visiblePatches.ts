/** What is no star in a field, as an eye gets it: places in the picture, without names or directions. */
import { gearById } from "#core/optics/gear.ts";
import { fieldRadiusPlane, projectionOf } from "#core/optics/viewFrame.ts";
import type { Band, Mat3, ObjectKind } from "#core/seams/index.ts";
import type { SeenField } from "./seenField.ts";

/** x right and y up in the picture, in radii of the field stop. */
export type Patch = { readonly x: number; readonly y: number; readonly band: Band };

/** These look like any star, or are stars as the others are. */
const STARS: ReadonlySet<ObjectKind> = new Set<ObjectKind>(["minorPlanet", "doubleStar", "asterism"]);

/**
 * The objects of a field that an eye tells from its stars, glows and knots, whose middle lies within the field stop; the
 * plainest first. `viewFromIcrs` as for stars.
 */
export function visiblePatches(seen: SeenField, m: Mat3): Patch[] {
  const gear = gearById(seen.gear);
  const shift = projectionOf(gear) === "stereographic" ? 1 : 0;
  const scale = (1 + shift) / fieldRadiusPlane(gear);
  return seen.objects
    .filter(({ object }) => !STARS.has(object.kind))
    .toSorted((a, b) => b.marginMag - a.marginMag)
    .flatMap(({ object: { dir }, band }) => {
      const along = (row: number) => m[row]! * dir[0] + m[row + 1]! * dir[1] + m[row + 2]! * dir[2];
      const depth = shift + along(6);
      const x = (scale * along(0)) / depth;
      const y = (scale * along(3)) / depth;
      return depth > 0 && x * x + y * y <= 1 ? [{ x, y, band }] : [];
    });
}

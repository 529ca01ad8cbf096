/** What the instrument in use shows now: stars as blocks, objects with how well they are seen, what has still to come. */
import { DEG, separationRad } from "#core/celestial/vector.ts";
import type {
  Band,
  Cone,
  Dir,
  Gear,
  GearId,
  Seeing,
  SkyObject,
  StarBlock,
  StarSource,
  TileKey,
} from "#core/seams/index.ts";
import { type AsOneStar, createAsOneStar } from "#core/sky/closePairs/asOneStar.ts";
import { createLimitHere, type LimitHere } from "./limitHere.ts";
import { createWithPoints, type WithPoints } from "./pointObjects.ts";

export type FieldInput = {
  /** Where the instrument points, unit vector, ICRS. */
  readonly pointing: Dir;
  readonly gear: Gear;
  /** Radius of the sky whose stars are wanted where more than the field is drawn; at first the field's own. */
  readonly starsRad?: number;
  readonly source: StarSource;
  readonly seeing: Seeing;
  /** The objects of the sky, in any number. */
  readonly objects: readonly SkyObject[];
};
export type SeenObject = { readonly object: SkyObject; readonly marginMag: number; readonly band: Band };
export interface SeenField {
  readonly gear: GearId;
  /**
   * Every block that may hold a star of the field; the blocks overhang it and go deeper than the limit. Where nothing
   * magnifies, pairs closer than 3' are one star. Objects that are points stand among them.
   */
  readonly blocks: readonly StarBlock[];
  /** Changes when `blocks` or `missing` would. */
  readonly version: number;
  readonly missing: readonly TileKey[];
  /** V of the faintest star at the centre, in 0.001 mag: to free gaze, and to a stare. */
  readonly limitMilliMag: number;
  readonly directMilliMag: number;
  /** Objects that reach into the field and are seen or at the edge of it, in the order of the input. */
  readonly objects: readonly SeenObject[];
  /** Changes when `objects` does. */
  readonly objectsVersion: number;
  /** What the naked eye does to close pairs; it knows its last answer. */
  readonly asOneStar: AsOneStar;
  /** Adds the objects that are points; it knows its last answer too. */
  readonly withPoints: WithPoints;
  /** Likewise for the limit. */
  readonly limitHere: LimitHere;
}
type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** Stars just below the limit are asked for too; fainter ones are noticed so seldom that no tile is brought for them. */
const SOFT_EDGE_MAG = 0.2;
const MILLI = 1000;
const ARCMIN = DEG / 60;

/** The circle of sky that the field stop lets in: a cone of half the true field, whatever the projection. */
export function fieldCone(pointing: Dir, gear: Gear): Cone {
  return { centre: pointing, radiusRad: (gear.fieldDeg / 2) * DEG };
}

/** A field with nothing in it, to be filled. */
export function emptyField(): SeenField {
  return {
    gear: "",
    blocks: [],
    version: 0,
    missing: [],
    limitMilliMag: 0,
    directMilliMag: 0,
    objects: [],
    objectsVersion: 0,
    asOneStar: createAsOneStar(),
    withPoints: createWithPoints(),
    limitHere: createLimitHere(),
  };
}

/**
 * Looks once. Pure but for `out`, which is filled and returned where given: then nothing is allocated as long as the field
 * keeps its tiles and objects.
 * @throws InputError where the seeing does not know the gear
 */
export function seenField(
  { pointing, gear, starsRad, source, seeing, objects }: FieldInput,
  out = emptyField(),
): SeenField {
  const seen: Mutable<SeenField> = out;
  const limits = out.limitHere(seeing, pointing, gear.id);
  const cone = fieldCone(pointing, gear);
  const resident = source.resident(
    starsRad === undefined ? cone : { centre: pointing, radiusRad: starsRad },
    limits.avertedMilliMag / MILLI + SOFT_EDGE_MAG,
  );
  seen.gear = gear.id;
  const byEye = gear.magnification === 1;
  seen.blocks = out.withPoints(byEye ? out.asOneStar(resident.blocks) : resident.blocks, objects);
  // The eye and an instrument may be answered with the same tiles, and show other stars.
  seen.version = 2 * resident.version + (byEye ? 1 : 0);
  seen.missing = resident.missing;
  seen.limitMilliMag = limits.avertedMilliMag;
  seen.directMilliMag = limits.directMilliMag;
  if (fillObjects(cone, gear.id, seeing, objects, seen.objects as SeenObject[])) seen.objectsVersion += 1;
  return out;
}

/** Writes the objects of the cone into the list and tells whether it changed. */
function fillObjects(
  { centre, radiusRad }: Cone,
  gear: GearId,
  seeing: Seeing,
  objects: readonly SkyObject[],
  list: SeenObject[],
): boolean {
  let count = 0;
  let changed = false;
  for (const object of objects) {
    if (separationRad(centre, object.dir) > radiusRad + (object.majorArcmin / 2) * ARCMIN) continue;
    const { marginMilliMag, band } = seeing.object(object.id, gear);
    if (band === "not") continue;
    const marginMag = marginMilliMag / MILLI;
    const there = list[count];
    if (there?.object !== object || there.marginMag !== marginMag) {
      list[count] = { object, marginMag, band };
      changed = true;
    }
    count += 1;
  }
  if (list.length === count) return changed;
  list.length = count;
  return true;
}

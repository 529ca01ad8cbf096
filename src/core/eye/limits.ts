/**
 * What the instruments show, by plain numbers: a limit for stars per instrument, moved by the brightness of the sky, and a
 * plain rule for what is no star. Stands until the eye is modelled, behind the same type. Whole numbers come out, by exact
 * mathematics, so that every engine decides alike.
 */
import { exactLog, roundHalfUp } from "#core/celestial/exactMath.ts";
import { gearById } from "#core/optics/gear.ts";
import type { Band, Gear, GearId, Seeing, SkyObject } from "#core/seams/index.ts";

export const PLAIN_SEEING_VERSION = 1;

/** The sky under which the table of instruments gives its limits: average country, mag/arcsec2. */
export const COUNTRY_SKY = 20.8;
/** How far a limit moves for 1 mag of sky: near what a 50 mm finder and the eye do between town and mountain (fitted). */
const LIMIT_PER_SKY = 0.4;
/** Staring straight at a thing costs so much (common practice, no source). */
const DIRECT_LOSS_MILLI_MAG = 1500;
/** Margins within this of nothing are an edge: the rule is no better. */
export const EDGE_MILLI_MAG = 400;

/**
 * Light spread over a patch counts for less the larger the patch appears: up to a degree or so all of it counts, beyond that
 * the limit falls with the root of the apparent area, 1.25 mag for ten times the area (Ricco's and Piper's laws of vision,
 * from memory). The place of the bend is fitted to worked margins of ten well known objects (Crumey 2014, MNRAS 442, 2600).
 */
const LOSS_PER_DEX = 1.25;
const BEND = 3.06;
/** The limits of the table end at 12.4, where the catalogue ends, so more power may not spread the light further. */
const MOST_POWER = 30;
/** A globular cluster's light is crowded to its middle (same fit). */
const CROWDED_GAIN = 1;
/** Where single stars of an open cluster begin: its handful of brightest lie so far below the whole. */
const MEMBERS_BELOW = 3;

export type PlainOptions = {
  /** Brightness of the sky, mag/arcsec2; about 18 (city) to 22 (mountain). Default: average country. */
  readonly skyMagPerArcsec2?: number | undefined;
  /** V of the faintest star, where a slider sets it for an instrument, whatever the sky. */
  readonly limitMag?: Readonly<Record<GearId, number>> | undefined;
};
type StarLimits = ReturnType<Seeing["star"]>;
type ObjectMargin = ReturnType<Seeing["object"]>;

/**
 * The plain seeing of all instruments. Direction and colour do not matter to it. Answers are made once for each instrument and
 * object and handed out again.
 * @returns a Seeing whose `star` throws InputError for an unknown instrument, and whose `object` finds an object that is not
 *   in the list not seen at all
 */
export function plainSeeing(options: PlainOptions, objects: readonly SkyObject[]): Seeing {
  const byId = new Map(objects.map((object) => [object.id, object]));
  const stars = new Map<GearId, StarLimits>();
  const margins = new Map<GearId, Map<string, ObjectMargin>>();
  const star = (id: GearId): StarLimits => {
    const known = stars.get(id);
    if (known) return known;
    const made = limitsOf(id, options);
    stars.set(id, made);
    return made;
  };
  return {
    version: PLAIN_SEEING_VERSION,
    star: (_dir, _colourBV, id) => star(id),
    object(objectId, id) {
      const ofGear = margins.get(id) ?? new Map<string, ObjectMargin>();
      margins.set(id, ofGear);
      const known = ofGear.get(objectId);
      if (known) return known;
      const object = byId.get(objectId);
      const gear = gearById(id);
      const made = object ? marginOf(object, gear, star(id).avertedMilliMag / 1000) : unknownObject(gear);
      ofGear.set(objectId, made);
      return made;
    },
  };
}

function limitsOf(id: GearId, { skyMagPerArcsec2 = COUNTRY_SKY, limitMag }: PlainOptions): StarLimits {
  const plain = gearById(id).plainLimitMag + LIMIT_PER_SKY * (skyMagPerArcsec2 - COUNTRY_SKY);
  const avertedMilliMag = roundHalfUp(1000 * (limitMag?.[id] ?? plain));
  return { avertedMilliMag, directMilliMag: avertedMilliMag - DIRECT_LOSS_MILLI_MAG };
}

function marginOf(object: SkyObject, gear: Gear, limit: number): ObjectMargin {
  const margin = limit - object.magV - lossOf(object, gear);
  const best =
    object.kind === "openCluster" || object.kind === "asterism" ? limit - object.magV - MEMBERS_BELOW : margin;
  const marginMilliMag = roundHalfUp(1000 * Math.max(margin, best));
  return { marginMilliMag, band: bandOf(marginMilliMag), bestMagnification: gear.magnification };
}

/** How much fainter a star would look the same, mag: never below 0. */
function lossOf({ kind, majorArcmin, minorArcmin }: SkyObject, { magnification }: Gear): number {
  if (kind === "doubleStar") return 0;
  const power = Math.min(MOST_POWER, magnification);
  const apparentArcmin2 = majorArcmin * minorArcmin * power * power;
  const loss = (LOSS_PER_DEX / Math.LN10) * exactLog(apparentArcmin2) - BEND;
  return Math.max(0, kind === "globularCluster" ? loss - CROWDED_GAIN : loss);
}

/** What a margin is called: more than 0.4 mag above the limit, more than that below, or at the edge. */
export function bandOf(marginMilliMag: number): Band {
  if (marginMilliMag > EDGE_MILLI_MAG) return "seen";
  return marginMilliMag < -EDGE_MILLI_MAG ? "not" : "edge";
}

function unknownObject({ magnification }: Gear): ObjectMargin {
  return { marginMilliMag: -99_000, band: "not", bestMagnification: magnification };
}

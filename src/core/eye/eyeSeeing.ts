/**
 * What the instruments show under given conditions: the model of sky, optics and eye as the seam that compiling, lessons and
 * the page stand on. Whole thousandths of a magnitude come out, by exact mathematics, so that every engine decides alike.
 */
import { roundHalfUp } from "#core/celestial/exactMath.ts";
import type { Site } from "#core/celestial/frames.ts";
import { gearById } from "#core/optics/gear.ts";
import type { Dir, Gear, GearId, Seeing, SkyObject } from "#core/seams/index.ts";
import { type Conditions, conditionsAt, skyHere } from "./conditions.ts";
import { starLimits } from "./instrument.ts";
import { bandOf, bestPower, NO_MARGIN_MAG, objectMargin } from "./margin.ts";

export const SEEING_VERSION = 3;

export type EyeSeeingOptions = {
  /** Light of the Milky Way beyond what the site's own measure holds, as at the zenith, mag/arcsec2; without it the sky has none. */
  readonly glowMuAt?: Conditions["glowMuAt"];
  /** V of the faintest star, where a slider or an aid sets it for an instrument, whatever the conditions. */
  readonly limitMag?: Readonly<Record<GearId, number>> | undefined;
};
/** A site as a lesson has it. */
export type Place = Site & { readonly skyMagPerArcsec2: number };
type ObjectMargin = ReturnType<Seeing["object"]>;

const milli = (mag: number) => roundHalfUp(1000 * mag);
/** Staring costs what it costs under the conditions, also where the limit is set by hand. */
function setTo(limitMag: number, averted: number, direct: number) {
  const avertedMilliMag = milli(limitMag);
  return { avertedMilliMag, directMilliMag: avertedMilliMag - milli(averted) + milli(direct) };
}

/**
 * The seeing of all instruments. Objects are worked out once for each instrument and handed out again.
 * @returns a Seeing whose `star` throws InputError for an unknown instrument, and whose `object` finds an object that is not
 *   in the list not seen at all
 */
export function eyeSeeing(
  conditions: Conditions,
  objects: readonly SkyObject[],
  { limitMag }: EyeSeeingOptions = {},
): Seeing {
  const byId = new Map(objects.map((object) => [object.id, object]));
  const margins = new Map<GearId, Map<string, ObjectMargin>>();
  const star = (dir: Dir, colourBV: number, id: GearId) => {
    const { avertedMag, directMag } = starLimits(gearById(id), conditions, skyHere(conditions, dir), colourBV);
    const set = limitMag?.[id];
    if (set !== undefined) return setTo(set, avertedMag, directMag);
    return { avertedMilliMag: milli(avertedMag), directMilliMag: milli(directMag) };
  };
  return {
    version: SEEING_VERSION,
    star,
    object(objectId, id) {
      const ofGear = margins.get(id) ?? new Map<string, ObjectMargin>();
      margins.set(id, ofGear);
      const known = ofGear.get(objectId);
      if (known) return known;
      const made = marginOf(byId.get(objectId), gearById(id), conditions);
      ofGear.set(objectId, made);
      return made;
    },
  };
}

function marginOf(object: SkyObject | undefined, gear: Gear, conditions: Conditions): ObjectMargin {
  if (!object) return { marginMilliMag: 1000 * NO_MARGIN_MAG, band: "not", bestMagnification: gear.magnification };
  const here = skyHere(conditions, object.dir);
  const marginMilliMag = milli(objectMargin(object, gear, conditions, here));
  // Sought only where it is asked for: a scan costs thirty times the margin.
  let best: number | undefined;
  return {
    marginMilliMag,
    band: bandOf(marginMilliMag, object.kind),
    get bestMagnification() {
      best ??= roundHalfUp(bestPower(object, gear, conditions, here).magnification);
      return best;
    },
  };
}

/** The conditions of a place at an instant, with the light of the Milky Way where a map of it is given. */
export const placeConditions = (place: Place, utcMs: number, options?: EyeSeeingOptions): Conditions => ({
  ...conditionsAt(place.skyMagPerArcsec2, place, utcMs),
  glowMuAt: options?.glowMuAt,
});

/** What a typical observer sees at a place and instant, with Sun and Moon where they stand. */
export function seeingAt(
  place: Place,
  utcMs: number,
  objects: readonly SkyObject[],
  options?: EyeSeeingOptions,
): Seeing {
  return eyeSeeing(placeConditions(place, utcMs, options), objects, options);
}

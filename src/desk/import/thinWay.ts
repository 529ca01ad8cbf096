/** Whether a catalogue has stars to hop by along a lesson's way. */
import { AVERAGE_BV } from "#core/celestial/magnitude.ts";
import { DEG, dirFromMas } from "#core/celestial/vector.ts";
import { seeingAt } from "#core/eye/eyeSeeing.ts";
import { toHopSpec } from "#core/lesson/hopSpec.ts";
import { lookupOf } from "#core/lesson/skyLookup.ts";
import type { Lesson } from "#core/lesson/types.ts";
import { gearById } from "#core/optics/gear.ts";
import { starsWithin } from "#core/sky/catalogue/starsWithin.ts";
import { coneOfHop } from "../play/attempt.ts";
import { createLoading } from "../play/loading.ts";
import type { OpenSky } from "../play/skies.ts";

/** With fewer a field looks like any other: a figure takes four, and one to check it by (common practice, no source). */
export const ENOUGH_STARS = 5;

/** Of the fields about anchor, target and every mark in the hopping instrument, how many stars the emptiest shows. */
export async function fewestStars(lesson: Lesson, sky: OpenSky): Promise<number> {
  const lookup = lookupOf(sky.source.ref, sky.names, sky.objects, sky.places);
  const spec = toHopSpec(lesson, 0, { sky: () => lookup });
  const { fieldDeg } = gearById(spec.hoppingGear);
  const seeing = seeingAt(lesson.place, spec.startMs, sky.objects, { glowMuAt: await sky.glow() });
  const { avertedMilliMag } = seeing.star(dirFromMas(spec.anchor), AVERAGE_BV, spec.hoppingGear);
  const loading = createLoading(sky.source, () => undefined);
  try {
    const stars = await loading.whole(coneOfHop(spec, fieldDeg), avertedMilliMag / 1000);
    const fields = spec.ways.flatMap(({ marks }) => marks.map(({ dir }) => dirFromMas(dir)));
    return Math.min(
      ...fields.map((centre) => starsWithin(stars, centre, (fieldDeg / 2) * DEG, avertedMilliMag).length),
    );
  } finally {
    loading.stop();
  }
}

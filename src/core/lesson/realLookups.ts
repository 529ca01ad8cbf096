/** The lookups over the real tables: skies, and what instruments show under them, the Milky Way's glow included. */
import { seeingAt } from "#core/eye/eyeSeeing.ts";
import { catalogueGlowBeyond } from "#core/sky/glow/catalogueGlow.ts";
import { practiceGlowBeyond } from "#core/sky/glow/practiceGlow.ts";
import type { Lookups } from "./lookups.ts";
import { skyLookups } from "./skyLookups.ts";

export const realLookups: Lookups = {
  ...skyLookups,
  seeing: (lesson) => {
    const { sky, place, time } = lesson;
    const glowMuAt = sky === "catalogue" ? catalogueGlowBeyond() : practiceGlowBeyond(sky.practice);
    return seeingAt(place, Date.parse(time), skyLookups.sky(lesson).objects, { glowMuAt });
  },
};

/** The objects of a practice sky with numbers, constellations and words. */
import { radecFromDir } from "#core/celestial/vector.ts";
import type { SkyObject } from "#core/seams/index.ts";
import type { SkyPlan } from "./plan.ts";
import type { WildKind, WildObject } from "./population.ts";
import type { ConstellationAt } from "./regions.ts";

/** The numbers before are those of what is planted. */
const FIRST_NUMBER = 3;

/** What a sky's catalogue is called: its seed word with a capital. */
export function catalogueTitle({ seed }: SkyPlan): string {
  return seed.word.charAt(0).toUpperCase() + seed.word.slice(1);
}

/** Numbered by right ascension, as the old catalogues are. */
export function wildObjects(plan: SkyPlan, at: ConstellationAt): SkyObject[] {
  const title = catalogueTitle(plan);
  const byRa = plan.wild.map((object) => ({ object, raRad: radecFromDir(object.dir).raRad }));
  byRa.sort((a, b) => a.raRad - b.raRad);
  return byRa.map(({ object }, i) => ({
    id: `${plan.seed.word}-${FIRST_NUMBER + i}`,
    names: [`${title} ${FIRST_NUMBER + i}`],
    ...object,
    constellation: at(object.dir),
    looks: looksOf(object),
  }));
}

/** Small, large and between; each kind as the eye meets it. */
const LOOKS: Readonly<Record<WildKind, readonly [small: string, middling: string, large: string]>> = {
  openCluster: [
    "A tight knot of stars that wants magnification.",
    "A loose handful of stars on a grainy ground.",
    "A wide scatter, best in the smallest glass.",
  ],
  globularCluster: [
    "A soft star that will not come sharp.",
    "A round snowball, brighter to its middle.",
    "A great ball of light, granular at its edge.",
  ],
  planetaryNebula: [
    "As good as a star; only high power gives it away.",
    "A small even disc.",
    "A large pale disc, seen at low power first.",
  ],
  emissionNebula: [
    "A small smudge about a star.",
    "A patch of mist with an uneven edge.",
    "A glow wider than the field: sweep across its rim.",
  ],
  reflectionNebula: [
    "A star with breath on it.",
    "A veil about a star, gone when the glass is fogged.",
    "A faint wide veil in which stars hang.",
  ],
  supernovaRemnant: [
    "A faint even patch without a middle.",
    "A ragged oval, best with the eye turned aside.",
    "Threads of light over more than one field.",
  ],
  darkNebula: [
    "A small hole among the stars.",
    "A lane where the stars are missing.",
    "A broad dark, as if something stood before the Milky Way.",
  ],
  galaxy: [
    "A small glow, easily passed over.",
    "A soft oval, brighter to its middle.",
    "A long glow that goes on beyond where one first thought.",
  ],
};
/** Up to this size, arcmin, each kind is small, and middling. */
const SIZES: Readonly<Record<WildKind, readonly [number, number]>> = {
  openCluster: [5, 18],
  globularCluster: [3.5, 9],
  planetaryNebula: [0.3, 1.5],
  emissionNebula: [4, 40],
  reflectionNebula: [3, 12],
  supernovaRemnant: [9, 45],
  darkNebula: [10, 35],
  galaxy: [3.5, 10],
};

function looksOf({ kind, majorArcmin }: WildObject): string {
  const [small, middling] = SIZES[kind];
  const [one, two, three] = LOOKS[kind];
  if (majorArcmin <= small) return one;
  return majorArcmin <= middling ? two : three;
}

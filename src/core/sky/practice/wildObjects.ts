/** The objects of a practice sky with numbers, constellations and words. */
import { radecFromDir } from "#core/celestial/vector.ts";
import type { Dir, SkyObject } from "#core/seams/index.ts";
import { listedDoubles } from "./listedDoubles.ts";
import { numbered, type Unnumbered } from "./numbered.ts";
import type { SkyPlan } from "./plan.ts";
import type { WildKind, WildObject } from "./population.ts";
import type { ConstellationAt } from "./regions.ts";

/** The numbers before are those of what is planted. */
const FIRST_NUMBER = 3;

/**
 * Numbered by right ascension, as the old catalogues are: what shines or hides by itself, then double stars, then small
 * figures of stars, which have a name too, then what hides a part of the Milky Way.
 */
export function wildObjects(plan: SkyPlan, at: ConstellationAt): SkyObject[] {
  const unnamed = (object: WildObject): Unnumbered => ({ ...object, names: [], looks: looksOf(object) });
  const doubles = listedDoubles(plan).map((double): Unnumbered => ({ ...double, names: [] }));
  const figures = plan.asterisms.map(({ name, ...figure }): Unnumbered => ({ ...figure, ...FIGURE, names: [name] }));
  const all = [
    ...byRa(plan.wild.map(unnamed)),
    ...byRa(doubles),
    ...byRa(figures),
    ...byRa(plan.greatClouds.map(unnamed)),
  ];
  return all.map((object, i) => numbered(plan, FIRST_NUMBER + i, object, at));
}

const FIGURE = { kind: "asterism", profile: "members" } as const;

function byRa<Each extends { readonly dir: Dir }>(objects: readonly Each[]): Each[] {
  const placed = objects.map((object) => ({ object, raRad: radecFromDir(object.dir).raRad }));
  return placed.sort((a, b) => a.raRad - b.raRad).map(({ object }) => object);
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

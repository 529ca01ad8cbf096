/** What a lesson can name in a sky: its stars in every usual writing, its objects, and places that are neither. */
import { AVERAGE_BV } from "#core/celestial/magnitude.ts";
import type { Dir, SkyObject, SkyRef } from "#core/seams/index.ts";
import { constellations } from "#core/sky/names/constellations.ts";
import { plainDesignation, plainName, shortLetter } from "#core/sky/names/letters.ts";
import type { NamedStar, SkyNames } from "#core/sky/names/types.ts";
import type { FoundSpot, SkyLookup } from "./lookups.ts";

/** Every way to write a star: its own name, letter or number with the constellation (short, Latin, genitive), HIP number. */
function writingsOf({ proper, label, flamsteed, con, hip }: NamedStar): string[] {
  const known = con === undefined ? undefined : constellations().get(con);
  const places = con === undefined ? [] : [con, ...(known ? [known.name, known.genitive] : [])];
  const letter = plainName(label);
  const marks = [letter, shortLetter(letter), ...(flamsteed === undefined ? [] : [String(flamsteed)])];
  const designations = marks.flatMap((mark) => places.map((place) => `${mark} ${place}`));
  return [...(proper === undefined ? [] : [proper]), ...designations, ...(hip === undefined ? [] : [`HIP ${hip}`])];
}

const nameOfStar = ({ proper, label, con }: NamedStar) => proper ?? (con === undefined ? label : `${label} ${con}`);

/** A place with a name that is neither star nor object. */
export type NamedPlace = { readonly name: string; readonly dir: Dir };

const spotOf = (object: SkyObject): FoundSpot => ({
  name: object.names[0] ?? object.id,
  dir: object.dir,
  magV: object.magV,
  colourBV: 0.7,
  object,
});

/** The look-up of a sky, from its names, objects and named places. */
export function lookupOf(
  ref: SkyRef,
  { stars }: SkyNames,
  objects: readonly SkyObject[],
  marks: readonly NamedPlace[],
): SkyLookup {
  const byName = new Map<string, FoundSpot>();
  const writings: string[] = [];
  const add = (name: string, spot: FoundSpot) => {
    writings.push(name);
    const plain = plainName(name);
    // Brighter stars come first and keep the name.
    if (plain !== "" && !byName.has(plain)) byName.set(plain, spot);
  };
  for (const star of stars) {
    const { dir, magV, colourBV = AVERAGE_BV } = star;
    for (const writing of writingsOf(star)) add(writing, { name: nameOfStar(star), dir, magV, colourBV });
  }
  for (const object of objects) {
    const spot = spotOf(object);
    for (const writing of [object.id, ...object.names]) add(writing, spot);
  }
  for (const { name, dir } of marks) add(name, { name, dir, magV: undefined, colourBV: AVERAGE_BV });
  return { ref, objects, find: (name) => byName.get(plainDesignation(plainName(name))), names: () => writings };
}

/** The look-up with a lesson's own bodies; what the sky has already keeps its name, and of two bodies the first. */
export function withBodies(sky: SkyLookup, bodies: readonly SkyObject[]): SkyLookup {
  if (bodies.length === 0) return sky;
  const byName = new Map(bodies.toReversed().map((body) => [plainName(body.names[0]!), spotOf(body)]));
  return {
    ref: sky.ref,
    objects: [...sky.objects, ...bodies],
    find: (name) => sky.find(name) ?? byName.get(plainName(name)),
    names: () => [...sky.names(), ...bodies.map(({ names }) => names[0]!)],
  };
}

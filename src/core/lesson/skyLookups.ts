/** The skies of lessons over the real tables: names and objects of the catalogue, and practice skies by their seed. */
import { AVERAGE_BV } from "#core/celestial/magnitude.ts";
import type { Dir, SkyObject, SkyRef } from "#core/seams/index.ts";
import { CATALOGUE_SKY_VERSION } from "#core/sky/catalogue/catalogueSource.ts";
import { catalogueNames } from "#core/sky/names/catalogueNames.ts";
import { constellations } from "#core/sky/names/constellations.ts";
import { plainName, shortLetter } from "#core/sky/names/letters.ts";
import type { NamedStar, SkyNames } from "#core/sky/names/types.ts";
import { catalogueObjects } from "#core/sky/objects.ts";
import { practiceFacts, practiceNames, practiceObjects } from "#core/sky/practice/practiceSky.ts";
import { PRACTICE_SKY_VERSION } from "#core/sky/practice/seed.ts";
import type { FoundSpot, Lookups, SkyLookup } from "./lookups.ts";
import type { Lesson } from "./types.ts";

/** Practice skies kept: each is grown once however many lessons speak of it. */
const SKIES_KEPT = 8;

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

type Mark = { readonly name: string; readonly dir: Dir };

/** `marks`: places with a name that are neither star nor object. */
function lookupOf(ref: SkyRef, { stars }: SkyNames, objects: readonly SkyObject[], marks: readonly Mark[]): SkyLookup {
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
    const spot = {
      name: object.names[0] ?? object.id,
      dir: object.dir as Dir,
      magV: object.magV,
      colourBV: 0.7,
      object,
    };
    for (const writing of [object.id, ...object.names]) add(writing, spot);
  }
  for (const { name, dir } of marks) add(name, { name, dir, magV: undefined, colourBV: AVERAGE_BV });
  return { ref, objects, find: (name) => byName.get(plainName(name)), names: () => writings };
}

const catalogueRef: SkyRef = { kind: "catalogue", skyVersion: CATALOGUE_SKY_VERSION };

function practiceLookup(seed: string): SkyLookup {
  const ref: SkyRef = { kind: "practice", seed, skyVersion: PRACTICE_SKY_VERSION };
  const { clusterWay, galaxyWay } = practiceFacts(seed);
  return lookupOf(ref, practiceNames(seed), practiceObjects(seed), [...clusterWay, ...galaxyWay]);
}

const kept = new Map<string, SkyLookup>();

function skyLookup(sky: Lesson["sky"]): SkyLookup {
  const key = typeof sky === "string" ? "" : sky.practice;
  const known = kept.get(key);
  if (known) return known;
  const made =
    typeof sky === "string"
      ? lookupOf(catalogueRef, catalogueNames(), catalogueObjects(), [])
      : practiceLookup(sky.practice);
  if (kept.size >= SKIES_KEPT) kept.clear();
  kept.set(key, made);
  return made;
}

export const skyLookups: Pick<Lookups, "sky"> = { sky: skyLookup };

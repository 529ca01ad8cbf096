/** The skies of lessons over the real tables: names and objects of the catalogue, and practice skies by their seed. */
import type { SkyRef } from "#core/seams/index.ts";
import { CATALOGUE_SKY_VERSION } from "#core/sky/catalogue/catalogueSource.ts";
import { catalogueNames } from "#core/sky/names/catalogueNames.ts";
import { catalogueObjects } from "#core/sky/objects.ts";
import { practiceFacts, practiceNames, practiceObjects } from "#core/sky/practice/practiceSky.ts";
import { PRACTICE_SKY_VERSION } from "#core/sky/practice/seed.ts";
import { bodiesOf } from "./bodies.ts";
import type { Lookups, SkyLookup } from "./lookups.ts";
import { lookupOf, withBodies } from "./skyLookup.ts";
import type { Lesson } from "./types.ts";

/** Practice skies kept: each is grown once however many lessons speak of it. */
const SKIES_KEPT = 8;

const catalogueRef: SkyRef = { kind: "catalogue", skyVersion: CATALOGUE_SKY_VERSION };

function practiceLookup(seed: string): SkyLookup {
  const ref: SkyRef = { kind: "practice", seed, skyVersion: PRACTICE_SKY_VERSION };
  const { clusterWay, galaxyWay } = practiceFacts(seed);
  return lookupOf(ref, practiceNames(seed), practiceObjects(seed), [...clusterWay, ...galaxyWay]);
}

const kept = new Map<string, SkyLookup>();

/** The sky of a name alone, without what a lesson adds. */
export function skyLookup(sky: Lesson["sky"]): SkyLookup {
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

export const skyLookups: Pick<Lookups, "sky"> = {
  sky: (lesson) => withBodies(skyLookup(lesson.sky), bodiesOf(lesson)),
};

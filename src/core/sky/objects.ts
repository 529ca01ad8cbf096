/** The objects of the catalogue sky. */

import { DEG, dirFromRadec } from "#core/celestial/vector.ts";
import type { ObjectKind, ObjectProfile, SkyObject } from "#core/seams/index.ts";
import objectFile from "#shared/objects.json" with { type: "json" };
import { isIn, rowCheck, rowError } from "./tableRow.ts";

/** How the light of each kind lies where the table says nothing else. */
const PROFILE_OF_KIND: Readonly<Record<ObjectKind, ObjectProfile>> = {
  openCluster: "members",
  globularCluster: "plummer",
  planetaryNebula: "uniform",
  emissionNebula: "uniform",
  reflectionNebula: "exponential",
  supernovaRemnant: "uniform",
  darkNebula: "uniform",
  galaxy: "exponential",
  doubleStar: "members",
  asterism: "members",
  comet: "coma",
  minorPlanet: "members",
};
const PROFILES: readonly string[] = [
  "uniform",
  "exponential",
  "bulge",
  "plummer",
  "coma",
  "ring",
  "members",
] satisfies ObjectProfile[];
const FILE = "objects.json";
/** The magnitude of what gives no light of its own. */
const NO_LIGHT_MAG = 99;

/** A row as it stands in the table; `magV` is null for a dark nebula. */
export interface ObjectRow {
  readonly id: string;
  readonly names: readonly string[];
  readonly kind: string;
  readonly raDeg: number;
  readonly decDeg: number;
  readonly magV: number | null;
  readonly majorArcmin: number;
  readonly minorArcmin: number;
  readonly axisDeg: number;
  readonly profile?: string;
  readonly constellation: string;
  readonly looks: string;
}

/** A row of the table as an object. @throws DataFileError naming the row and what is wrong with it */
export function objectOfRow(row: ObjectRow): SkyObject {
  const need = rowCheck(FILE, row.id);
  need(/^[A-Za-z0-9-]{1,40}$/.test(row.id), "id has other than letters, digits and hyphen");
  need(row.names.length > 0 && row.names.every((name) => name.length > 0), "has no name");
  const { kind, profile } = row;
  if (!isKind(kind)) throw unknownWord(row.id, "kind", OBJECT_KINDS);
  if (profile !== undefined && !isProfile(profile)) throw unknownWord(row.id, "profile", PROFILES);
  need(isIn(row.raDeg, 0, 359.9999), "raDeg is not within 0 to 360");
  need(isIn(row.decDeg, -90, 90), "decDeg is not within -90 to 90");
  need((row.magV === null) === (kind === "darkNebula"), "magV is null for dark nebulae, and for them alone");
  need(row.magV === null || isIn(row.magV, -2, 16), "magV is not within -2 to 16");
  need(isIn(row.majorArcmin, 0.05, 1200), "majorArcmin is not within 0.05 to 1200");
  need(isIn(row.minorArcmin, 0.05, row.majorArcmin), "minorArcmin is not within 0.05 to the major axis");
  need(isIn(row.axisDeg, 0, 180), "axisDeg is not within 0 to 180");
  need(row.constellation.length > 0, "names no constellation");
  need(row.looks.length > 0, "says nothing of how it looks");
  const { raDeg, decDeg, magV, ...rest } = row;
  return {
    ...rest,
    kind,
    profile: profile ?? PROFILE_OF_KIND[kind],
    magV: magV ?? NO_LIGHT_MAG,
    dir: dirFromRadec(raDeg * DEG, decDeg * DEG),
  };
}

/** Every kind that an object can be. */
export const OBJECT_KINDS = Object.keys(PROFILE_OF_KIND) as readonly ObjectKind[];

const isKind = (word: string): word is ObjectKind => Object.hasOwn(PROFILE_OF_KIND, word);
const isProfile = (word: string): word is ObjectProfile => PROFILES.includes(word);
const unknownWord = (id: string, field: string, words: readonly string[]) =>
  rowError(FILE, id, `${field} is none of ${words.join(", ")}`);

let objects: readonly SkyObject[] | undefined;

/** Every object of the table, in its order: an object's near neighbours follow it. @throws DataFileError where a row is no good */
export function catalogueObjects(): readonly SkyObject[] {
  objects ??= (objectFile.objects as readonly ObjectRow[]).map(objectOfRow);
  return objects;
}

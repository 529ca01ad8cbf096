/** The objects of the catalogue sky. */
import { DEG, dirFromRadec } from "#core/celestial/vector.ts";
import { DataFileError } from "#core/seams/errors.ts";
import type { ObjectKind, SkyObject } from "#core/seams/index.ts";
import objectFile from "#shared/objects.json" with { type: "json" };

const KINDS: readonly string[] = [
  "openCluster",
  "globularCluster",
  "planetaryNebula",
  "brightNebula",
  "darkNebula",
  "galaxy",
  "doubleStar",
  "asterism",
] satisfies ObjectKind[];

type Row = (typeof objectFile.objects)[number];

/** A row of the table as an object. @throws DataFileError naming the row and what is wrong with it */
export function objectOfRow(row: Row): SkyObject {
  const need = (fits: boolean, what: string) => {
    if (!fits)
      throw new DataFileError(`objects.json, ${row.id}: ${what}`, "Mend the row, or put the original file back.");
  };
  const isIn = (value: number, least: number, most: number) => value >= least && value <= most;
  need(/^[A-Za-z0-9-]{1,40}$/.test(row.id), "id has other than letters, digits and hyphen");
  need(row.names.length > 0 && row.names.every((name) => name.length > 0), "has no name");
  need(KINDS.includes(row.kind), `kind is none of ${KINDS.join(", ")}`);
  need(isIn(row.raDeg, 0, 359.9999), "raDeg is not within 0 to 360");
  need(isIn(row.decDeg, -90, 90), "decDeg is not within -90 to 90");
  need(isIn(row.magV, -2, 16), "magV is not within -2 to 16");
  need(isIn(row.majorArcmin, 0.05, 1200), "majorArcmin is not within 0.05 to 1200");
  need(isIn(row.minorArcmin, 0.05, row.majorArcmin), "minorArcmin is not within 0.05 to the major axis");
  need(isIn(row.axisDeg, 0, 180), "axisDeg is not within 0 to 180");
  need(row.looks.length > 0, "says nothing of how it looks");
  const { raDeg, decDeg, kind, ...rest } = row;
  return { ...rest, kind: kind as ObjectKind, dir: dirFromRadec(raDeg * DEG, decDeg * DEG) };
}

let objects: readonly SkyObject[] | undefined;

/** Every object of the table, in its order: an object's near neighbours follow it. @throws DataFileError where a row is no good */
export function catalogueObjects(): readonly SkyObject[] {
  objects ??= objectFile.objects.map(objectOfRow);
  return objects;
}

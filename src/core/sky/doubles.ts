/** The double stars of the catalogue sky. */
import { combinedMag } from "#core/celestial/magnitude.ts";
import { DEG, dirFromRadec } from "#core/celestial/vector.ts";
import { DataFileError } from "#core/seams/errors.ts";
import type { SkyObject } from "#core/seams/index.ts";
import doubleFile from "#shared/doubles.json" with { type: "json" };
import { isIn, rowCheck } from "./tableRow.ts";

type Row = (typeof doubleFile.doubles)[number];

/** A row of the table as an object. @throws DataFileError naming the row and what is wrong with it */
export function doubleOfRow(row: Row): SkyObject {
  const need = rowCheck("doubles.json", row.id);
  const [brighter, fainter] = row.magV;
  need(row.names.length > 0 && row.names.every((name) => name.length > 0), "has no name");
  need(isIn(row.raDeg, 0, 359.9999) && isIn(row.decDeg, -90, 90), "the place is not on the sphere");
  need(isIn(row.separationArcsec, 0.1, 600), "separationArcsec is not within 0.1 to 600");
  need(isIn(row.positionAngleDeg, 0, 360), "positionAngleDeg is not within 0 to 360");
  need(isIn(row.epochYear, 1800, 2100), "epochYear is not within 1800 to 2100");
  if (!isIn(brighter, -2, 16) || !isIn(fainter, -2, 16))
    throw new DataFileError(`doubles.json, ${row.id}: magV is not two magnitudes`, "Mend the row.");
  const { id, names, raDeg, decDeg, constellation, looks, separationArcsec, positionAngleDeg, epochYear } = row;
  return {
    id,
    names,
    kind: "doubleStar",
    dir: dirFromRadec(raDeg * DEG, decDeg * DEG),
    magV: Math.round(100 * combinedMag([brighter, fainter])) / 100,
    majorArcmin: separationArcsec / 60,
    minorArcmin: separationArcsec / 60,
    axisDeg: positionAngleDeg % 180,
    profile: "members",
    constellation,
    looks,
    double: { separationArcsec, positionAngleDeg, magV: [brighter, fainter], epochYear },
  };
}

let doubles: readonly SkyObject[] | undefined;

/** Every double star of the table, in its order. @throws DataFileError where a row is no good */
export function catalogueDoubles(): readonly SkyObject[] {
  doubles ??= doubleFile.doubles.map(doubleOfRow);
  return doubles;
}

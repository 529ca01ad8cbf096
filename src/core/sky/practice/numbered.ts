/** The objects of a practice sky as its catalogue has them. */
import type { SkyObject } from "#core/seams/index.ts";
import type { SkyPlan } from "./plan.ts";
import type { ConstellationAt } from "./regions.ts";

export type Unnumbered = Omit<SkyObject, "id" | "constellation">;

/** An object with its number: the seed word with a capital, and how many came before, as one more name. */
export function numbered(
  { seed: { word } }: SkyPlan,
  number: number,
  object: Unnumbered,
  at: ConstellationAt,
): SkyObject {
  const title = word.charAt(0).toUpperCase() + word.slice(1);
  // All have the same fields in the same order, given or not: every look goes through them all, and so makes nothing.
  return {
    id: `${word}-${number}`,
    names: [...object.names, `${title} ${number}`],
    kind: object.kind,
    dir: object.dir,
    magV: object.magV,
    majorArcmin: object.majorArcmin,
    minorArcmin: object.minorArcmin,
    axisDeg: object.axisDeg,
    profile: object.profile,
    constellation: at(object.dir),
    looks: object.looks,
    double: object.double,
  };
}

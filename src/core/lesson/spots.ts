/** The places that a hop speaks of, found in its sky. */
import { AVERAGE_BV } from "#core/celestial/magnitude.ts";
import { DEG, dirFromRadec } from "#core/celestial/vector.ts";
import type { Path } from "./locate.ts";
import type { FoundSpot, SkyLookup } from "./lookups.ts";
import type { LessonHop, Spot } from "./types.ts";

export const spotName = (spot: Spot): string => (typeof spot === "string" ? spot : spot.name);

/** The place of a spot; undefined where its sky has no such name. */
export function findSpot(spot: Spot, sky: SkyLookup): FoundSpot | undefined {
  if (typeof spot === "string") return sky.find(spot);
  const dir = dirFromRadec(spot.raDeg * DEG, spot.decDeg * DEG);
  return { name: spot.name, dir, magV: undefined, colourBV: AVERAGE_BV };
}

/** Every spot of a hop with its path within the hop. */
export const spotsOf = (hop: LessonHop): { readonly spot: Spot; readonly path: Path }[] => [
  { spot: hop.anchor, path: ["anchor"] },
  { spot: hop.target, path: ["target"] },
  ...hop.ways.flatMap(({ marks }, w) => marks.map((spot, m) => ({ spot, path: ["ways", w, "marks", m] }))),
];

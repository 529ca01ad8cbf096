/** The table of bright stars, and how it mends what the catalogue measured badly. */
import table from "#shared/bright-stars.json";
import type { RawStar } from "./rawStar.ts";

export type BrightStar = {
  readonly hip: number;
  readonly component: string;
  readonly name: string;
  readonly magV: number;
  readonly colourBV: number;
  readonly pmRaMasPerYear?: number;
  readonly pmDecMasPerYear?: number;
};

const keyOf = (hip: number, component: string) => `${hip} ${component}`;
const stars: readonly BrightStar[] = table.stars;
const byKey = new Map(stars.map((star) => [keyOf(star.hip, star.component), star]));
const removedByKey = new Map(table.removed.map((star) => [keyOf(star.hip, star.component), star.why]));

/** Why a star is none, or has its light in another's value; undefined for all others. */
export function whyRemoved(star: RawStar): string | undefined {
  return star.hip ? removedByKey.get(keyOf(star.hip, star.component)) : undefined;
}

/** What the table says of a star, if anything. */
export function brightStarOf(star: RawStar): BrightStar | undefined {
  return star.hip ? byKey.get(keyOf(star.hip, star.component)) : undefined;
}

/** V and B-V from the table; its motion where the catalogue has none. */
export function mended(star: RawStar, bright: BrightStar): RawStar {
  const lacksMotion = Number.isNaN(star.place.pmRaMasPerYear);
  const place = lacksMotion
    ? {
        ...star.place,
        pmRaMasPerYear: bright.pmRaMasPerYear ?? Number.NaN,
        pmDecMasPerYear: bright.pmDecMasPerYear ?? Number.NaN,
      }
    : star.place;
  return { ...star, place, magV: bright.magV, colourBV: bright.colourBV };
}

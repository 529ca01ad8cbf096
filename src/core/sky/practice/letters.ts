/** Letters of the stars of a practice sky: by brightness within each constellation. */
import type { SkyStar } from "./frame.ts";
import type { ConstellationAt } from "./regions.ts";

const LETTERS = "αβγδεζηθικλμνξοπρστυφχψω";

export type Lettered = { readonly star: SkyStar; readonly con: string; readonly label: string };

/**
 * Stars with their constellations and Greek letters, brightest first; beyond the twenty-fourth of a constellation a star has
 * none and is left out.
 * @param stars brightest first
 */
export function lettered(stars: readonly SkyStar[], at: ConstellationAt): Lettered[] {
  const given = new Map<string, number>();
  return stars.flatMap((star) => {
    const con = at(star.dir);
    const rank = given.get(con) ?? 0;
    given.set(con, rank + 1);
    return rank < LETTERS.length ? [{ star, con, label: LETTERS.charAt(rank) }] : [];
  });
}

/**
 * Supplement entries that the main catalogue holds already: the first Tycho catalogue saw the place a little off, and so
 * did not pass for the same star when the two were matched.
 */
import { separationRad } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { dirAtEpoch } from "./place.ts";
import type { RawStar } from "./rawStar.ts";

/**
 * The first Tycho catalogue could not part stars much closer than 2 arcsec: a star of it this near to a main entry is that
 * entry, measured again. Our own bound, between the 0.8 arcsec the main catalogue matched by and those 2 arcsec.
 */
const SAME_RAD = (1.5 / 3600) * (Math.PI / 180);
const SUPPLEMENT_YEAR = 1991.25;

export type TwiceFinder = {
  /** Takes note of a main entry. */
  readonly seen: (main: RawStar) => void;
  /** After all main entries: whether a supplement star is one of them. */
  readonly isTwice: (star: RawStar) => boolean;
};

/** Watches the main entries go by for those that a star of the supplement repeats. */
export function createTwiceFinder(supplement: readonly RawStar[]): TwiceFinder {
  const byRegion = new Map<number, { star: RawStar; dir: Dir }[]>();
  const repeated = new Set<RawStar>();
  for (const star of supplement) {
    if (star.source !== "tycho1") continue;
    const inRegion = byRegion.get(star.region) ?? [];
    inRegion.push({ star, dir: dirAtEpoch(star.place, SUPPLEMENT_YEAR) });
    byRegion.set(star.region, inRegion);
  }
  return {
    seen(main) {
      const near = byRegion.get(main.region);
      if (!near) return;
      const dir = dirAtEpoch(main.place, SUPPLEMENT_YEAR);
      for (const { star, dir: other } of near) if (separationRad(dir, other) < SAME_RAD) repeated.add(star);
    },
    isTwice: (star) => repeated.has(star),
  };
}

/** From the lines of the raw catalogue to the files of the sky, with an account of what was left out and what was mended. */
import { roundHalfUp } from "#core/celestial/exactMath.ts";
import { layerOf } from "#core/sky/catalogue/layers.ts";
import { brightStarOf, mended, whyRemoved } from "./brightTable.ts";
import { dirAtEpoch, TILE_EPOCH } from "./place.ts";
import { parseMainLine, parseSupplementLine, type RawStar } from "./rawStar.ts";
import { createStarStore } from "./starStore.ts";
import { createTally } from "./tally.ts";
import { type SkyFile, tileFiles } from "./tiles.ts";
import { createTwiceFinder } from "./twice.ts";

type Count = { readonly why: string; readonly count: number };
export type BuiltSky = {
  readonly files: readonly SkyFile[];
  readonly stars: number;
  readonly dropped: readonly Count[];
  readonly mended: readonly Count[];
};
export type SkyBuild = {
  /** Takes one line of the main catalogue. Throws InputError where it is none. */
  readonly addMainLine: (line: string) => void;
  /** After the last line: the files. */
  readonly finish: () => BuiltSky;
};

/**
 * Begins a build. Supplement 1 comes whole and first, since its stars are held against the main entries as these go by; of
 * supplement 2 only the number of lines matters. Throws InputError where a line is none.
 */
export function startSkyBuild(supplement1: Iterable<string>, supplement2Lines: number): SkyBuild {
  const supplement = Array.from(supplement1, parseSupplementLine);
  const twice = createTwiceFinder(supplement);
  const store = createStarStore();
  const dropped = createTally();
  const repairs = createTally();
  const take = (star: RawStar) => {
    const removed = whyRemoved(star);
    if (removed) return dropped.add(`table of bright stars: ${removed}`);
    const bright = brightStarOf(star);
    const best = bright ? mended(star, bright) : star;
    const centiMag = roundHalfUp(best.magV * 100);
    if (!layerOf(centiMag)) return dropped.add("fainter than V 12.5");
    noteRepairs(star, best, bright !== undefined, repairs.add);
    return store.add(dirAtEpoch(best.place, TILE_EPOCH), centiMag, best.colourBV);
  };
  return {
    addMainLine(line) {
      const star = parseMainLine(line);
      twice.seen(star);
      take(star);
    },
    finish() {
      if (supplement2Lines > 0) dropped.add("supplement 2: probably false or heavily disturbed", supplement2Lines);
      for (const star of supplement) {
        if (twice.isTwice(star)) dropped.add("supplement 1: within 1.5 arcsec of a main entry");
        else take(star);
      }
      const columns = store.columns();
      return { files: tileFiles(columns), stars: columns.count, dropped: dropped.list(), mended: repairs.list() };
    },
  };
}

function noteRepairs(star: RawStar, best: RawStar, inTable: boolean, note: (why: string) => void): void {
  if (inTable) note("V and B-V from the table of bright stars");
  else if (star.band !== "both") note(`${star.band} alone: taken for V as it stands, colour unknown`);
  if (star.placeKind === "observedPair") note("pair with one mean place: each at its own observed place");
  if (!Number.isNaN(best.place.pmRaMasPerYear)) {
    if (Number.isNaN(star.place.pmRaMasPerYear)) note("proper motion from the table of bright stars");
  } else note("no proper motion known: left where it was observed about 1991");
}

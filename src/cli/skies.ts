/** The skies of the command line: stars, names and objects by the sky's word. */

import { constellationOf } from "#core/celestial/constellation.ts";
import { AVERAGE_BV } from "#core/celestial/magnitude.ts";
import { DEG, dirFromMas, separationRad } from "#core/celestial/vector.ts";
import { gearById } from "#core/optics/gear.ts";
import { DataFileError } from "#core/seams/errors.ts";
import type { Cone, Dir, HopSpec, Resident, Seeing, SkyObject, SkyRef, StarSource } from "#core/seams/index.ts";
import { TILE_EPOCH } from "#core/sky/build/place.ts";
import { createCatalogueSource } from "#core/sky/catalogue/catalogueSource.ts";
import { LAYERS } from "#core/sky/catalogue/layers.ts";
import { type FoundStar, starsWithin } from "#core/sky/catalogue/starsWithin.ts";
import { catalogueDoubles } from "#core/sky/doubles.ts";
import type { GlowMuAt } from "#core/sky/glow/glowMap.ts";
import { glowOfSky } from "#core/sky/glow/glowOfSky.ts";
import { catalogueNames } from "#core/sky/names/catalogueNames.ts";
import type { SkyNames } from "#core/sky/names/types.ts";
import { catalogueObjects } from "#core/sky/objects.ts";
import { PRACTICE_LAYERS } from "#core/sky/practice/layers.ts";
import { practiceConstellations, practiceNames, practiceObjects } from "#core/sky/practice/practiceSky.ts";
import { createPracticeSource } from "#core/sky/practice/practiceSource.ts";
import { skyFileFetcher } from "./files.ts";
import type { Io } from "./io.ts";
import { CATALOGUE_WORD, isOwnSky, ownFileFetcher, ownNames } from "./ownSky.ts";
import { UsageError } from "./usageError.ts";

export interface Sky {
  /** "catalogue", a practice sky's seed word, or the folder of an imported catalogue. */
  readonly word: string;
  readonly isReal: boolean;
  /** Julian year of the places. */
  readonly epoch: number;
  /** V down to which the sky has stars at all. */
  readonly faintestMag: number;
  readonly source: StarSource;
  readonly names: () => SkyNames;
  /** Double stars are among them. */
  readonly objects: () => readonly SkyObject[];
  /** Name of the constellation that has a direction: one of the 88, or one of the practice sky's own. */
  readonly constellationAt: (dir: Dir) => string;
  /** What its Milky Way adds to a night, mag/arcsec2. */
  readonly glow: () => Promise<GlowMuAt>;
}

const SEED_WORD = /^[a-z0-9][a-z0-9-]{0,31}$/;
/** Practice skies stand still: their places are of J2000. */
const PRACTICE_EPOCH = 2000;

function catalogueSky(io: Io): Sky {
  return {
    word: CATALOGUE_WORD,
    isReal: true,
    epoch: TILE_EPOCH,
    faintestMag: LAYERS[2].faintestCentiMag / 100,
    source: createCatalogueSource({ fetchFile: skyFileFetcher(io.root) }),
    names: catalogueNames,
    objects: () => [...catalogueObjects(), ...catalogueDoubles()],
    constellationAt: (dir) => constellationOf(dir).name,
    glow: () => glowOfSky({ kind: "catalogue" }),
  };
}

function practiceSky(seed: string): Sky {
  return {
    word: seed,
    isReal: false,
    epoch: PRACTICE_EPOCH,
    faintestMag: Math.max(...PRACTICE_LAYERS.map(({ faintestMilliMag }) => faintestMilliMag)) / 1000,
    source: createPracticeSource(seed),
    names: () => practiceNames(seed),
    objects: () => practiceObjects(seed),
    constellationAt(dir) {
      const abbr = practiceConstellations(seed)(dir);
      return practiceNames(seed).figures.find((figure) => figure.abbr === abbr)?.name ?? abbr;
    },
    glow: () => glowOfSky({ kind: "practice", seed }),
  };
}

/** The stars of an imported catalogue in the real sky: its own names first, then those that the sky has anyway. */
function ownSky(folder: string, io: Io): Sky {
  return {
    ...catalogueSky(io),
    word: folder,
    source: createCatalogueSource({ fetchFile: ownFileFetcher(folder) }),
    names: () => ownNames(folder),
  };
}

/** The sky of `--sky`: the catalogue where the option is absent; an imported catalogue before a practice sky of that word. */
export function openSky(word: string | undefined, io: Io): Sky {
  if (word === undefined || word === CATALOGUE_WORD) return catalogueSky(io);
  return isOwnSky(word) ? ownSky(word, io) : practiceOf(word);
}

/** @throws UsageError where the word can be no seed */
function practiceOf(word: string): Sky {
  if (!SEED_WORD.test(word)) {
    const hint =
      "give catalogue, an imported catalogue of this folder, or a seed word of small letters, figures and hyphens";
    throw new UsageError("ARGUMENTS", `--sky ${word} cannot be used`, hint);
  }
  return practiceSky(word);
}

/** The sky that a record or a lesson speaks of: never an imported one, whatever its name. */
export function skyOf(ref: SkyRef, io: Io): Sky {
  return ref.kind === "practice" && ref.seed !== undefined ? practiceOf(ref.seed) : catalogueSky(io);
}

/** Enough for the whole of a practice sky to V 12.5, or for 36 degrees about a place to its end: some millions of stars. */
const MOST_TILES = 20_000;

/** All that a sky has of a cone; tiles come in first. @throws UsageError where one is missing or damaged */
async function loaded({ source }: Sky, cone: Cone, limitMag: number): Promise<Resident> {
  const signal = new AbortController().signal;
  try {
    for (;;) {
      const here = source.resident(cone, limitMag);
      if (here.missing.length === 0) return here;
      if (here.missing.length > MOST_TILES)
        throw new UsageError(
          "ARGUMENTS",
          "that circle holds more faint stars than can be told at once",
          "give a smaller radius or a brighter limit",
        );
      await source.want([...here.missing], 0, signal);
    }
  } catch (error) {
    if (!(error instanceof DataFileError)) throw error;
    throw new UsageError("SKY_FILE", error.message, error.hint);
  }
}

/** The stars of a circle, brightest first, and whether the sky holds them all down to the limit. */
export async function starsIn(
  sky: Sky,
  centre: Dir,
  radiusRad: number,
  limitMag: number,
): Promise<{ complete: boolean; stars: FoundStar[] }> {
  const reach = Math.min(limitMag, sky.faintestMag);
  const here = await loaded(sky, { centre, radiusRad }, reach);
  // A limit of 6.1 is 6100 thousandths and not the 6099.999 that the product may be.
  const stars = starsWithin(here, centre, radiusRad, Math.round(limitMag * 1000));
  return { complete: here.complete && limitMag <= sky.faintestMag, stars };
}

/** What stands within a hopping field of a hop's ways, down to what the hopping instrument shows: what compiling asks for. */
export async function residentAbout(sky: Sky, spec: HopSpec, seeing: Seeing): Promise<Resident> {
  const anchor = dirFromMas(spec.anchor);
  const marks = spec.ways.flatMap((way) => way.marks.map(({ dir }) => dirFromMas(dir)));
  const fieldRad = gearById(spec.hoppingGear).fieldDeg * DEG;
  const radiusRad = Math.max(...marks.map((mark) => separationRad(anchor, mark))) + fieldRad;
  const { directMilliMag } = seeing.star(anchor, AVERAGE_BV, spec.hoppingGear);
  return loaded(sky, { centre: anchor, radiusRad }, Math.min(directMilliMag / 1000, sky.faintestMag));
}

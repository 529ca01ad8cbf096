/** A hop over the practice sky of a seed word, as a lesson: the same for everyone who has the word. */
import { altAzFromDir, horizonFromIcrs } from "#core/celestial/frames.ts";
import { mixHash32 } from "#core/celestial/hash.ts";
import { DEG, separationRad } from "#core/celestial/vector.ts";
import { gearById } from "#core/optics/gear.ts";
import type { GearId } from "#core/seams/index.ts";
import { practiceNames } from "#core/sky/practice/practiceSky.ts";
import { seedOf } from "#core/sky/practice/seed.ts";
import { SALLOWFELL_HILL } from "./sallowfellHill.ts";
import { planUnder, type SeedPlan, type Stop, stopOf } from "./seedPlan.ts";
import type { Lesson, LessonHop } from "./types.ts";

/** Where the practised part of every practice sky stands well up. */
const NIGHT = {
  place: SALLOWFELL_HILL,
  time: "2027-10-29T20:00:00Z",
} as const;
/** Instruments of an evening: a finder, and the telescope that it sits on. */
const OUTFITS = [
  ["finder-9x50", "newton200-48x"],
  ["finder-9x50-mirror", "catadioptric200-62x"],
  ["finder-6x30", "newton150-30x"],
  ["finder-9x50-erecting", "newton200-48x"],
] as const satisfies readonly (readonly [hopping: GearId, claim: GearId])[];
/** Keeps this draw apart from those of the sky itself. */
const OUTFIT_DRAW = 101;
/** As the check of lesson files has it: the old mark and the new one share the field. */
const LONGEST_LEG_FIELDS = 0.75;

/** What there is to hop over a seed's sky, by the names that it gives. */
export interface SeedHop {
  readonly seed: string;
  /** The site's night, mag/arcsec2. */
  readonly skyMagPerArcsec2: number;
  readonly anchor: string;
  /** The figure that the anchor belongs to. */
  readonly figure: string;
  /** Azimuth of the anchor at the lesson's hour, radians, from north through east. */
  readonly anchorAzRad: number;
  readonly target: string;
  readonly goal: SeedPlan["goal"];
  /** From the anchor to the target by name, the way that is spoken of first. */
  readonly ways: readonly (readonly string[])[];
  /** Of that way, leg by leg. */
  readonly legsDeg: readonly number[];
  readonly hopping: (typeof OUTFITS)[number][0];
  readonly claim: (typeof OUTFITS)[number][1];
}

/** All that is said in such a lesson. */
export interface SeedWords extends Pick<Lesson, "title" | "briefing" | "afterwards"> {
  /** Of the hop's ways, in their order. */
  readonly ways: readonly string[];
  /** Where the observer stands. */
  readonly placeName: string;
  readonly hop: Pick<LessonHop, "steps" | "hints" | "after">;
}

/** The way by all marks, and one that leaves the first out where the legs stay short. */
function waysOf(stops: readonly Stop[], longestDeg: number): readonly (readonly Stop[])[] {
  const straight = [stops[0]!, ...stops.slice(2)];
  return legsOf(straight).every((deg) => deg <= longestDeg) ? [stops, straight] : [stops];
}
const legsOf = (stops: readonly Stop[]): number[] =>
  stops.slice(1).map(({ dir }, i) => separationRad(stops[i]!.dir, dir) / DEG);

/**
 * The hop of a seed's sky with one of four sets of instruments: from its anchor to its galaxy, four degrees off; under a sky
 * too bright for that to a cluster. What is seen at the edge alone is not sought. Pure.
 * @param skyMagPerArcsec2 the site's night; Sallowfell hill's where it is left out
 * @throws InputError where the word is no seed word
 */
export function seedHopOf(seedWord: string, skyMagPerArcsec2: number = NIGHT.place.skyMagPerArcsec2): SeedHop {
  const { word, hash } = seedOf(seedWord);
  const [hopping, claim] = OUTFITS[mixHash32(hash, OUTFIT_DRAW) % OUTFITS.length]!;
  const place = { ...NIGHT.place, skyMagPerArcsec2 };
  const finder = gearById(hopping);
  const night = { place, utcMs: Date.parse(NIGHT.time), hopping: finder, claim: gearById(claim) };
  const { goal, anchor, target, marks } = planUnder(word, hash, night);
  const stops = [stopOf(anchor), ...marks, { name: target.names[0]!, dir: target.dir }];
  const ways = waysOf(stops, LONGEST_LEG_FIELDS * finder.fieldDeg);
  return {
    seed: word,
    skyMagPerArcsec2,
    anchor: stops[0]!.name,
    figure: practiceNames(word).figures.find(({ abbr }) => abbr === anchor.con)?.name ?? "",
    anchorAzRad: altAzFromDir(horizonFromIcrs(NIGHT.place, Date.parse(NIGHT.time)), anchor.dir).azRad,
    target: target.names[0]!,
    goal,
    ways: ways.map((way) => way.map(({ name }) => name)),
    legsDeg: legsOf(stops),
    hopping,
    claim,
  };
}

/** Such a hop and its words as a lesson that is played, recorded and scored as any other. */
export function seedLesson(id: string, hop: SeedHop, { ways, placeName, hop: said, ...words }: SeedWords): Lesson {
  const { seed, skyMagPerArcsec2, anchor, target, hopping, claim } = hop;
  return {
    format: 1,
    id,
    part: 1,
    number: 1,
    of: 1,
    minutes: 5,
    skills: ["step", "turn"],
    sky: { practice: seed },
    bodies: [],
    place: { ...NIGHT.place, name: placeName, skyMagPerArcsec2 },
    time: NIGHT.time,
    level: "P",
    gear: {
      mount: "altazimuth",
      stance: "upright",
      use: ["eye", "sight", hopping, claim],
      hopping,
      claim,
      finderOffDeg: [0, 0],
    },
    aids: {
      ring: "free",
      compass: "priced",
      limits: "off",
      asInInstrument: "priced",
      carry: "priced",
      trail: "off",
      hints: "priced",
    },
    weights: { directness: 50, pins: 30, care: 20 },
    drift: false,
    pass: { points: [60, 75, 90] },
    stages: [
      {
        hop: {
          anchor,
          target,
          ways: hop.ways.map((marks, i) => ({ name: ways[i]!, marks })),
          ...said,
        },
      },
    ],
    ...words,
  };
}

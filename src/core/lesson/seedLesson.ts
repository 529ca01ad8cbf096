/** A hop over the practice sky of a seed word, as a lesson: the same for everyone who has the word. */
import { altAzFromDir, horizonFromIcrs } from "#core/celestial/frames.ts";
import { mixHash32 } from "#core/celestial/hash.ts";
import type { GearId } from "#core/seams/index.ts";
import { practiceFacts, practiceNames } from "#core/sky/practice/practiceSky.ts";
import { seedOf } from "#core/sky/practice/seed.ts";
import { SALLOWFELL_HILL } from "./sallowfellHill.ts";
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

/** What there is to hop over a seed's sky, by the names that it gives. */
export interface SeedHop {
  readonly seed: string;
  readonly anchor: string;
  /** The figure that the anchor is the brightest star of. */
  readonly figure: string;
  /** Azimuth of the anchor at the lesson's hour, radians, from north through east. */
  readonly anchorAzRad: number;
  readonly target: string;
  /** Between the two: a star, then a small triangle. */
  readonly marks: readonly string[];
  readonly hopping: (typeof OUTFITS)[number][0];
  readonly claim: (typeof OUTFITS)[number][1];
}

/** All that is said in such a lesson. */
export interface SeedWords extends Pick<Lesson, "title" | "briefing" | "afterwards"> {
  /** Of the way by star and triangle, and of the one that goes straight to the triangle. */
  readonly ways: readonly [string, string];
  readonly hop: Pick<LessonHop, "steps" | "hints" | "after">;
}

/**
 * The hop of a seed's sky: from its anchor to its galaxy, four degrees off, with one of four sets of instruments. Pure.
 * @throws InputError where the word is no seed word
 */
export function seedHopOf(seedWord: string): SeedHop {
  const { word, hash } = seedOf(seedWord);
  const { anchor, galaxy, galaxyWay } = practiceFacts(word);
  const [hopping, claim] = OUTFITS[mixHash32(hash, OUTFIT_DRAW) % OUTFITS.length]!;
  return {
    seed: word,
    anchor: anchor.proper ?? `${anchor.label} ${anchor.con}`,
    figure: practiceNames(word).figures.find(({ abbr }) => abbr === anchor.con)?.name ?? "",
    anchorAzRad: altAzFromDir(horizonFromIcrs(NIGHT.place, Date.parse(NIGHT.time)), anchor.dir).azRad,
    target: galaxy.names[0]!,
    marks: galaxyWay.map(({ name }) => name),
    hopping,
    claim,
  };
}

/** Such a hop and its words as a lesson that is played, recorded and scored as any other. */
export function seedLesson(id: string, hop: SeedHop, { ways, hop: said, ...words }: SeedWords): Lesson {
  const { seed, anchor, target, marks, hopping, claim } = hop;
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
    ...NIGHT,
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
          ways: [
            { name: ways[0], marks: [anchor, ...marks, target] },
            { name: ways[1], marks: [anchor, marks.at(-1)!, target] },
          ],
          ...said,
        },
      },
    ],
    ...words,
  };
}

/** Lessons that are made from a seed word: the sky of a day, and free practice. Their ids hold the word. */
import { DEG } from "#core/celestial/vector.ts";
import { type SeedHop, type SeedWords, seedHopOf, seedLesson } from "#core/lesson/seedLesson.ts";
import type { Lesson } from "#core/lesson/types.ts";
import { gearById } from "#core/optics/gear.ts";
import { InputError } from "#core/seams/errors.ts";
import { compassOf } from "../print/figures.ts";
import { EN_SEED } from "../words/en.seed.ts";
import { saySeed as say, seedOfId, seedTitle } from "./seedIds.ts";

const MOST_KEPT = 8;

function imageWords({ hopping }: SeedHop): string {
  const { path } = gearById(hopping);
  return path === "halfTurn" || path === "mirrorDiagonal" ? say(path) : say("erectingDiagonal");
}

function stepsOf({ anchor, figure, anchorAzRad, target }: SeedHop): SeedWords["hop"]["steps"] {
  const where = compassOf(anchorAzRad / DEG);
  return [
    { when: "start", now: say("findAnchor", { anchor }), say: say("findAnchorSay", { figure, where }) },
    { when: "anchorConfirmed", now: say("openFinder"), say: say("openFinderSay") },
    { when: "gear:finder", now: say("goOn"), say: say("goOnSay", { target }) },
    { when: "gear:eyepiece", now: say("claim"), say: say("claimSay") },
  ];
}

/** The words of a hop under a title. Braces that are left are filled by the report. */
const wordsFor = (hop: SeedHop, title: string): SeedWords => ({
  title,
  briefing: [say("briefing", { target: hop.target, anchor: hop.anchor }), imageWords(hop), say("ownSky")],
  ways: [say("wayOfSteps"), say("wayStraight")],
  hop: {
    steps: stepsOf(hop),
    hints: [
      [say("toStar"), say("toStarLike"), say("line")],
      [say("toTriangle"), say("toTriangleLike"), say("line")],
      [say("toTarget"), say("toTargetLike"), say("line")],
    ],
    after: {
      found: EN_SEED.found,
      wrong: EN_SEED.wrong,
      shown: EN_SEED.shown,
      notSeen: EN_SEED.notSeen,
      missed: EN_SEED.missed,
      outside: EN_SEED.outside,
      codes: {},
    },
  },
  afterwards: [EN_SEED.afterwards],
});

const kept = new Map<string, Lesson>();

/** The lesson of an id, each time the same one; null where the id holds no day and no seed word. */
export function seedLessonOf(id: string): Lesson | null {
  const known = kept.get(id);
  if (known) return known;
  try {
    const hop = seedHopOf(seedOfId(id));
    const made = seedLesson(id, hop, wordsFor(hop, seedTitle(id)));
    kept.set(id, made);
    if (kept.size > MOST_KEPT) kept.delete(kept.keys().next().value!);
    return made;
  } catch (error) {
    if (error instanceof InputError) return null;
    throw error;
  }
}

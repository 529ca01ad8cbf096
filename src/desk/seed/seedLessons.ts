/** Lessons that are made from a seed word: the sky of a day, and free practice. Their ids hold the word. */
import { seedHopOf, seedLesson } from "#core/lesson/seedLesson.ts";
import { SITE_SKY_MU } from "#core/lesson/siteSkies.ts";
import type { Lesson } from "#core/lesson/types.ts";
import { InputError } from "#core/seams/errors.ts";
import { say } from "../words/say.ts";
import { wordsFor } from "./hopWords.ts";
import { seedOfId, seedTitle } from "./seedIds.ts";

const MOST_KEPT = 8;

const kept = new Map<string, Lesson>();

/** The lesson of an id, in a language each time the same one; null where the id holds no day and no seed word. */
export function seedLessonOf(id: string): Lesson | null {
  const keptAs = `${say("language.code")} ${id}`;
  const known = kept.get(keptAs);
  if (known) return known;
  try {
    const { word, sky } = seedOfId(id);
    const hop = seedHopOf(word, SITE_SKY_MU[sky]);
    const made = seedLesson(id, hop, wordsFor(hop, seedTitle(id), sky));
    kept.set(keptAs, made);
    if (kept.size > MOST_KEPT) kept.delete(kept.keys().next().value!);
    return made;
  } catch (error) {
    if (error instanceof InputError) return null;
    throw error;
  }
}

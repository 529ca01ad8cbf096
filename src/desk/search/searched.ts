/** Which skies are searched: the lesson's own where one is hopped, else the catalogue and every practice sky of the course. */
import type { Lesson } from "#core/lesson/types.ts";
import type { SkyObject } from "#core/seams/index.ts";
import { catalogueNames } from "#core/sky/names/catalogueNames.ts";
import type { MovingBody } from "#core/sky/names/findByName.ts";
import type { SkyNames } from "#core/sky/names/types.ts";
import { catalogueObjects } from "#core/sky/objects.ts";
import { practiceNames, practiceObjects } from "#core/sky/practice/practiceSky.ts";
import { movingBodies } from "#core/sky/solar/movingBodies.ts";

export interface SearchedSky {
  /** The practice sky's seed word; null for the catalogue sky. */
  readonly seed: string | null;
  readonly names: SkyNames;
  readonly objects: readonly SkyObject[];
  readonly bodies: readonly MovingBody[];
}

const catalogueSky = (utcMs: number): SearchedSky => ({
  seed: null,
  names: catalogueNames(),
  objects: catalogueObjects(),
  bodies: movingBodies(utcMs),
});
/** Nothing wanders through an invented sky. */
const practiceSky = (seed: string): SearchedSky => ({
  seed,
  names: practiceNames(seed),
  objects: practiceObjects(seed),
  bodies: [],
});

/**
 * @param lesson the lesson that is hopped, whose night counts; null: tonight, and every sky
 * @param nowMs tonight
 */
export function searchedSkies(
  lesson: Pick<Lesson, "sky" | "time"> | null,
  lessons: readonly Pick<Lesson, "sky">[],
  nowMs: number,
): SearchedSky[] {
  if (lesson)
    return [lesson.sky === "catalogue" ? catalogueSky(Date.parse(lesson.time)) : practiceSky(lesson.sky.practice)];
  const seeds = lessons.flatMap(({ sky }) => (sky === "catalogue" ? [] : [sky.practice]));
  return [catalogueSky(nowMs), ...[...new Set(seeds)].map(practiceSky)];
}

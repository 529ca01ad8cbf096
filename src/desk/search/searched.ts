/** Which skies are searched: the lesson's own where one is hopped, else the catalogue and every practice sky of the course. */
import type { Lesson } from "#core/lesson/types.ts";
import type { SkyObject } from "#core/seams/index.ts";
import { catalogueNames } from "#core/sky/names/catalogueNames.ts";
import type { MovingBody } from "#core/sky/names/findByName.ts";
import type { NamedStar, SkyNames } from "#core/sky/names/types.ts";
import { catalogueObjects } from "#core/sky/objects.ts";
import { practiceNames, practiceObjects } from "#core/sky/practice/practiceSky.ts";
import { bySpokenName, withSpokenNames } from "../words/looks.ts";

export interface SearchedSky {
  /** The practice sky's seed word; null for the catalogue sky. */
  readonly seed: string | null;
  readonly names: SkyNames;
  readonly objects: readonly SkyObject[];
  readonly bodies: readonly MovingBody[];
  /** Whether it is the reader's own catalogue. */
  readonly isOwn?: true;
}

const catalogueSky = (bodies: readonly MovingBody[]): SearchedSky => ({
  seed: null,
  names: catalogueNames(),
  objects: catalogueObjects().map(withSpokenNames),
  bodies: bodies.map(bySpokenName),
});
/** Nothing wanders through an invented sky. */
const practiceSky = (seed: string): SearchedSky => ({
  seed,
  names: practiceNames(seed),
  objects: practiceObjects(seed),
  bodies: [],
});

/** Names alone: figures, objects and planets are the real sky's, whatever stars are drawn. */
const ownSky = (stars: readonly NamedStar[]): SearchedSky => ({
  seed: null,
  names: { stars, segments: [], figures: [] },
  objects: [],
  bodies: [],
  isOwn: true,
});

const withBrought = (sky: SearchedSky, brought: readonly SkyObject[]): SearchedSky =>
  brought.length === 0 ? sky : { ...sky, objects: [...sky.objects, ...brought] };

/** The instant at which planets are looked for: the lesson's night, or now. */
export const searchedAtMs = (lesson: Pick<Lesson, "time"> | null, nowMs: number): number =>
  lesson ? Date.parse(lesson.time) : nowMs;

/**
 * @param lesson the lesson that is hopped; null: every sky
 * @param bodies Sun, Moon and planets where they stand
 * @param own the named stars of the reader's own catalogue: they stand in the real sky
 * @param brought comets and minor planets of the lesson's own: they stand in its sky
 */
export function searchedSkies(
  lesson: Pick<Lesson, "sky"> | null,
  lessons: readonly Pick<Lesson, "sky">[],
  bodies: readonly MovingBody[],
  own: readonly NamedStar[] = [],
  brought: readonly SkyObject[] = [],
): SearchedSky[] {
  if (lesson && lesson.sky !== "catalogue") return [withBrought(practiceSky(lesson.sky.practice), brought)];
  const catalogue = withBrought(catalogueSky(bodies), brought);
  const real = own.length > 0 ? [ownSky(own), catalogue] : [catalogue];
  if (lesson) return real;
  const seeds = lessons.flatMap(({ sky }) => (sky === "catalogue" ? [] : [sky.practice]));
  return [...real, ...[...new Set(seeds)].map(practiceSky)];
}

/** How far the course has come: which lesson is next, what each has earned, where each stands as a star. */
import type { Lesson } from "#core/lesson/types.ts";
import type { FinishedAttempt } from "../app/ports.ts";
import { bestStars, nextLesson } from "../report/nextStep.ts";

/** A place of a part: a lesson that is there, or one still to come. */
export interface CoursePlace {
  readonly number: number;
  readonly lesson: Lesson | null;
  /** Best of all attempts; null where there was none. */
  readonly stars: number | null;
}
export interface CoursePart {
  readonly part: number;
  /** In the order of their numbers; two lessons of one number (twins for two skies) stand after one another. */
  readonly places: readonly CoursePlace[];
}
export interface Course {
  readonly parts: readonly CoursePart[];
  readonly next: Lesson | null;
  /** The next lesson's part, or the last one's. */
  readonly inHand: CoursePart;
  readonly done: number;
  readonly of: number;
}

function placesOf(own: readonly Lesson[], finished: readonly FinishedAttempt[]): CoursePlace[] {
  const most = Math.max(...own.map(({ of }) => of));
  return Array.from({ length: most }, (_, i) => i + 1).flatMap((number): CoursePlace[] => {
    const here = own.filter((lesson) => lesson.number === number);
    if (here.length === 0) return [{ number, lesson: null, stars: null }];
    return here.map((lesson) => ({ number, lesson, stars: bestStars(lesson.id, finished) }));
  });
}

/** @param lessons at least one */
export function courseOf(lessons: readonly Lesson[], finished: readonly FinishedAttempt[]): Course {
  const parts = [...new Set(lessons.map(({ part }) => part))]
    .sort((a, b) => a - b)
    .map((part) => ({
      part,
      places: placesOf(
        lessons.filter((lesson) => lesson.part === part),
        finished,
      ),
    }));
  const next = nextLesson(null, lessons, finished);
  const inHand = parts.find(({ part }) => part === next?.part) ?? parts.at(-1);
  if (!inHand) throw new Error("a course has at least one lesson");
  return {
    parts,
    next,
    inHand,
    done: lessons.filter(({ id }) => (bestStars(id, finished) ?? 0) > 0).length,
    of: lessons.length,
  };
}

const RIM = { fromDeg: -150, toDeg: 150 } as const;

/** Where a part's places stand on the rim, degrees clockwise from the top. */
export const rimAngle = (index: number, count: number): number =>
  count < 2 ? 0 : RIM.fromDeg + ((RIM.toDeg - RIM.fromDeg) * index) / (count - 1);

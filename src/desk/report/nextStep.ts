/** What a report proposes: the lesson that trains the habit, the next lesson, or the same hop again. */
import type { Lesson } from "#core/lesson/types.ts";
import type { Report } from "#core/seams/index.ts";
import type { FinishedAttempt } from "../app/ports.ts";

export type NextStep =
  | { readonly kind: "train" | "next"; readonly lesson: Lesson }
  | { readonly kind: "again"; readonly lesson: Lesson };

/** Most stars earned at a lesson so far; null where it was never finished. Nothing earned is lost. */
export function bestStars(lessonId: string, finished: readonly FinishedAttempt[]): number | null {
  const own = finished.filter((one) => one.lessonId === lessonId);
  return own.length === 0 ? null : Math.max(...own.map(({ stars }) => stars));
}

/** The next lesson after one that has no star yet, or else the first such; null where all have one. */
export function nextLesson(
  after: Lesson | null,
  lessons: readonly Lesson[],
  finished: readonly FinishedAttempt[],
): Lesson | null {
  const open = lessons.filter(({ id }) => id !== after?.id && !bestStars(id, finished));
  const from = after ? lessons.findIndex(({ id }) => id === after.id) : -1;
  return open.find((one) => lessons.indexOf(one) > from) ?? open[0] ?? null;
}

/** The lesson that trains the habit of a report, where the course has it and it is another. */
export const trainingFor = ({ habit }: Report, lesson: Lesson, lessons: readonly Lesson[]): Lesson | null =>
  (habit && habit.lesson !== lesson.id && lessons.find(({ id }) => id === habit.lesson)) || null;

export function nextStep(
  passed: boolean,
  trainedIn: Lesson | null,
  lesson: Lesson,
  lessons: readonly Lesson[],
  finished: readonly FinishedAttempt[],
): NextStep {
  if (trainedIn) return { kind: "train", lesson: trainedIn };
  const next = passed ? nextLesson(lesson, lessons, finished) : null;
  return next ? { kind: "next", lesson: next } : { kind: "again", lesson };
}

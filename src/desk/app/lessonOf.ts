/** Lessons by their ids: those that come with the page, and those that are made from a seed word when they are asked for. */
import { signal } from "@preact/signals";
import type { Lesson } from "#core/lesson/types.ts";

const maker = signal<typeof import("../seed/seedLessons.ts") | null>(null);

/** Whether an id is that of a lesson made from a seed word; no lesson that comes along has such an id. */
export const isSeeded = (lessonId: string): boolean => /^(daily|free\d*)-/.test(lessonId);

/** The lesson of an id; null where there is none, "coming" while what makes it is on its way: read in a component, it asks again. */
export function lessonOf(lessons: readonly Lesson[], lessonId: string): Lesson | "coming" | null {
  if (!isSeeded(lessonId)) return lessons.find(({ id }) => id === lessonId) ?? null;
  if (maker.value) return maker.value.seedLessonOf(lessonId);
  void import("../seed/seedLessons.ts").then((it) => {
    maker.value = it;
  });
  return "coming";
}

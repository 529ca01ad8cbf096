declare module "virtual:lessons" {
  import type { Lesson } from "#core/lesson/types.ts";

  /** Every lesson of lessons/, in the order of the course. */
  const lessons: readonly Lesson[];
  export default lessons;
}

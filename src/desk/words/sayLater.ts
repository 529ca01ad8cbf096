/** Words of a screen that comes later travel with it, and cost nothing before. */
import { type FigureOf, filled } from "./say.ts";

/**
 * A `say` for one section that is not part of what the page loads first. A missing key or figure is a type error.
 * @param words the section
 */
export const sayLater =
  <Words extends Readonly<Record<string, string>>>(words: Words) =>
  <K extends Extract<keyof Words, string>>(
    key: K,
    ...figures: [FigureOf<Words[K]>] extends [never] ? [] : [Record<FigureOf<Words[K]>, string | number>]
  ): string =>
    filled(words[key]!, figures[0] ?? {});

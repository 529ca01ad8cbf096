/** Words of a screen that comes later travel with it, and cost nothing before. */
import type { DE } from "./de.ts";
import { type FigureOf, filled, type InWords, translation } from "./say.ts";

/**
 * The words of one section that is not part of what the page loads first, in the language that is spoken.
 * @param section what another language calls it
 * @param words it in English
 */
export const wordsLater =
  <Name extends keyof typeof DE, Words extends InWords<(typeof DE)[Name]>>(section: Name, words: Words) =>
  (): InWords<Words> =>
    (translation.value?.[section] as InWords<Words> | undefined) ?? words;

/** A `say` for one such section. A missing key or figure is a type error. */
export function sayLater<Name extends keyof typeof DE, Words extends InWords<(typeof DE)[Name]>>(
  section: Name,
  words: Words,
) {
  const spoken = wordsLater(section, words);
  return <K extends Extract<keyof Words, string>>(
    key: K,
    ...figures: [FigureOf<Words[K]>] extends [never] ? [] : [Record<FigureOf<Words[K]>, string | number>]
  ): string => filled(spoken()[key], figures[0] ?? {});
}

/** How large a lesson may be. Apart from the parser, so that a text can be refused before anything is loaded for it. */

/** Bytes in UTF-8. */
export const LARGEST_BYTES = 65_536;

/** Counts no further than needed. */
export const isTooLarge = (text: string): boolean =>
  text.length > LARGEST_BYTES ||
  (text.length * 3 > LARGEST_BYTES && new TextEncoder().encode(text).length > LARGEST_BYTES);

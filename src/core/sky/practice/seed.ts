/** Seed words. */
import { fnv1a32 } from "#core/celestial/hash.ts";
import { InputError } from "#core/seams/errors.ts";

/**
 * Counts up whenever the same word would give another sky. It is in no draw: what comes anew into a sky leaves all else of it
 * where it was.
 */
export const PRACTICE_SKY_VERSION = 4;
/**
 * Mixed into every draw. Under this number the word "sallow" lays its cluster to the left of its star and names them Orlo and
 * Rowanberries, as the first lesson tells.
 */
const SALT_BYTES: readonly number[] = [84, 6, 3];
const LONGEST = 64;

/** What a draw is for: no two purposes share a sequence. */
export const PURPOSE = {
  field: 1,
  frame: 2,
  plan: 3,
  names: 4,
  cluster: 5,
  hills: 6,
  companions: 7,
  lanes: 8,
  objects: 9,
  members: 10,
  dust: 11,
  asterisms: 12,
  greatClouds: 13,
} as const;

export type Seed = {
  /** The word as it is kept: trimmed, small letters. */
  readonly word: string;
  readonly hash: number;
};

/** @throws InputError where the word is empty or longer than 64 */
export function seedOf(text: string): Seed {
  const word = text.trim().toLowerCase();
  if (word.length === 0 || word.length > LONGEST) {
    throw new InputError(`"${text.slice(0, LONGEST)}" is no seed word`, `A seed word has 1 to ${LONGEST} characters.`);
  }
  const bytes = [...SALT_BYTES];
  for (let i = 0; i < word.length; i++) bytes.push(word.charCodeAt(i) & 255, word.charCodeAt(i) >> 8);
  return { word, hash: fnv1a32(bytes) };
}

/** Seed words to start from: two of the hill's own, as chance has it. */
const FIRST = "fold heath briar moss peat beck rowan fern thorn lark ling reed marl tarn holt wold".split(" ");
const SECOND = "gate lane end wall side stone garth field mill yard bank hollow edge ford loft barn".split(" ");

/** A seed word such as "peat-lane". @param chance gives numbers from 0 to below 1 */
export function drawSeedWord(chance: () => number): string {
  const pick = (words: readonly string[]) => words[Math.floor(chance() * words.length)]!;
  return `${pick(FIRST)}-${pick(SECOND)}`;
}

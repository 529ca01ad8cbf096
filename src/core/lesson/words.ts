/** The learner's words: which values may stand in braces, and how a line is filled. */

/** Values that a line may name; what they hold is a text ready to be said. */
export const PLACEHOLDERS = [
  "anchor",
  "target",
  "trailDeg",
  "parDeg",
  "trailFields",
  "parFields",
  "shortFields",
  "points",
  "cost",
  "claims",
  "seconds",
] as const;
export type Placeholder = (typeof PLACEHOLDERS)[number];
export type Figures = Readonly<Partial<Record<Placeholder, string>>>;

const BRACES = /\{([^{}]*)\}/g;

/** The names in braces of a line, in order. */
export const placeholdersOf = (line: string): string[] => [...line.matchAll(BRACES)].map(([, name]) => name!);

/** The line with its values; null where one is missing: such a line is not said. */
export function fillLine(line: string, figures: Figures): string | null {
  let whole = true;
  const filled = line.replace(BRACES, (_, name: string) => {
    const value = Object.hasOwn(figures, name) ? figures[name as Placeholder] : undefined;
    if (value === undefined) whole = false;
    return value ?? "";
  });
  return whole ? filled : null;
}

/** A text's sentences: cut at full stops, question marks, colons after whole sentences left in one. */
export const sentencesOf = (text: string): string[] =>
  text
    .split(/(?<=[.?!])\s+(?=["'\p{Lu}\d{])/u)
    .map((sentence) => sentence.trim())
    .filter((sentence) => sentence !== "");

export const wordCount = (sentence: string): number =>
  sentence.split(/[\s–—]+/).filter((word) => /[\p{L}\d{]/u.test(word)).length;

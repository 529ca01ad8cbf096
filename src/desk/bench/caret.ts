/** Places of a text: line and column as findings count them, and the caret's offset. */

/** Both count from 1; columns in UTF-16 units. */
export interface TextPlace {
  readonly line: number;
  readonly column: number;
}

export const linesIn = (text: string): number => text.split("\n").length;

/** Where the caret goes for a place; one beyond the end of its line, or of the text, is drawn back to that end. */
export function offsetOf(text: string, { line, column }: TextPlace): number {
  let start = 0;
  for (let n = 1; n < line; n++) {
    const end = text.indexOf("\n", start);
    if (end < 0) return text.length;
    start = end + 1;
  }
  const end = text.indexOf("\n", start);
  return Math.min(start + Math.max(0, column - 1), end < 0 ? text.length : end);
}

/** The place of an offset of the text. */
export function placeAt(text: string, offset: number): TextPlace {
  const before = text.slice(0, offset);
  return { line: linesIn(before), column: offset - before.lastIndexOf("\n") };
}

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { linesIn, offsetOf, placeAt } from "../../../src/desk/bench/caret.ts";

const TEXT = "format: 1\n  title: Nördlich\n\nlast";

describe("places of a text", () => {
  it.each([
    [1, 1, 0],
    [1, 9, 8],
    [2, 3, 12],
    [3, 1, 28],
    [4, 5, 33],
  ])("line %i, column %i is offset %i", (line, column, offset) => {
    expect(offsetOf(TEXT, { line, column })).toBe(offset);
    expect(placeAt(TEXT, offset)).toEqual({ line, column });
  });
  it("beyond a line's end the caret stands at that end, beyond the text at the text's", () => {
    expect(offsetOf(TEXT, { line: 1, column: 50 })).toBe(9);
    expect(offsetOf(TEXT, { line: 3, column: 2 })).toBe(28);
    expect(offsetOf(TEXT, { line: 9, column: 1 })).toBe(TEXT.length);
    expect(offsetOf("", { line: 1, column: 1 })).toBe(0);
  });
  it("every offset comes back from its place", () => {
    const texts = fc.array(fc.constantFrom("a", "ö", "🔭", " ", "\n", "\t")).map((parts) => parts.join(""));
    fc.assert(
      fc.property(texts, fc.nat(), (text, any) => {
        const offset = any % (text.length + 1);
        const place = placeAt(text, offset);
        expect(offsetOf(text, place)).toBe(offset);
        expect(place.line).toBeLessThanOrEqual(linesIn(text));
      }),
    );
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nearestWord } from "#core/lesson/nearestWord.ts";
import { fillLine, placeholdersOf, sentencesOf, wordCount } from "#core/lesson/words.ts";

describe("a line's values", () => {
  it("stand in place of their names", () => {
    expect(fillLine("{trailDeg} degrees for {parDeg}.", { trailDeg: "1.6", parDeg: "1.5" })).toBe(
      "1.6 degrees for 1.5.",
    );
  });
  it("are all needed: a line that lacks one is not said", () => {
    expect(fillLine("That cost {cost} points.", { points: "70" })).toBeNull();
    expect(fillLine("No {toString} from elsewhere.", {})).toBeNull();
  });
  it("are found by name", () => {
    expect(placeholdersOf("{a} and {trailDeg}, {a}")).toEqual(["a", "trailDeg", "a"]);
  });
  it("a line without braces stays as it is", () => {
    fc.assert(
      fc.property(
        fc.string().filter((text) => !/[{}]/.test(text)),
        (text) => {
          expect(fillLine(text, {})).toBe(text);
        },
      ),
    );
  });
});

describe("sentences", () => {
  it("end at full stops and question marks, not at decimals", () => {
    expect(sentencesOf("It stands at 5.7 there. See it? Then go.")).toEqual([
      "It stands at 5.7 there.",
      "See it?",
      "Then go.",
    ]);
  });
  it("are counted in words, signs left out", () => {
    expect(wordCount("One step, {trailDeg} degrees - and 1.5 more.")).toBe(7);
  });
});

describe("the nearest known word", () => {
  it.each([
    ["minuts", "minutes"],
    ["tunr", "turn"],
    ["FINDER-9X50", "finder-9x50"],
  ])("%s means %s", (typed, meant) => {
    expect(nearestWord(typed, ["minutes", "turn", "finder-9x50"])).toBe(meant);
  });
  it("is none where a third of the letters differ", () => {
    expect(nearestWord("altitude", ["minutes", "turn"])).toBeUndefined();
  });
  it("is the word itself where it is known", () => {
    const word = fc.string({ minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(fc.array(word), word, (others, own) => {
        expect(nearestWord(own, [...others, own])?.toLowerCase()).toBe(own.toLowerCase());
      }),
    );
  });
});

/**
 * Names of invented skies against those of the real one (the 88 constellations in Latin, English and German, proper names of
 * stars) and against a list of other works' worlds and stars, former constellations, asterisms and nicknames of objects. The
 * list is from memory and not complete.
 */
import { describe, expect, test } from "vitest";
import { catalogueNames } from "#core/sky/names/catalogueNames.ts";
import { constellations } from "#core/sky/names/constellations.ts";
import { ASTERISM_SHAPES } from "#core/sky/practice/asterismShapes.ts";
import { createChance } from "#core/sky/practice/chance.ts";
import { practiceNames, practiceObjects } from "#core/sky/practice/practiceSky.ts";
import { PURPOSE, seedOf } from "#core/sky/practice/seed.ts";
import { drawWords } from "#core/sky/practice/words.ts";
import table from "#shared/sallowfell.json" with { type: "json" };
import taken from "./data/takenNames.json" with { type: "json" };

const SEEDS = Array.from({ length: 240 }, (_, i) => `sky-${i}`);
/** Whole skies, which cost more than their words. */
const GROWN = SEEDS.slice(0, 8);

const wordsOf = (text: string): string[] =>
  text
    .normalize("NFC")
    .toLowerCase()
    .match(/[\p{L}\p{N}']+/gu) ?? [];
/** A name in a text, as whole words one after another, in any capitals. */
const holds = (text: string, name: string) => ` ${wordsOf(text).join(" ")} `.includes(` ${wordsOf(name).join(" ")} `);

const real = [...constellations().values()];
const ARTICLES = /^(the|der|die|das) /;
/** What is refused, by where it is from. */
const REFUSED: Readonly<Record<string, readonly string[]>> = {
  "constellations in Latin": real.flatMap(({ name, genitive }) => [name, genitive]),
  "constellations in English": real.map(({ meaning }) => meaning.en.replace(ARTICLES, "")),
  "constellations in German": real.map(({ meaning }) => meaning.de.replace(ARTICLES, "")),
  "proper names of stars": catalogueNames().stars.flatMap(({ proper }) => proper ?? []),
  "other works": taken.works,
  "former constellations": taken.formerConstellations,
  asterisms: taken.asterisms,
  "nicknames of objects": taken.nicknames,
};
const clashes = (names: readonly string[], refused: readonly string[]) =>
  names.flatMap((name) => refused.filter((other) => holds(name, other)).map((other) => `${name}: ${other}`));

/** All that the words of so many seeds hold, and every figure's name, large and small. */
const drawn = SEEDS.flatMap((seed) => {
  const { stars, cluster, galaxy } = drawWords(createChance(seedOf(seed).hash, PURPOSE.names));
  return [...stars, cluster, galaxy];
});
const figures = Object.values(table.figures)
  .flat()
  .map(([, name]) => name!);
const small = ASTERISM_SHAPES.flatMap(({ names }) => names);
const ALL = [...new Set([...drawn, ...figures, ...small])];

describe("names of invented skies", () => {
  test("the lists are there, none empty", () => {
    for (const names of Object.values(REFUSED)) expect(names.length).toBeGreaterThan(60);
    expect(taken.works.length).toBeGreaterThan(600);
    expect(ALL.length).toBeGreaterThan(160);
  });

  test("no two of a sky are alike", () => {
    expect([...small].filter((name, i) => small.indexOf(name) < i || figures.includes(name))).toEqual([]);
  });

  test.each(Object.keys(REFUSED))("are none of the %s", (from) => {
    expect(clashes(ALL, REFUSED[from]!)).toEqual([]);
  });

  test("a whole sky has no others", () => {
    const known = new Set(ALL);
    for (const seed of GROWN) {
      const { stars, figures: own } = practiceNames(seed);
      const said = [...stars.flatMap(({ proper }) => proper ?? []), ...own.map(({ name }) => name)];
      const objects = practiceObjects(seed).flatMap(({ names }) => names);
      // Beside the two that have names, and small figures, objects have the seed word and a number.
      const numbered = new RegExp(`^${seed} \\d+$`, "i");
      expect([...said, ...objects.filter((name) => !numbered.test(name))].filter((name) => !known.has(name))).toEqual(
        [],
      );
    }
  });

  test("a clash would be found: in any capitals, among other words, not within one", () => {
    expect(clashes(["LYRA", "Great arrakis Gate", "Lyrata", "The Air Pump"], ["Lyra", "Arrakis", "air pump"])).toEqual([
      "LYRA: Lyra",
      "Great arrakis Gate: Arrakis",
      "The Air Pump: air pump",
    ]);
  });
});

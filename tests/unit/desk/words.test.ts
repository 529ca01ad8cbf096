/** Every language says the same: the same keys, the same figures, and nothing left over from the other. */
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { afterEach, describe, expect, it } from "vitest";
import { gearById } from "#core/optics/gear.ts";
import { catalogueObjects } from "#core/sky/objects.ts";
import { practiceFacts, practiceObjects } from "#core/sky/practice/practiceSky.ts";
import gearTable from "#shared/gear.json";
import lines from "#shared/looks.de.json";
import { imageLine, instrumentLine } from "../../../src/desk/play/rimWords.ts";
import { DE } from "../../../src/desk/words/de.ts";
import { languageFor } from "../../../src/desk/words/language.ts";
import { bySpokenName, looksOf, looksReady, withSpokenNames } from "../../../src/desk/words/looks.ts";
import { filled, fixed, markName, midSentence, say, translation, written } from "../../../src/desk/words/say.ts";
import { sayLater } from "../../../src/desk/words/sayLater.ts";

const folder = fileURLToPath(new URL("../../../src/desk/words/", import.meta.url));
type Words = Readonly<Record<string, string>>;

/** Sections by name, as a language's files have them. */
async function sectionsOf(language: "en" | "de"): Promise<Map<string, Words>> {
  const files = readdirSync(folder).filter((name) => new RegExp(`^${language}\\.\\w+\\.ts$`).test(name));
  const sections = new Map<string, Words>();
  for (const file of files) {
    const words = Object.values((await import(`${folder}${file}`)) as Record<string, Words>);
    expect(words, file).toHaveLength(1);
    sections.set(file.split(".")[1]!, words[0]!);
  }
  return sections;
}
const english = await sectionsOf("en");
const german = await sectionsOf("de");
const bracesOf = (text: string) => [...text.matchAll(/\{(\w+)\}/g)].map(([, name]) => name!).sort();
const pairs = [...english].flatMap(([section, words]) =>
  Object.entries(words).map(([key, en]) => ({ key: `${section}.${key}`, en, de: german.get(section)?.[key] ?? "" })),
);
const isBare = (text: string) => text.replace(/\{\w+\}/g, "").replace(/[^\p{L}]/gu, "").length < 3;

/** Words that are the same in both languages: the name, examples and signs. */
const SAME = ["print.sky", "search.example", "search.place", "start.name"];

afterEach(() => {
  translation.value = null;
});

describe("the German words", () => {
  it("have the sections and keys of the English ones, no more and no less", () => {
    expect(english.size).toBeGreaterThan(10);
    const { marks, ...asEnglish } = DE;
    expect([...german.keys()].sort()).toEqual([...english.keys(), "marks"].sort());
    for (const [section, words] of english)
      expect(Object.keys(german.get(section)!).sort(), section).toEqual(Object.keys(words).sort());
    expect(Object.keys(asEnglish).sort()).toEqual([...english.keys()].sort());
    for (const [section, words] of german) expect(DE[section as keyof typeof DE], section).toBe(words);
  });

  it("name the same figures", () => {
    for (const { key, en, de } of pairs) expect(bracesOf(de), key).toEqual(bracesOf(en));
  });

  it("leave no English text over, but what is the same in both", () => {
    const left = pairs.filter(({ en, de }) => en === de && !isBare(en)).map(({ key }) => key);
    expect(left.sort()).toEqual(SAME);
  });

  it("say du, and shout nowhere", () => {
    for (const { key, de } of pairs) {
      expect(de, key).not.toMatch(/!/);
      // "Sie" only as "she" or "they", which begins a sentence.
      expect(de, key).not.toMatch(/[^.:]\s(Sie|Ihr|Ihre|Ihnen)\b/);
    }
  });

  it("have a comma in their figures", () => {
    for (const { key, de } of pairs) expect(de, key).not.toMatch(/\d\.\d(?!\d\d)/);
  });
});

describe("the rim's room: 28 letters in the claim, 40 on top", () => {
  const inBoth = (check: () => void) => {
    for (const words of [null, DE]) {
      translation.value = words;
      check();
    }
  };

  it("holds the claim and what stands in its place", () => {
    inBoth(() => {
      for (const key of ["play.claim", "play.seek", "play.seekShort", "play.notSeen", "play.toField"] as const)
        expect(say(key).length, say(key)).toBeLessThanOrEqual(28);
    });
  });

  it("holds every instrument and its image", () => {
    expect(gearTable.gear.length).toBeGreaterThan(10);
    inBoth(() => {
      for (const { id } of gearTable.gear) {
        const gear = gearById(id);
        for (const short of [true, false]) {
          expect(instrumentLine(gear, short).length, instrumentLine(gear, short)).toBeLessThanOrEqual(40);
          expect(imageLine(gear, short).length).toBeLessThanOrEqual(28);
        }
      }
    });
  });
});

describe("speaking German", () => {
  it("is for who asks for it by the browser, or has chosen it", () => {
    expect(languageFor(null, "de")).toBe("de");
    expect(languageFor(null, "de-AT")).toBe("de");
    expect(languageFor(null, "den")).toBe("en");
    expect(languageFor(null, "fr-CH")).toBe("en");
    expect(languageFor("en", "de-DE")).toBe("en");
    expect(languageFor("de", "en-GB")).toBe("de");
  });

  it("takes the place of English, at once and in the sections that come later", () => {
    const sayScreen = sayLater("screen", english.get("screen") as typeof DE.screen);
    expect(say("play.claim")).toBe("This is it");
    expect(sayScreen("title")).toBe("Your screen");
    translation.value = DE;
    expect(say("play.claim")).toBe("Das ist es");
    expect(sayScreen("title")).toBe("Dein Bildschirm");
  });

  it("writes figures with a comma, given as numbers or made with so many decimals", () => {
    expect([fixed(4.25, 1), written(1.76), filled("{a} {b}", { a: 0.5, b: "1.5" })]).toEqual([
      "4.3",
      "1.76",
      "0.5 1.5",
    ]);
    translation.value = DE;
    expect([fixed(4.25, 1), written(1.76), filled("{a} {b}", { a: 0.5, b: "1.5" })]).toEqual([
      "4,3",
      "1,76",
      "0,5 1.5",
    ]);
    expect(say("play.degree", { deg: fixed(8, 1) })).toBe("8,0°");
  });

  it("keeps nouns large within a sentence", () => {
    expect(midSentence(say("gear.finder"))).toBe("finder");
    translation.value = DE;
    expect(midSentence(say("gear.finder"))).toBe("Sucher");
  });
});

describe("German lines on how things look", () => {
  const { byId, bySentence, names } = lines as Readonly<Record<"byId" | "bySentence" | "names", Words>>;
  const real = catalogueObjects();

  it("are there for every object of the catalogue, and for nothing else", () => {
    expect(Object.keys(byId).sort()).toEqual(real.map(({ id }) => id).sort());
    expect(real.filter(({ id, looks }) => byId[id] === looks)).toEqual([]);
    expect(Object.keys(names).filter((name) => !real.some((object) => object.names.includes(name)))).toEqual([
      "Sun",
      "Moon",
      "Mercury",
      "Neptune",
    ]);
  });

  it("are there for all that practice skies show", () => {
    const said = new Set(
      ["peat-lane", "fold-gate", "tarn", "holt-loft"].flatMap(practiceObjects).map(({ looks }) => looks),
    );
    expect(said.size).toBeGreaterThan(20);
    expect([...said].filter((looks) => !Object.hasOwn(bySentence, looks))).toEqual([]);
  });

  it("are there for each waymark of a practice sky that says what it is", () => {
    const marks = ["peat-lane", "fold-gate"].flatMap((seed) => {
      const { clusterWay, galaxyWay } = practiceFacts(seed);
      return [...clusterWay, ...galaxyWay].map(({ name }) => name).filter((name) => name.startsWith("the "));
    });
    expect([...new Set(marks)].sort()).toEqual(Object.keys(DE.marks).sort());
    translation.value = DE;
    expect(marks.map(markName)).not.toContain(marks[0]);
    expect(markName("gamma Sge")).toBe("gamma Sge");
  });

  it("take the place of the English ones where German is spoken", async () => {
    const ring = real.find(({ id }) => id === "M57")!;
    expect(looksOf(ring)).toBe(ring.looks);
    translation.value = DE;
    await looksReady();
    expect(looksOf(ring)).toMatch(/^Ein kleiner grauer Rauchring/);
    expect(withSpokenNames(ring).names).toEqual([...ring.names, "Ringnebel"]);
    expect(bySpokenName({ name: "Moon", dir: [1, 0, 0], magV: -12 }).name).toBe("Mond");
  });
});

describe("the catalogue's files", () => {
  it("have no text of one language in the other's file", () => {
    for (const file of readdirSync(folder).filter((name) => name.startsWith("en.")))
      expect(readFileSync(`${folder}${file}`, "utf8"), file).not.toMatch(/[äöüß]/i);
  });
});

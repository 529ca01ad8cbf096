import { describe, expect, it } from "vitest";
import { constellations } from "#core/sky/names/constellations.ts";
import { practiceFacts, practiceNames } from "#core/sky/practice/practiceSky.ts";
import { movingBodies } from "#core/sky/solar/movingBodies.ts";
import { answersTo, moreWords, placeWords, whatWords } from "../../../src/desk/search/answers.ts";
import { searchedAtMs, searchedSkies } from "../../../src/desk/search/searched.ts";

const NOW = Date.parse("2027-08-31T21:00:00Z");
const everywhere = searchedSkies(null, [{ sky: { practice: "sallow" } }, { sky: "catalogue" }], movingBodies(NOW));
const first = (query: string, skies = everywhere) => answersTo(query, skies)[0];

describe("what the box finds", () => {
  it.each([
    ["m57", "M 57", "planetary nebula in Lyra, magnitude 8.8"],
    ["NGC 6720", "M 57", "planetary nebula in Lyra, magnitude 8.8"],
    ["vega", "Vega", "star in Lyra, magnitude 0.0"],
    ["cygnus", "Cygnus", "constellation"],
    ["bet cyg", "Albireo", null],
    ["andromdea", "Andromeda", "constellation"],
  ])("%s is %s", (query, name, what) => {
    const answer = first(query)!;
    expect([answer.match.name, ...answer.match.otherNames].join("; ")).toContain(name);
    if (what) expect(whatWords(answer)).toBe(what);
  });

  it("a planet stands where it is on the lesson's night", () => {
    const later = searchedAtMs({ time: "2030-08-31T21:00:00Z" }, NOW);
    const [tonight] = answersTo("saturn", everywhere);
    const [then] = answersTo("saturn", searchedSkies({ sky: "catalogue" }, [], movingBodies(later)));
    expect(tonight!.match.kind).toBe("body");
    expect(placeWords(then!.match.dir)).not.toBe(placeWords(tonight!.match.dir));
  });

  it("a practice sky's own names, each with its sky", () => {
    const { anchor, galaxy } = practiceFacts("sallow");
    const answer = first(galaxy.names[0]!)!;
    expect(answer.sky.seed).toBe("sallow");
    expect(moreWords(answer)).toContain("In the practice sky sallow.");
    expect(first(anchor.proper!)!.match.name).toBe(anchor.proper);
    expect(first(practiceNames("sallow").figures[0]!.name)!.match.kind).toBe("constellation");
  });

  it("in a lesson its own sky alone", () => {
    const practice = searchedSkies({ sky: { practice: "sallow" } }, [], movingBodies(NOW));
    expect(answersTo("vega", practice)).toEqual([]);
    expect(answersTo("saturn", practice)).toEqual([]);
  });

  it("the reader's own names in the real sky, never in a practice sky", () => {
    const own = [{ dir: [1, 0, 0], magV: 6.2, label: "Hill Lantern", proper: "Hill Lantern" }] as const;
    const answer = answersTo("hill lanten", searchedSkies({ sky: "catalogue" }, [], [], own))[0]!;
    expect(answer.match.name).toBe("Hill Lantern");
    expect(whatWords(answer)).toBe("star in Pisces, magnitude 6.2");
    expect(moreWords(answer)).toEqual(["From your own catalogue."]);
    expect(answersTo("hill lantern", searchedSkies({ sky: { practice: "sallow" } }, [], [], own))).toEqual([]);
  });

  it("each of the 88 constellations by its Latin name and its abbreviation, with what the name means", () => {
    const catalogue = searchedSkies({ sky: "catalogue" }, [], []);
    for (const [abbr, { name, meaning }] of constellations()) {
      const named = answersTo(name, catalogue).find(({ match }) => match.kind === "constellation");
      expect([name, named?.match.id, named && moreWords(named)]).toEqual([
        name,
        abbr,
        [`The name means: ${meaning.en}.`],
      ]);
      const short = answersTo(abbr, catalogue).find(({ match }) => match.kind === "constellation");
      expect([abbr, short?.match.id]).toEqual([abbr, abbr]);
    }
    expect(constellations().size).toBe(88);
  });

  it("nothing, for nothing or nonsense", () => {
    expect(answersTo("", everywhere)).toEqual([]);
    expect(answersTo("qqqqqqq", everywhere)).toEqual([]);
  });
});

describe("places in words", () => {
  it("rounds without ever saying 60", () => {
    expect(placeWords([1, 0, 0])).toBe("0h 0.0m, +0° 00′ (J2000)");
    expect(placeWords([Math.cos(1e-9), -Math.sin(1e-9), 0])).toBe("0h 0.0m, +0° 00′ (J2000)");
    expect(placeWords([0, 0, -1])).toBe("0h 0.0m, −90° 00′ (J2000)");
  });
});

import { describe, expect, it } from "vitest";
import { DEG, dirFromRadec, separationRad } from "#core/celestial/vector.ts";
import type { Dir, SkyObject } from "#core/seams/index.ts";
import { catalogueDoubles } from "#core/sky/doubles.ts";
import { catalogueNames } from "#core/sky/names/catalogueNames.ts";
import { constellations } from "#core/sky/names/constellations.ts";
import { figureCentre } from "#core/sky/names/figureCentre.ts";
import { findByName } from "#core/sky/names/findByName.ts";
import { plainName, signOfLetter } from "#core/sky/names/letters.ts";
import { isOneSlip } from "#core/sky/names/nameIndex.ts";
import type { SkyNames } from "#core/sky/names/types.ts";
import { catalogueObjects } from "#core/sky/objects.ts";

const at = (raDeg: number, decDeg: number): Dir => dirFromRadec(raDeg * DEG, decDeg * DEG);
const dumbbell: SkyObject = {
  id: "M27",
  names: ["M 27", "NGC 6853", "Dumbbell"],
  kind: "planetaryNebula",
  dir: at(299.9, 22.72),
  magV: 7.4,
  majorArcmin: 8,
  minorArcmin: 6,
  axisDeg: 0,
  profile: "ring",
  constellation: "Vul",
  looks: "an apple core",
};
const m2: SkyObject = { ...dumbbell, id: "M2", names: ["M 2"], kind: "globularCluster", magV: 6.4 };
const objects = [dumbbell, m2];
const first = (query: string) => findByName(query, catalogueNames(), objects)[0];

describe("letters", () => {
  it("shows data letters as a chart does", () => {
    expect(["alpha", "gamma2", "psi10", "q", "G"].map(signOfLetter)).toEqual(["α", "γ²", "ψ¹⁰", "q", "G"]);
  });
  it("brings every spelling to one", () => {
    for (const text of ["γ² Sgr", "gamma2 Sgr", "GAMMA-2 sgr", " gamma 2  SGR "])
      expect(plainName(text)).toBe("gamma2sgr");
    expect(plainName("Boötes")).toBe("bootes");
    expect(plainName("ϑ Tau, ς")).toBe("thetatausigma");
    expect(plainName("µ Cep")).toBe("mucep");
    expect(plainName("—")).toBe("");
  });
});

describe("catalogueNames", () => {
  it("is built once, brightest first, unit vectors", () => {
    const { stars } = catalogueNames();
    expect(catalogueNames().stars).toBe(stars);
    expect(stars[0]?.proper).toBe("Sirius");
    for (const [i, star] of stars.entries()) {
      expect(star.magV).toBeGreaterThanOrEqual(stars[i - 1]?.magV ?? -2);
      expect(Math.abs(Math.hypot(...star.dir) - 1)).toBeLessThan(1e-12);
    }
  });
  it("carries letter and number where both are known, the number as label where there is no letter", () => {
    const byHip = (hip: number) => catalogueNames().stars.find((star) => star.hip === hip);
    expect(byHip(91262)).toMatchObject({ label: "α", flamsteed: 3, proper: "Vega", con: "Lyr" });
    expect(first("12 Aql")?.name).toBe("12 Aql");
    expect(byHip(88635)).toMatchObject({ label: "γ²", flamsteed: 10, con: "Sgr" });
  });
});

describe("constellations", () => {
  it("say what they mean, in two languages", () => {
    const meanings = [...constellations().values()].map(({ meaning }) => meaning);
    expect(meanings).toHaveLength(88);
    for (const { en, de } of meanings) {
      expect(en).toMatch(/^the .{3,}$/);
      expect(de).toMatch(/^(der|die|das) .{3,}$/);
    }
    for (const language of ["en", "de"] as const)
      expect(new Set(meanings.map((meaning) => meaning[language])).size).toBe(88);
  });
});

describe("findByName", () => {
  it.each([
    ["Vega", "HIP 91262"],
    ["alpha Lyr", "HIP 91262"],
    ["α Lyr", "HIP 91262"],
    ["αLyrae", "HIP 91262"],
    ["alp lyr", "HIP 91262"],
    ["ALPHA LYRA", "HIP 91262"],
    ["3 Lyr", "HIP 91262"],
    ["hip91262", "HIP 91262"],
    ["kaus australis", "HIP 90185"],
    ["Gamma Sge", "HIP 98337"],
    ["2 UMi", "HIP 5372"],
    ["M 27", "M27"],
    ["ngc6853", "M27"],
    ["Lyra", "Lyr"],
    ["bootes", "Boo"],
    ["Canum Venaticorum", "CVn"],
  ])("%s leads to %s", (query, id) => {
    expect(first(query)?.id).toBe(id);
  });
  it("does without the raised number, and with one that the table lacks", () => {
    expect(first("gamma sgr")?.id).toBe("HIP 88635");
    expect(first("γ¹ And")?.id).toBe("HIP 9640");
    expect(findByName("gamma1 Sgr", catalogueNames(), [])).toEqual([]);
  });
  it("knows q Vel from Q and 2 from 27", () => {
    expect(first("q Vel")?.name).toBe("q Vel");
    expect(findByName("M 2", catalogueNames(), objects).map((match) => match.id)).toEqual(["M2"]);
    const known = (query: string) => findByName(query, catalogueNames(), catalogueObjects())[0]?.name;
    expect(known("Messier 31")).toBe("M 31");
    expect(known("messier110")).toBe("M 110");
    expect([known("M031"), known("NGC 0224"), known("ngc0224")]).toEqual(["M 31", "M 31", "M 31"]);
    expect(known("Mel 025")).toBe("Melotte 25");
    expect(known("Barnard 33")).toBe("B 33");
    expect(known("Mel 25")).toBe(known("Melotte 25"));
    expect(known("Messier 111")).toBeUndefined();
    expect(known("dumbell")).toBe("M 27");
    expect(known("Orion")).toBe("Orion");
  });
  it("takes the beginning of a name from three characters on, brightest first", () => {
    const found = findByName("alg", catalogueNames(), []).map((match) => match.name);
    expect(found.slice(0, 2)).toEqual(["Algieba", "Algol"]);
    expect(found).toContain("Algenib");
    expect(findByName("al", catalogueNames(), [])).toEqual([]);
  });
  it("says the same star's other names and its magnitude", () => {
    expect(first("Sirius")).toMatchObject({
      kind: "star",
      name: "Sirius",
      otherNames: ["α CMa", "α Canis Majoris", "9 CMa", "9 Canis Majoris", "HIP 32349"],
      magV: -1.46,
    });
    expect(first("Lyr")).toMatchObject({
      kind: "constellation",
      name: "Lyra",
      otherNames: ["Lyr", "Lyrae"],
      magV: null,
    });
  });
  it("finds nothing for nothing and for nonsense", () => {
    for (const query of ["", "  ", "?", "Nosuchstar", "alpha Xyz", "HIP"]) expect(first(query), query).toBeUndefined();
  });
  it("finds every star of the catalogue sky by its chart designation and by each of its names", () => {
    const names = catalogueNames();
    for (const star of names.stars) {
      for (const query of [`${star.label} ${star.con}`, `HIP ${star.hip}`, star.proper ?? `HIP ${star.hip}`]) {
        expect(findByName(query, names, [])[0]?.id, query).toBe(`HIP ${star.hip}`);
      }
    }
  });
  it("forgives one slip in the letters, never in a number", () => {
    expect(first("Betelgeuze")?.name).toBe("Betelgeuse");
    expect(first("Aldebarran")?.name).toBe("Aldebaran");
    expect(first("Arctuurs")?.name).toBe("Arcturus");
    expect(first("Casiopeia")?.id).toBe("Cas");
    expect(first("dumbell")?.id).toBe("M27");
    expect(isOneSlip("ngc6854", "ngc6853")).toBe(false);
    expect(isOneSlip("ngc685", "ngc6853")).toBe(false);
    expect(isOneSlip("betelgeuse", "betelgeuse")).toBe(false);
  });
  it("finds what moves, where it stands now", () => {
    const bodies = [{ name: "Jupiter", dir: at(10, 4), magV: -2.5 }];
    const found = (query: string) => findByName(query, catalogueNames(), objects, bodies).map(({ name }) => name);
    expect(found("jupiter")).toEqual(["Jupiter"]);
    expect(found("Jupitr")).toEqual(["Jupiter"]);
    expect(found("Sirius")).toEqual(["Sirius"]);
  });
  it("finds doubles by every spelling of their designation", () => {
    for (const query of ["beta Cyg", "bet Cygni", "β Cyg", "Albireo"]) {
      const found = findByName(query, catalogueNames(), catalogueDoubles());
      expect(
        found.map(({ kind }) => kind),
        query,
      ).toEqual(expect.arrayContaining(["star", "doubleStar"]));
    }
    const named = (query: string) => findByName(query, catalogueNames(), catalogueDoubles())[0]?.kind;
    expect([named("Albireo"), named("Castor"), named("beta Cyg")]).toEqual(["star", "star", "doubleStar"]);
  });
  it("answers within 5 ms, the first time apart", () => {
    const everything = [...catalogueObjects(), ...catalogueDoubles()];
    const ask = (query: string) => findByName(query, catalogueNames(), everything);
    const queries = ["M 57", "NGC 6720", "beta Lyr", "12 Vul", "Nosuchstarhere", "Betelgeuze", "alg"];
    for (const query of queries) ask(query);
    const startMs = performance.now();
    for (let i = 0; i < 10; i++) for (const query of queries) ask(query);
    expect((performance.now() - startMs) / (10 * queries.length)).toBeLessThan(5);
  });
  it("serves an invented sky too", () => {
    const dir = at(10, 20);
    const invented: SkyNames = {
      stars: [{ dir, magV: 2, label: "α", proper: "Orlo", con: "Anvil" }],
      segments: [],
      figures: [{ abbr: "Anvil", name: "Anvil", centre: dir }],
    };
    for (const query of ["orlo", "alpha anvil", "α Anvil"])
      expect(findByName(query, invented, [])[0]?.name).toBe("Orlo");
    expect(findByName("Vega", invented, [])).toEqual([]);
  });
});

describe("figureCentre", () => {
  it("is the mean of the largest part", () => {
    const [a, b, c, far, farther] = [at(0, 0), at(10, 0), at(20, 0), at(90, 0), at(91, 0)];
    const line = (from: Dir, to: Dir) => ({ from, to, figure: "X" });
    const centre = figureCentre([line(far, farther), line(a, b), line(b, c)]);
    expect(separationRad(centre, at(10, 0))).toBeLessThan(1e-9);
  });
});

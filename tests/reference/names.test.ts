/** Star names against the raw catalogue and against places stated independently. */
import { Constellation, MakeTime, RotateVector, Rotation_EQJ_EQD, Vector } from "astronomy-engine";
import { describe, expect, it } from "vitest";
import { constellationOf } from "#core/celestial/constellation.ts";
import { DEG, dirFromRadec, separationRad } from "#core/celestial/vector.ts";
import { catalogueNames } from "#core/sky/names/catalogueNames.ts";
import { constellations } from "#core/sky/names/constellations.ts";
import type { NamedStar } from "#core/sky/names/types.ts";
import brightest from "./data/brightest.json";
import { PLACES_FROM_MEMORY } from "./namesPlaces.ts";

const { stars } = catalogueNames();
const byHip = new Map(stars.map((star) => [star.hip, star]));

describe("named stars", () => {
  it("hold the 330 brightest of the catalogue, each with a designation", () => {
    expect(brightest.hipAndV).toHaveLength(330);
    for (const [hip = 0, magV = 0] of brightest.hipAndV) {
      const star = byHip.get(hip);
      expect(star, `HIP ${hip}, V ${magV}`).toBeDefined();
      expect(star?.label).toMatch(/^[α-ω][¹²³⁴⁵⁶⁷⁸⁹]*$|^[A-Za-z]$|^[1-9]\d*$/);
      // Mended magnitudes leave the raw ones only where the catalogue has one band or Hp: at most 0.2, Sirius 0.37.
      expect(Math.abs((star?.magV ?? 99) - magV), `HIP ${hip}`).toBeLessThan(hip === 32349 ? 0.4 : 0.2);
    }
  });
  it("are each there once, with one star to a designation and to a name", () => {
    for (const of of [
      stars.map((star) => `HIP ${star.hip}`),
      stars.map((star) => `${star.label} ${star.con}`),
      stars
        .flatMap((star) => star.flamsteed ?? [])
        .map((number, i) => `${number} ${stars.filter((s) => s.flamsteed)[i]?.con}`),
      stars.flatMap((star) => star.proper ?? []),
    ])
      expect(new Set(of).size).toBe(of.length);
  });
  it("lie in the constellation of their designation, but for two numbers older than the borders", () => {
    const strays = stars.filter((star) => constellationOf(star.dir).abbr !== star.con);
    expect(strays.map((star) => `${star.label} ${star.con} in ${constellationOf(star.dir).abbr}`)).toEqual([
      "10 UMa in Lyn",
      "2 UMi in Cep",
    ]);
  });
  it("stand within 0.3 degrees of where 70 of them are said to be", () => {
    expect(PLACES_FROM_MEMORY.length).toBeGreaterThanOrEqual(60);
    for (const [proper, hours, minutes, decDeg] of PLACES_FROM_MEMORY) {
      const star = stars.find((s) => s.proper === proper);
      const stated = dirFromRadec((hours + minutes / 60) * 15 * DEG, decDeg * DEG);
      expect(star && separationRad(star.dir, stated) / DEG, proper).toBeLessThan(0.3);
    }
  });
  it("carry Flamsteed's numbers in his order, by right ascension within a constellation", () => {
    const outOfOrder: string[] = [];
    for (const con of constellations().keys()) {
      const numbered = stars.filter((star) => star.con === con && star.flamsteed !== undefined);
      numbered.sort((a, b) => (a.flamsteed ?? 0) - (b.flamsteed ?? 0));
      for (const [i, star] of numbered.entries()) {
        const before = numbered[i - 1];
        if (before && eastDeg(before, star) < -0.25) outOfOrder.push(`${before.flamsteed} ${star.flamsteed} ${con}`);
      }
    }
    // His list itself is not in order there; near the pole the order is that of another year.
    expect(outOfOrder.sort()).toEqual(["1 2 UMi", "2 5 UMi", "38 39 Per", "7 9 Cam"]);
  });
});

describe("constellations", () => {
  it("are the 88, with the abbreviations and names that astronomy-engine has", () => {
    expect(constellations().size).toBe(88);
    const otherwise: string[] = [];
    for (const { abbr, name } of constellations().values()) {
      const figure = catalogueNames().figures.find((f) => f.abbr === abbr);
      const star = stars.find((s) => s.con === abbr && constellationOf(s.dir).abbr === abbr);
      expect(figure?.name).toBe(name);
      const [x = 0, y = 0, z = 0] = star?.dir ?? [];
      const theirs = Constellation(((Math.atan2(y, x) / DEG + 360) % 360) / 15, Math.asin(z) / DEG).name;
      if (theirs !== name.normalize("NFD").replace("\u0308", "")) otherwise.push(`${abbr} ${theirs}`);
    }
    expect(otherwise.sort()).toEqual(MISSPELLED);
  });
});
/** Spelled so by astronomy-engine 2.1.19; the IAU has Antlia, Camelopardalis, Piscis Austrinus. */
const MISSPELLED = ["Ant Antila", "Cam Camelopardis", "PsA Pisces Austrinus"];

const TO_1725 = Rotation_EQJ_EQD(MakeTime(new Date("1725-01-01T00:00Z")));
/** How far east of `a` star `b` stood in the year of Flamsteed's list, degrees of right ascension, -180 .. 180. */
function eastDeg(a: NamedStar, b: NamedStar): number {
  const [raA, raB] = [a, b].map(({ dir: [x, y, z] }) => {
    const v = RotateVector(TO_1725, new Vector(x, y, z, MakeTime(0)));
    return Math.atan2(v.y, v.x) / DEG;
  });
  return (((raB ?? 0) - (raA ?? 0) + 540) % 360) - 180;
}

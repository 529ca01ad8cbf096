import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cross, DEG, dirFromRadec, separationRad } from "#core/celestial/vector.ts";
import { InputError } from "#core/seams/errors.ts";
import type { Dir } from "#core/seams/index.ts";
import { catalogueNames } from "#core/sky/names/catalogueNames.ts";
import { constellations } from "#core/sky/names/constellations.ts";
import { plainName } from "#core/sky/names/letters.ts";
import type { FigureSegment } from "#core/sky/names/types.ts";
import { type Constellation, drawConstellations } from "#core/sky/practice/constellations.ts";
import { dailySeed } from "#core/sky/practice/daily.ts";
import { gabrielGraph, type Spot, thinned, turnDeg } from "#core/sky/practice/gabriel.ts";
import { practiceBordersWithin } from "#core/sky/practice/practiceBorders.ts";
import { practiceConstellations, practiceFacts, practiceNames } from "#core/sky/practice/practiceSky.ts";
import { constellationsBy } from "#core/sky/practice/regions.ts";
import table from "#shared/sallowfell.json" with { type: "json" };
import { crosses } from "./crossing.ts";

const ORDER = Array.from({ length: 16 }, (_, i) => i);
const at = (raDeg: number, decDeg: number, milliMag = 3000): Spot => ({
  dir: dirFromRadec(raDeg * DEG, decDeg * DEG),
  milliMag,
});
const dirs = fc
  .tuple(fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: 0, max: 360, noNaN: true }))
  .map(([z, raDeg]): Dir => dirFromRadec(raDeg * DEG, Math.asin(z)));
/** Skies of any stars at all, many of them close together. */
const skies = fc.array(fc.record({ dir: dirs, milliMag: fc.integer({ min: -1000, max: 4600 }) }), {
  minLength: 60,
  maxLength: 300,
  size: "max",
});
const segmentsOf = (figures: readonly Constellation<Spot>[]): FigureSegment[] =>
  figures.flatMap(({ abbr, stars, lines }) =>
    lines.map(([a, b]) => ({ from: stars[a]!.dir, to: stars[b]!.dir, figure: abbr })),
  );
const rows = Object.values(table.figures).flat();

describe("figures of any sky", () => {
  test("do not cross, share no star, keep their stars, and are the same again in whatever order stars come", () => {
    fc.assert(
      fc.property(skies, (stars) => {
        const figures = drawConstellations(stars, ORDER);
        const segments = segmentsOf(figures);
        const own = figures.flatMap((figure) => figure.stars);
        expect(new Set(own).size).toBe(own.length);
        segments.forEach((a, i) => {
          for (const b of segments.slice(i + 1)) expect(crosses(a, b)).toBe(false);
        });
        if (segments.length > 0) {
          const region = constellationsBy(segments);
          for (const { abbr, stars: corners } of figures) for (const { dir } of corners) expect(region(dir)).toBe(abbr);
        }
        expect(drawConstellations([...stars].reverse(), ORDER)).toEqual(figures);
      }),
      { numRuns: 15 },
    );
  });

  test("a lone triangle, a row and a crossing of two ways are seen as such", () => {
    const kinds = (stars: Spot[]) => drawConstellations(stars, ORDER).map(({ kind }) => kind);
    expect(kinds([at(0, 0), at(5, 0), at(2.5, 4.5)])).toEqual(["triangle"]);
    expect(kinds([at(0, 0), at(4, 0.2), at(8, 0), at(12, 0.3)])).toEqual(["line"]);
    expect(kinds([at(0, 0), at(5, 0), at(355, 0), at(0, 5), at(0, -5)])).toEqual(["cross"]);
    expect(kinds([at(0, 0), at(5, 0)])).toEqual([]);
  });

  test("a star that is asked first is the brightest of its figure", () => {
    const first = at(0, 0, 2200);
    const [figure] = drawConstellations(
      [at(4, 1, 1000), at(4, -4, 3000), at(0, -5, 3000), at(-3, 4, 3000)],
      ORDER,
      first,
    );
    expect(figure?.stars[0]).toBe(first);
  });

  test("neighbours have nobody between them; of a pair the brighter stays", () => {
    const row = [at(0, 0), at(3, 0), at(6, 0)];
    expect(gabrielGraph(row, 10)).toEqual([[1], [0, 2], [1]]);
    expect(thinned([at(0, 0, 1), at(0.5, 0, 2), at(3, 0, 3)], 1).map(({ milliMag }) => milliMag)).toEqual([1, 3]);
    expect(turnDeg(at(0, 0).dir, at(3, 0).dir, at(6, 0).dir)).toBe(0);
    expect(Math.abs(turnDeg(at(0, 0).dir, at(3, 0).dir, at(3, 3).dir))).toBe(90);
  });
});

describe("names from Sallowfell", () => {
  test("are each given once, with a line of lore", () => {
    expect(new Set(rows.map(([abbr]) => abbr)).size).toBe(rows.length);
    expect(new Set(rows.map(([, name]) => name)).size).toBe(rows.length);
    for (const [abbr, , lore] of rows) {
      expect(abbr).toMatch(/^[A-Z][a-z]{2}$/);
      expect(lore).toMatch(/^[A-Z].{15,}\.$/);
    }
  });

  test("are none of the 88 in any form, nor what they mean, nor a real star's", () => {
    const articles = new Set(["the", "of", "a", "and", "s"]);
    const words = (text: string) =>
      text
        .toLowerCase()
        .split(/[^a-zäöüß]+/)
        .filter((word) => word && !articles.has(word));
    const real = [...constellations().values()];
    const forbidden = new Set([
      ...real.flatMap(({ abbr, name, genitive }) => [abbr, name, genitive].map(plainName)),
      ...real.flatMap(({ name, genitive, meaning }) => words([name, genitive, meaning.en, meaning.de].join(" "))),
      ...catalogueNames().stars.flatMap(({ proper }) => (proper ? [plainName(proper)] : [])),
    ]);
    const found = rows.filter(([abbr, name]) =>
      [plainName(abbr!), plainName(name!), ...words(name!)].some((word) => forbidden.has(word)),
    );
    expect(found).toEqual([]);
  });
});

describe.each(["sallow", "2026-11-26"])("the constellations of %s", (seed) => {
  const names = practiceNames(seed);
  const region = practiceConstellations(seed);

  test("cover the sphere: every direction has one, that of the nearest line", () => {
    const known = new Set(names.figures.map(({ abbr }) => abbr));
    const away = ({ from, to }: FigureSegment, dir: Dir) =>
      Math.min(...Array.from({ length: 41 }, (_, i) => separationRad(mix(from, to, i / 40), dir)));
    fc.assert(
      fc.property(dirs, (dir) => {
        const abbr = region(dir);
        expect(known.has(abbr)).toBe(true);
        const nearest = (own: boolean) =>
          Math.min(...names.segments.filter(({ figure }) => (figure === abbr) === own).map((line) => away(line, dir)));
        // Points along a line stand up to 0.15 degrees from its nearest one.
        expect(nearest(true)).toBeLessThan(nearest(false) + 0.2 * DEG);
      }),
      { numRuns: 30 },
    );
  });

  test("letter their stars by brightness, alpha first", () => {
    for (const { abbr } of names.figures) {
      const own = names.stars.filter(({ con, flamsteed }) => con === abbr && flamsteed === undefined);
      expect(own.map(({ label }) => label).join("")).toBe("αβγδεζηθικλμνξοπρστυφχψω".slice(0, own.length));
      for (const { dir } of own) expect(region(dir)).toBe(abbr);
    }
  });

  test("have borders with another constellation on either side", () => {
    const borders = practiceBordersWithin(region, { centre: practiceFacts(seed).anchor.dir, radiusRad: 12 * DEG });
    expect(borders.length).toBeGreaterThan(15);
    for (const line of borders) {
      const [from, to] = [line[0]!, line[1]!];
      expect(separationRad(from, to)).toBeLessThan(2 * DEG);
      const beside = (side: number) => {
        const across = cross(from, to);
        return region([0, 1, 2].map((i) => from[i]! + side * 1.5 * across[i]!) as unknown as Dir);
      };
      if (separationRad(from, to) > 0.3 * DEG) expect(beside(1)).not.toBe(beside(-1));
    }
  });
});

const mix = (a: Dir, b: Dir, t: number): Dir => [
  a[0] + t * (b[0] - a[0]),
  a[1] + t * (b[1] - a[1]),
  a[2] + t * (b[2] - a[2]),
];

describe("the sky of the day", () => {
  test("has the date for its word, and takes no other", () => {
    expect(dailySeed("2028-02-29")).toBe("2028-02-29");
    for (const text of ["2027-02-29", "2027-13-01", "2027-00-10", "2027-1-1", "today", "2027-04-31", "1900-02-29"])
      expect(() => dailySeed(text)).toThrow(InputError);
    const [one, other] = ["2027-10-29", "2027-10-30"].map((day) => practiceNames(dailySeed(day)));
    expect(one!.stars[0]!.dir).not.toEqual(other!.stars[0]!.dir);
  });
});

/** What holds of the constellations of every practice sky, tried on many; and that each check finds a sky that is spoiled. */
import { describe, expect, test } from "vitest";
import { cross, DEG, dirFromRadec, separationRad } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import type { FigureSegment, NamedStar, SkyNames } from "#core/sky/names/types.ts";
import { practiceBordersWithin } from "#core/sky/practice/practiceBorders.ts";
import { practiceConstellations, practiceNames } from "#core/sky/practice/practiceSky.ts";
import type { ConstellationAt } from "#core/sky/practice/regions.ts";
import { crosses } from "./crossing.ts";

const SEEDS = Array.from({ length: 40 }, (_, i) =>
  i % 2 ? `hill-${i}` : `2027-03-${String((i % 31) + 1).padStart(2, "0")}`,
);
const LETTERS = "αβγδεζηθικλμνξοπρστυφχψω";
const GOLDEN_TURN = Math.PI * (3 - Math.sqrt(5));
/** Spread evenly over the sphere. */
const EVERYWHERE: readonly Dir[] = Array.from({ length: 500 }, (_, i) =>
  dirFromRadec(i * GOLDEN_TURN, Math.asin(1 - (2 * i + 1) / 500)),
);

type Sky = SkyNames & { readonly at: ConstellationAt };
const skyOf = (seed: string): Sky => ({ ...practiceNames(seed), at: practiceConstellations(seed) });

const isLettered = ({ flamsteed }: NamedStar) => flamsteed === undefined;

/** Each clause as the faults that a sky has against it. */
const CLAUSES: Readonly<Record<string, (sky: Sky) => readonly unknown[]>> = {
  "lines of figures do not cross": ({ segments }) =>
    segments.flatMap((a, i) => segments.slice(i + 1).filter((b) => crosses(a, b))),
  "figures join lettered stars of their own constellation": ({ segments, stars }) => {
    const conOf = new Map(stars.filter(isLettered).map(({ dir, con }) => [dir, con]));
    return segments.filter(({ from, to, figure }) => conOf.get(from) !== figure || conOf.get(to) !== figure);
  },
  "no star is outside its constellation": ({ stars, at }) => stars.filter(({ dir, con }) => at(dir) !== con),
  "letters go by brightness within each constellation": ({ stars, figures }) =>
    figures.filter(({ abbr }) => {
      const own = stars.filter((star) => star.con === abbr && isLettered(star)).sort((a, b) => a.magV - b.magV);
      return own.length === 0 || own.map(({ label }) => label).join("") !== LETTERS.slice(0, own.length);
    }),
  "every direction has one of the sky's constellations": ({ figures, at }) => {
    const known = new Set(figures.map(({ abbr }) => abbr));
    return EVERYWHERE.filter((dir) => !known.has(at(dir)));
  },
  "every constellation has a part of the sphere": ({ figures, at }) => {
    const met = new Set(EVERYWHERE.map(at));
    // The smallest may lie between the places that are tried: their own middles are tried too.
    return figures.filter(({ abbr, centre }) => !met.has(abbr) && at(centre) !== abbr);
  },
  "names and abbreviations are given once": ({ figures }) =>
    figures.filter((a, i) => figures.slice(i + 1).some((b) => a.name === b.name || a.abbr === b.abbr)),
};

test.each(SEEDS)("the constellations of %s keep every clause", (seed) => {
  const sky = skyOf(seed);
  expect(sky.figures.length).toBeGreaterThan(60);
  for (const [clause, faults] of Object.entries(CLAUSES)) expect([clause, faults(sky)]).toEqual([clause, []]);
});

test.each(SEEDS.slice(0, 6))(
  "the borders of %s close: where the constellation changes on a small step there is one",
  (seed) => {
    const { at } = skyOf(seed);
    for (const centre of EVERYWHERE.slice(0, 500).filter((_, i) => i % 100 === 7)) {
      const lines = practiceBordersWithin(at, { centre, radiusRad: 8 * DEG });
      const along = Array.from({ length: 60 }, (_, i): Dir => {
        const t = (i - 30) * 0.2 * DEG;
        const aside = cross(centre, [0.36, 0.48, 0.8]);
        return [centre[0] + t * aside[0], centre[1] + t * aside[1], centre[2] + t * aside[2]];
      });
      const changes = along.slice(1).filter((dir, i) => at(dir) !== at(along[i]!));
      for (const dir of changes) {
        const nearest = Math.min(...lines.flat().map((point) => separationRad(point, dir)));
        expect(nearest).toBeLessThan(1.2 * DEG);
      }
    }
  },
);

describe("a spoiled sky is found out", () => {
  const sky = skyOf(SEEDS[0]!);
  const [first, second] = sky.stars.filter((star) => isLettered(star) && star.con === sky.figures[0]!.abbr);
  const swap = (change: (star: NamedStar) => NamedStar) => ({ ...sky, stars: sky.stars.map(change) });
  const crossed = (): FigureSegment => {
    const { from, to, figure } = sky.segments[0]!;
    const aside = cross(from, to);
    const middle = [0, 1, 2].map((i) => (from[i]! + to[i]!) / 2);
    const end = (k: number) => middle.map((value, i) => value + k * aside[i]!) as unknown as Dir;
    return { from: end(-0.3), to: end(0.3), figure };
  };
  const SPOILED: Readonly<Record<string, Sky>> = {
    "lines of figures do not cross": { ...sky, segments: [...sky.segments, crossed()] },
    "figures join lettered stars of their own constellation": { ...sky, segments: [...sky.segments, crossed()] },
    "no star is outside its constellation": swap((star) =>
      star === first ? { ...star, dir: [-first.dir[0], -first.dir[1], -first.dir[2]] } : star,
    ),
    "letters go by brightness within each constellation": swap((star) =>
      star === first ? { ...star, label: second!.label } : star === second ? { ...star, label: first!.label } : star,
    ),
    "every direction has one of the sky's constellations": { ...sky, at: (dir) => (dir[2] > 0.9 ? "" : sky.at(dir)) },
    "every constellation has a part of the sphere": { ...sky, at: () => sky.figures[0]!.abbr },
    "names and abbreviations are given once": { ...sky, figures: [...sky.figures, sky.figures[3]!] },
  };
  test.each(Object.keys(CLAUSES))("%s", (clause) => {
    expect(CLAUSES[clause]!(SPOILED[clause]!).length).toBeGreaterThan(0);
  });
});

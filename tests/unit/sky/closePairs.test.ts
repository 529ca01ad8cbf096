import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { pixelOf } from "#core/celestial/healpix.ts";
import { DEG, dirFromRadec, normalise, offsetDir, separationRad } from "#core/celestial/vector.ts";
import type { Dir, StarBlock } from "#core/seams/index.ts";
import { asOneStar, createAsOneStar } from "#core/sky/closePairs/asOneStar.ts";
import { aDir } from "../celestial/arbitrary.ts";

const ARCMIN = DEG / 60;
const ORDER = 3;

interface Star {
  readonly dir: Dir;
  readonly milliMag: number;
  readonly colourBV: number;
}

const blockOf = (pixel: number, stars: readonly Star[], mark: Partial<StarBlock> = {}): StarBlock => {
  const sorted = stars.toSorted((a, b) => a.milliMag - b.milliMag);
  return {
    key: { order: ORDER, pixel, layer: 0 },
    count: sorted.length,
    dirs: Float32Array.from(sorted.flatMap(({ dir }) => [...dir])),
    milliMag: Int16Array.from(sorted, ({ milliMag }) => milliMag),
    colourBV: Float32Array.from(sorted, ({ colourBV }) => colourBV),
    invented: false,
    ...mark,
  };
};

/** Stars in the tiles where they stand. */
function tilesOf(stars: readonly Star[]): StarBlock[] {
  const pixels = new Set(stars.map(({ dir }) => pixelOf(ORDER, dir)));
  return [...pixels].map((pixel) =>
    blockOf(
      pixel,
      stars.filter(({ dir }) => pixelOf(ORDER, dir) === pixel),
    ),
  );
}

const starsOf = (blocks: readonly StarBlock[]): Star[] =>
  blocks.flatMap(({ count, dirs, milliMag, colourBV }) =>
    Array.from({ length: count }, (_, i) => ({
      dir: [dirs[3 * i]!, dirs[3 * i + 1]!, dirs[3 * i + 2]!] as const,
      milliMag: milliMag[i]!,
      colourBV: colourBV[i]!,
    })),
  );
const lightOf = (stars: readonly Star[]) => stars.reduce((sum, { milliMag }) => sum + 10 ** (-0.0004 * milliMag), 0);
const blueLightOf = (stars: readonly Star[]) =>
  stars.reduce((sum, { milliMag, colourBV }) => sum + 10 ** (-0.4 * (milliMag / 1000 + colourBV)), 0);
const isBright = ({ milliMag }: Star) => milliMag <= 6500;

/** Some on the poles and on corners of tiles, some anywhere. Whole numbers about them: doubles would lie mostly near 0. */
const aPlace = fc.oneof(
  aDir,
  fc.constantFrom<Dir>([0, 0, 1], [0, 0, -1], dirFromRadec(45 * DEG, 0), dirFromRadec(90 * DEG, Math.asin(2 / 3))),
);
const aKnot = fc
  .tuple(
    aPlace,
    fc.array(
      fc.record({
        angleDeg: fc.integer({ min: 0, max: 359 }),
        centiArcmin: fc.integer({ min: 0, max: 600 }),
        milliMag: fc.integer({ min: -1500, max: 7500 }),
        centiColour: fc.integer({ min: -30, max: 200 }),
      }),
      { minLength: 1, maxLength: 9 },
    ),
  )
  .map(([place, stars]) =>
    stars.map(
      ({ angleDeg, centiArcmin, milliMag, centiColour }): Star => ({
        dir: offsetDir(place, angleDeg * DEG, (centiArcmin / 100) * ARCMIN),
        milliMag,
        colourBV: centiColour / 100,
      }),
    ),
  );
const aSky = fc.array(aKnot, { minLength: 1, maxLength: 6 }).map((knots) => tilesOf(knots.flat()));

describe("stars closer than 3' are one to the naked eye", () => {
  test("light is kept, in V and in B, but for the rounding to a thousandth of a magnitude", () => {
    fc.assert(
      fc.property(aSky, (blocks) => {
        const [before, after] = [starsOf(blocks), starsOf(asOneStar(blocks))];
        expect(Math.abs(lightOf(after) / lightOf(before) - 1)).toBeLessThan(4.7e-4);
        expect(Math.abs(blueLightOf(after) / blueLightOf(before) - 1)).toBeLessThan(4.7e-4);
      }),
    );
  });

  test("no two bright stars are left closer than 3', wherever the borders of tiles run", () => {
    fc.assert(
      fc.property(aSky, (blocks) => {
        const after = starsOf(asOneStar(blocks)).filter(isBright);
        after.forEach(({ dir }, i) => {
          for (const other of after.slice(i + 1))
            expect(separationRad(dir, other.dir)).toBeGreaterThan(2.9999 * ARCMIN);
        });
      }),
    );
  });

  test("blocks stay sorted, the faint stars stay as they are, and so does a block that no pair concerns", () => {
    fc.assert(
      fc.property(aSky, (blocks) => {
        const after = asOneStar(blocks);
        expect(after.length).toBe(blocks.length);
        after.forEach((block, i) => {
          const mags = [...block.milliMag];
          expect([mags.length, block.dirs.length, block.colourBV.length]).toEqual(
            [1, 3, 1].map((times) => times * block.count),
          );
          expect(mags).toEqual(mags.toSorted((a, b) => a - b));
          const [was, is] = [starsOf([blocks[i]!]), starsOf([block])];
          expect(is.filter((star) => !isBright(star))).toEqual(was.filter((star) => !isBright(star)));
          if (JSON.stringify(is) === JSON.stringify(was)) expect(block).toBe(blocks[i]);
        });
      }),
    );
  });

  test("the order in which tiles come does not matter", () => {
    fc.assert(
      fc.property(
        aSky.chain((blocks) =>
          fc.tuple(
            fc.constant(blocks),
            fc.shuffledSubarray(blocks, { minLength: blocks.length, maxLength: blocks.length }),
          ),
        ),
        ([blocks, shuffled]) => {
          const byPixel = (list: readonly StarBlock[]) => list.toSorted((a, b) => a.key.pixel - b.key.pixel);
          expect(byPixel(asOneStar(shuffled))).toEqual(byPixel(asOneStar(blocks)));
        },
      ),
    );
  });

  test("a second look at what was joined finds nothing more to join", () => {
    fc.assert(
      fc.property(aSky, (blocks) => {
        const once = asOneStar(blocks);
        expect(asOneStar(once)).toBe(once);
      }),
    );
  });
});

/** The corner of four tiles on the equator. */
const CORNER = dirFromRadec(45 * DEG, 0);
const star = (eastArcmin: number, milliMag: number, colourBV = 0.5): Star => ({
  dir: offsetDir(CORNER, 90 * DEG, eastArcmin * ARCMIN),
  milliMag,
  colourBV,
});

describe("a pair", () => {
  test("of equal stars is 0.753 mag brighter, and stands in the middle", () => {
    const [one, ...more] = starsOf(asOneStar(tilesOf([star(-1, 5000, 0.2), star(1, 5000, 1.2)])));
    expect(more).toEqual([]);
    // 2.5 log10 2.
    expect(one!.milliMag).toBe(5000 - 753);
    expect(separationRad(one!.dir, CORNER)).toBeLessThan(0.01 * ARCMIN);
    // Bluer than the mean of 0.7: the blue star gives most of the light in B.
    expect(one!.colourBV).toBeCloseTo(-2.5 * Math.log10((10 ** -0.08 + 10 ** -0.48) / 2), 3);
  });

  test("across a border stands in the brighter star's tile, nearer to it by the shares of light", () => {
    const tiles = tilesOf([star(-1, 6000), star(1, 5000), star(9, 4000)]);
    expect(tiles.length).toBe(2);
    const after = asOneStar(tiles);
    const east = after.find(({ key }) => key.pixel === pixelOf(ORDER, star(1, 0).dir))!;
    expect(after.map(({ count }) => count).toSorted()).toEqual([0, 2]);
    const shareOfFaint = 1 / (1 + 10 ** 0.4);
    const wanted = offsetDir(CORNER, 90 * DEG, (1 - 2 * shareOfFaint) * ARCMIN);
    expect(separationRad(normalise(starsOf([east])[1]!.dir), wanted)).toBeLessThan(0.01 * ARCMIN);
  });

  test("of 3.1', or with a star fainter than V 6.5, or invented, is none", () => {
    for (const pair of [
      [star(0, 5000), star(3.1, 5000)],
      [star(0, 5000), star(1, 6510)],
    ]) {
      const blocks = tilesOf(pair);
      expect(asOneStar(blocks)).toBe(blocks);
    }
    const invented = [blockOf(0, [star(0, 5000)]), blockOf(0, [star(1, 5000)], { invented: true })];
    expect(asOneStar(invented)).toBe(invented);
  });

  test("is joined before a wider one: of three in a row the two that are nearest", () => {
    const after = starsOf(asOneStar(tilesOf([star(0, 4900), star(2.9, 5000), star(5, 5000)])));
    expect(after.map(({ milliMag }) => milliMag).toSorted()).toEqual([5000 - 753, 4900]);
  });

  test("whose middle comes near to a third star takes that in too", () => {
    // Neither of the two is within 3' of the third; the place of both is.
    const third = { ...star(0, 5000), dir: offsetDir(CORNER, 0, 2.8 * ARCMIN) };
    const pair = [star(-1.4, 5000), star(1.4, 5000)];
    for (const { dir } of pair) expect(separationRad(dir, third.dir)).toBeGreaterThan(3 * ARCMIN);
    const [all, ...more] = starsOf(asOneStar(tilesOf([...pair, third])));
    expect(more).toEqual([]);
    expect(all!.milliMag).toBe(5000 - 1193); // 2.5 log10 3
  });
});

/** Heap that a look takes: the median of some rounds, since the collector may come in one of them. */
function bytesALook(look: () => readonly StarBlock[]): number {
  const looks = 10_000;
  let kept = look();
  const round = () => {
    const before = process.memoryUsage().heapUsed;
    for (let i = 0; i < looks; i++) kept = look();
    return (process.memoryUsage().heapUsed - before) / looks;
  };
  for (let i = 0; i < 5; i++) round();
  const rounds = Array.from({ length: 9 }, round).toSorted((a, b) => a - b);
  expect(kept.length).toBeGreaterThan(0);
  return rounds[4]!;
}

describe("while the sky stays", () => {
  const tiles = tilesOf([star(-1, 5000), star(1, 5500), { ...star(0, 4000), dir: [0, 0, 1] }]);
  const planet = () => blockOf(0, [star(0, -2000)], { moves: true });

  test("the answer is the same object, and looks leave nothing on the heap", () => {
    const join = createAsOneStar();
    const first = join(tiles);
    expect(join(tiles)).toBe(first);
    // A list anew for each look is seen by this measure; the joining leaves less than a byte a look.
    expect(bytesALook(() => [...tiles])).toBeGreaterThan(16);
    expect(bytesALook(() => join(tiles))).toBeLessThan(4);
  });

  test("a planet that moves is no star: it stays as it is, and no star is joined anew for it", () => {
    const join = createAsOneStar();
    const [before, now] = [planet(), planet()];
    const first = join([...tiles, before]);
    const second = join([...tiles, now]);
    expect(first.at(-1)).toBe(before);
    expect(second.at(-1)).toBe(now);
    first.slice(0, -1).forEach((block, i) => {
      expect(second[i]).toBe(block);
    });
    expect(join([...tiles])).toEqual(asOneStar(tiles));
  });

  test("fewer tiles, more tiles: each time what these alone give", () => {
    const join = createAsOneStar();
    for (const list of [tiles, tiles.slice(1), tiles, [], tiles.slice(0, 1)])
      expect(join(list)).toEqual(asOneStar(list));
  });
});

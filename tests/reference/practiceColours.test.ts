/** Colours of practice skies beside those of the catalogue sky's tiles, latitude by latitude. */
import { readFile } from "node:fs/promises";
import { describe, expect, test } from "vitest";
import { DEG, dot } from "#core/celestial/vector.ts";
import type { Dir, StarBlock } from "#core/seams/index.ts";
import { createCatalogueSource } from "#core/sky/catalogue/catalogueSource.ts";
import { GALACTIC_POLE } from "#core/sky/glow/glowMap.ts";
import { generateTile } from "#core/sky/practice/generateTile.ts";
import { PRACTICE_LAYERS } from "#core/sky/practice/layers.ts";
import { measureColours } from "#core/sky/practice/measureColours.ts";
import { planOf } from "#core/sky/practice/plan.ts";
import table from "#shared/star-colours.json" with { type: "json" };

const EVERYWHERE = { centre: [0, 0, 1] as Dir, radiusRad: Math.PI };
const BANDS = [0, 5, 12, 20, 30, 45, 90] as const;
const [FROM_MAG, TO_MAG] = [6.5, 9.5];

async function catalogueBlocks(): Promise<readonly StarBlock[]> {
  const fetchFile = async (name: string) => new Uint8Array(await readFile(`assets/sky/${name}`)).buffer;
  const source = createCatalogueSource({ fetchFile, capBytes: Number.POSITIVE_INFINITY });
  await source.want(source.resident(EVERYWHERE, 12).missing, 0, new AbortController().signal);
  return source.resident(EVERYWHERE, 12).blocks;
}
const blocks = await catalogueBlocks();

function practiceBlocks(seed: string): StarBlock[] {
  const { order, layer } = PRACTICE_LAYERS[1]!;
  return Array.from({ length: 12 << (2 * order) }, (_, pixel) => generateTile(seed, { order, layer, pixel }));
}

/** B-V of the stars between V 6.5 and 9.5 in each band of |b|, bluest first. */
function sortedByBand(of: readonly StarBlock[], pole: Dir): number[][] {
  const colours = BANDS.slice(1).map(() => [] as number[]);
  for (const { count, dirs, milliMag, colourBV } of of) {
    for (let i = 0; i < count; i++) {
      if (milliMag[i]! <= FROM_MAG * 1000 || milliMag[i]! > TO_MAG * 1000) continue;
      const sine = Math.abs(dot([dirs[3 * i]!, dirs[3 * i + 1]!, dirs[3 * i + 2]!], pole));
      const latitudeDeg = Math.asin(Math.min(1, sine)) / DEG;
      colours[BANDS.findLastIndex((edge) => latitudeDeg >= edge)]!.push(colourBV[i]!);
    }
  }
  return colours.map((band) => band.sort((a, b) => a - b));
}

/** Of the stars between V 6.5 and 9.5 in each band of |b|: mean B-V, and the shares of white, middling and red ones. */
function coloursByBand(of: readonly StarBlock[], pole: Dir): number[][] {
  const mean = (list: readonly number[]) => list.reduce((sum, each) => sum + each, 0) / list.length;
  return sortedByBand(of, pole).map((band) => {
    const shareOf = (holds: (bv: number) => boolean) => band.filter(holds).length / band.length;
    return [
      mean(band),
      shareOf((bv) => bv < 0.12),
      shareOf((bv) => bv > 0.76 && bv < 0.92),
      shareOf((bv) => bv > 1.48),
    ];
  });
}

/** B-V below which so many of the stars are, in each band of |b|. */
const quantilesByBand = (of: readonly StarBlock[], pole: Dir, shares: readonly number[]) =>
  sortedByBand(of, pole).map((band) => shares.map((share) => band[Math.floor(share * band.length)]!));

test("the table is what the tiles give", () => {
  const { about: _, ...counted } = table;
  expect(measureColours(blocks)).toEqual(counted);
});

describe("stars from V 6.5 to 9.5", () => {
  const real = coloursByBand(blocks, GALACTIC_POLE);
  const grown = coloursByBand(practiceBlocks("heath"), planOf("heath").frame.galacticPole);

  test.each(BANDS.slice(1).map((to, band) => [BANDS[band], to, band] as const))(
    "at |b| from %i to %i degrees are as blue, middling and red as counted",
    (_from, _to, band) => {
      const [mean, white, middling, red] = grown[band]!.map((value, i) => value - real[band]![i]!);
      expect(Math.abs(mean!)).toBeLessThan(0.025);
      for (const off of [white!, middling!, red!]) expect(Math.abs(off)).toBeLessThan(0.012);
    },
  );

  test("and one sky's latitudes would not do for another's: the checks would find it", () => {
    const off = (band: number) => Math.abs(grown[band]![0]! - real[band + 2]![0]!);
    expect(Math.max(off(0), off(1))).toBeGreaterThan(0.025);
  });
});

describe("quantiles of B-V from V 6.5 to 9.5", () => {
  const SHARES = [0.1, 0.25, 0.5, 0.75, 0.9];
  const real = quantilesByBand(blocks, GALACTIC_POLE, SHARES);

  test.each(["heath", "fold"])(
    "are as counted to 0.08 in every band of %s, and next to the plane above all",
    (seed) => {
      const grown = quantilesByBand(practiceBlocks(seed), planOf(seed).frame.galacticPole, SHARES);
      for (const [i, band] of grown.entries())
        for (const [j, value] of band.entries())
          expect(Math.abs(value - real[i]![j]!), `${BANDS[i]}, ${SHARES[j]}`).toBeLessThan(0.08);
      expect(Math.abs(grown[0]![0]! - real[0]![0]!)).toBeLessThan(0.04);
      expect(Math.abs(grown[4]![0]! - real[0]![0]!)).toBeGreaterThan(0.08);
    },
  );
});

test("where stars are few they are redder, as they are behind dust", () => {
  const { frame } = planOf("heath");
  const { order, layer } = PRACTICE_LAYERS[2]!;
  const places: { few: number; bv: number }[] = [];
  for (let pixel = 0; pixel < 12 << (2 * order); pixel++) {
    const { count, dirs, colourBV } = generateTile("heath", { order, layer, pixel });
    const absLatDeg = Math.asin(Math.abs(dot([dirs[0]!, dirs[1]!, dirs[2]!], frame.galacticPole))) / DEG;
    if (absLatDeg < 6) places.push({ few: -Math.log(count), bv: colourBV.reduce((sum, bv) => sum + bv, 0) / count });
  }
  const mean = (list: readonly number[]) => list.reduce((sum, x) => sum + x, 0) / list.length;
  const [few, bv] = [mean(places.map((p) => p.few)), mean(places.map((p) => p.bv))];
  const rise =
    mean(places.map((p) => (p.few - few) * (p.bv - bv))) / mean(places.map((p) => (p.few - few) * (p.few - few)));
  // Finder fields of Tycho-2 within 5 degrees of the plane: 0.11 for one in the logarithm.
  expect(rise).toBeGreaterThan(0.05);
  expect(rise).toBeLessThan(0.17);
});

/** Real finder fields against grown ones: how often a plain classifier tells which is which. */
import { readFile } from "node:fs/promises";
import { DEG, separationRad } from "#core/celestial/vector.ts";
import type { Dir, StarSource } from "#core/seams/index.ts";
import { createCatalogueSource } from "#core/sky/catalogue/catalogueSource.ts";
import { starsWithin } from "#core/sky/catalogue/starsWithin.ts";
import { packColour, unpackColourBV } from "#core/sky/catalogue/tileFormat.ts";
import { createChance } from "#core/sky/practice/chance.ts";
import { createPracticeSource } from "#core/sky/practice/practiceSource.ts";
import { fieldFigures } from "./fieldFigures.ts";
import { trainLogistic } from "./logistic.ts";

const RADIUS_DEG = 2.65;
const FAINTEST_MAG = 9.5;
const MERGED_RAD = (15 / 3600) * DEG;
const never = new AbortController().signal;

async function figuresAt(source: StarSource, middle: Dir): Promise<number[]> {
  const cone = { centre: middle, radiusRad: RADIUS_DEG * DEG };
  await source.want(source.resident(cone, FAINTEST_MAG).missing, 0, never);
  const all = starsWithin(source.resident(cone, FAINTEST_MAG), middle, cone.radiusRad, FAINTEST_MAG * 1000);
  const apart = all.filter((star, i) => !all.slice(0, i).some(({ dir }) => separationRad(dir, star.dir) < MERGED_RAD));
  const coarse = apart.map((star) => ({
    ...star,
    milliMag: Math.round(star.milliMag / 10) * 10,
    // Tiles have five bits for a colour: both skies are seen through them.
    colourBV: unpackColourBV(packColour(star.colourBV)),
  }));
  return fieldFigures(coarse, middle, RADIUS_DEG);
}

/**
 * Share of held-out fields, half of them real, that are told rightly after training on others. Practice fields come from
 * `seeds` in turn, real ones from the tiles in `folder`; both skies are looked at in places of even chance.
 */
export async function toldApart(
  folder: string,
  seeds: readonly string[],
  training: number,
  heldOut: number,
): Promise<number> {
  const real = createCatalogueSource({
    fetchFile: async (name) => {
      const bytes = await readFile(`${folder}/${name}`);
      return bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer;
    },
  });
  const grown = seeds.map((seed) => createPracticeSource(seed));
  const chance = createChance(20261126);
  const rows: number[][] = [];
  for (let i = 0; i < training + heldOut; i++) {
    const z = 2 * chance() - 1;
    const turn = 2 * Math.PI * chance();
    const radius = Math.sqrt(1 - z * z);
    const middle: Dir = [radius * Math.cos(turn), radius * Math.sin(turn), z];
    rows.push(await figuresAt(i % 2 ? real : grown[(i >> 1) % grown.length]!, middle));
  }
  const likely = trainLogistic(
    rows.slice(0, training),
    rows.slice(0, training).map((_, i) => i % 2 === 1),
  );
  const right = rows.slice(training).filter((row, i) => likely(row) > 0.5 === ((training + i) % 2 === 1));
  return right.length / heldOut;
}

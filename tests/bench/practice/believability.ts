/** Real finder fields against grown ones: how often a plain classifier tells which is which. */
import { readFile } from "node:fs/promises";
import { DEG, separationRad } from "#core/celestial/vector.ts";
import type { Dir, StarSource } from "#core/seams/index.ts";
import { createCatalogueSource } from "#core/sky/catalogue/catalogueSource.ts";
import { type FoundStar, starsWithin } from "#core/sky/catalogue/starsWithin.ts";
import { packColour, unpackColourBV } from "#core/sky/catalogue/tileFormat.ts";
import { createChance } from "#core/sky/practice/chance.ts";
import { createPracticeSource } from "#core/sky/practice/practiceSource.ts";
import { fieldFigures } from "./fieldFigures.ts";
import { trainLogistic } from "./logistic.ts";

const RADIUS_DEG = 2.65;
const FAINTEST_MAG = 9.5;
const MERGED_RAD = (15 / 3600) * DEG;
const never = new AbortController().signal;

/** The stars of a finder field as both skies show them, brightest first. */
export type Field = { readonly middle: Dir; readonly isReal: boolean; readonly stars: readonly FoundStar[] };

async function fieldAt(source: StarSource, middle: Dir, isReal: boolean): Promise<Field> {
  const cone = { centre: middle, radiusRad: RADIUS_DEG * DEG };
  await source.want(source.resident(cone, FAINTEST_MAG).missing, 0, never);
  const all = starsWithin(source.resident(cone, FAINTEST_MAG), middle, cone.radiusRad, FAINTEST_MAG * 1000);
  const apart = all.filter((star, i) => !all.slice(0, i).some(({ dir }) => separationRad(dir, star.dir) < MERGED_RAD));
  const stars = apart.map((star) => ({
    ...star,
    milliMag: Math.round(star.milliMag / 10) * 10,
    // Tiles have five bits for a colour: both skies are seen through them.
    colourBV: unpackColourBV(packColour(star.colourBV)),
  }));
  return { middle, isReal, stars };
}

/**
 * Grown and real fields by turns. Practice fields come from `seeds` in turn, real ones from the tiles in `folder`; both skies
 * are looked at in places of even chance.
 * @param draw which places
 */
export async function finderFields(
  folder: string,
  seeds: readonly string[],
  count: number,
  draw: number,
): Promise<Field[]> {
  const real = createCatalogueSource({
    fetchFile: async (name) => {
      const bytes = await readFile(`${folder}/${name}`);
      return bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer;
    },
  });
  const grown = seeds.map((seed) => createPracticeSource(seed));
  const chance = createChance(draw);
  const fields: Field[] = [];
  for (let i = 0; i < count; i++) {
    const z = 2 * chance() - 1;
    const turn = 2 * Math.PI * chance();
    const radius = Math.sqrt(1 - z * z);
    const middle: Dir = [radius * Math.cos(turn), radius * Math.sin(turn), z];
    const isReal = i % 2 === 1;
    fields.push(await fieldAt(isReal ? real : grown[(i >> 1) % grown.length]!, middle, isReal));
  }
  return fields;
}

/** Share of the fields after the first `training` ones that are told rightly after training on those. */
export function toldRightly(fields: readonly Field[], training: number): number {
  const rows = fields.map(({ stars, middle }) => fieldFigures(stars, middle, RADIUS_DEG));
  const likely = trainLogistic(
    rows.slice(0, training),
    fields.slice(0, training).map(({ isReal }) => isReal),
  );
  const right = rows.slice(training).filter((row, i) => likely(row) > 0.5 === fields[training + i]!.isReal);
  return right.length / (fields.length - training);
}

/** The same of so many held-out fields, the bench's own, which nothing is ever fitted to. */
export async function toldApart(
  folder: string,
  seeds: readonly string[],
  training: number,
  heldOut: number,
): Promise<number> {
  return toldRightly(await finderFields(folder, seeds, training + heldOut, 20261126), training);
}

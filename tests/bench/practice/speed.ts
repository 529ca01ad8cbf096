/** How fast practice tiles are made, beside the decode of catalogue tiles in the same run. */
import { readFile } from "node:fs/promises";
import { pixelOf } from "#core/celestial/healpix.ts";
import { decodeTileFile } from "#core/sky/catalogue/decodeTileFile.ts";
import { generateTile } from "#core/sky/practice/generateTile.ts";
import { PRACTICE_LAYERS, type PracticeLayer } from "#core/sky/practice/layers.ts";
import { planOf } from "#core/sky/practice/plan.ts";

const SEED = "sallow";
const TILES = 700;
const FILE = "stars-2-00.bin";

/** Stars a second, millions: made along the plane in each layer beyond the bright one, and decoded. @param folder where the tiles are */
export async function starSpeeds(folder: string): Promise<{ made: number[]; decoded: number }> {
  const made = PRACTICE_LAYERS.slice(1).map(speedOf);
  const bytes = new Uint8Array(await readFile(`${folder}/${FILE}`));
  const decode = () => decodeTileFile(bytes, FILE).count;
  decode();
  return { made, decoded: rate(10, decode) };
}

function speedOf({ order, layer }: PracticeLayer): number {
  const tiles = 12 << (2 * order);
  const first = pixelOf(order, planOf(SEED).frame.galacticCentre);
  const make = (n: number) => generateTile(SEED, { order, layer, pixel: (first + n) % tiles }).count;
  for (let n = 1; n <= 100; n++) make(tiles - n);
  return rate(Math.min(TILES, tiles - 200), make);
}

function rate(rounds: number, stars: (n: number) => number): number {
  const start = performance.now();
  let total = 0;
  for (let n = 0; n < rounds; n++) total += stars(n);
  return total / (performance.now() - start) / 1000;
}

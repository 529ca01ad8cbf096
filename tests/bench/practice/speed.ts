/** How fast practice tiles are made, beside the decode of catalogue tiles in the same run. */
import { readFile } from "node:fs/promises";
import { pixelOf } from "#core/celestial/healpix.ts";
import { slerpDir } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { decodeTileFile } from "#core/sky/catalogue/decodeTileFile.ts";
import type { SkyFrame } from "#core/sky/practice/frame.ts";
import { generateTile } from "#core/sky/practice/generateTile.ts";
import { PRACTICE_LAYERS } from "#core/sky/practice/layers.ts";
import { planOf } from "#core/sky/practice/plan.ts";

const TILES = 700;
const FILE = "stars-2-00.bin";

/** Stars a second, millions, layer by layer beyond the bright one: along the plane, half way to a pole, and at the pole. */
export type Made = Readonly<Record<"plane" | "between" | "pole", readonly number[]>>;

type Place = (frame: SkyFrame) => Dir;
const PLACES: Readonly<Record<keyof Made, Place>> = {
  plane: ({ galacticCentre }) => galacticCentre,
  between: ({ galacticCentre, galacticPole }) => slerpDir(galacticCentre, galacticPole, 0.5),
  pole: ({ galacticPole }) => galacticPole,
};

/** How fast tiles are made, and decoded. @param folder where the tiles are */
export async function starSpeeds(folder: string): Promise<{ made: Made; decoded: number }> {
  // The engine makes its best code on other skies; then each place has a sky that nothing is known of.
  for (const seed of ["oak", "ash"]) for (const place of Object.values(PLACES)) speedsAt(seed, place);
  const made = {
    plane: speedsAt("sallow", PLACES.plane),
    between: speedsAt("fold", PLACES.between),
    pole: speedsAt("beck", PLACES.pole),
  };
  const bytes = new Uint8Array(await readFile(`${folder}/${FILE}`));
  const decode = () => decodeTileFile(bytes, FILE).count;
  decode();
  return { made, decoded: rate(10, decode) };
}

function speedsAt(seed: string, place: Place): number[] {
  const dir = place(planOf(seed).frame);
  return PRACTICE_LAYERS.slice(1).map(({ order, layer }) => {
    const tiles = 12 << (2 * order);
    const first = pixelOf(order, dir);
    const make = (n: number) => generateTile(seed, { order, layer, pixel: (first + n) % tiles }).count;
    // The first asks for what all tiles of the layer share.
    make(tiles - 1);
    return rate(Math.min(TILES, tiles - 1), make);
  });
}

function rate(rounds: number, stars: (n: number) => number): number {
  const start = performance.now();
  let total = 0;
  for (let n = 0; n < rounds; n++) total += stars(n);
  return total / (performance.now() - start) / 1000;
}

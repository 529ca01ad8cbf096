import { fnv1a32 } from "#core/celestial/hash.ts";
import { masFromDir } from "#core/celestial/vector.ts";
import type { Dir, StarBlock } from "#core/seams/index.ts";
import { generateTile } from "./generateTile.ts";
import { PRACTICE_LAYERS } from "./layers.ts";
import { practiceNames, practiceObjects } from "./practiceSky.ts";

const SEEDS = ["sallow", "lantern"] as const;
/** A prime step through the tiles of each order: some of each part of the sky. */
const STEPS = [97, 97, 97, 97, 97, 389, 1553, 6211] as const;

/**
 * One hash over some tiles of two practice skies, star by star and bit by bit, and over the places of what is named and
 * planted in them: two engines that agree on it grow the same skies.
 */
export function practiceGolden(): number {
  let hash: number | undefined;
  for (const seed of SEEDS) {
    for (const { layer, order } of PRACTICE_LAYERS) {
      for (let pixel = layer; pixel < 12 << (2 * order); pixel += STEPS[order]!) {
        hash = hashOfBlock(generateTile(seed, { order, pixel, layer }), hash);
      }
    }
    for (const { dir, magV } of [...practiceNames(seed).stars, ...practiceObjects(seed)])
      hash = hashOfPlace(dir, magV, hash);
  }
  return fnv1a32([], hash);
}

/** Continues a hash with all stars of a block. */
export function hashOfBlock({ count, dirs, milliMag, colourBV }: StarBlock, seed?: number): number {
  const view = new DataView(new ArrayBuffer(count * 18));
  for (let i = 0; i < count; i++) {
    for (let axis = 0; axis < 3; axis++) view.setFloat32(i * 18 + 4 * axis, dirs[3 * i + axis]!);
    view.setFloat32(i * 18 + 12, colourBV[i]!);
    view.setInt16(i * 18 + 16, milliMag[i]!);
  }
  return fnv1a32(new Uint8Array(view.buffer), seed);
}

function hashOfPlace(dir: Dir, magV: number, seed?: number): number {
  const { raMas, decMas } = masFromDir(dir);
  const view = new DataView(new ArrayBuffer(12));
  view.setInt32(0, raMas);
  view.setInt32(4, decMas);
  view.setInt32(8, Math.floor(magV * 1000 + 0.5));
  return fnv1a32(new Uint8Array(view.buffer), seed);
}

/** What a seed's whole sky hangs on, and its bright stars. */
import { exactCos, exactSin } from "#core/celestial/exactMath.ts";
import { TWO_PI } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { createChance } from "./chance.ts";
import { type FieldFrame, fieldStars } from "./fieldStars.ts";
import { PRACTICE_LAYERS, practiceTileKey } from "./layers.ts";
import { PURPOSE, type Seed } from "./seed.ts";

export type SkyStar = { readonly dir: Dir; readonly milliMag: number; readonly colourBV: number };

/** A galactic pole of the seed's own, anywhere on the sphere. */
export function frameOf({ hash }: Seed): FieldFrame {
  const chance = createChance(hash, PURPOSE.frame);
  const z = 2 * chance() - 1;
  const angle = TWO_PI * chance();
  const radius = Math.sqrt(1 - z * z);
  return { hash, galacticPole: [radius * exactCos(angle), radius * exactSin(angle), z] };
}

/** The field stars of the bright layer, brightest first. */
export function brightFieldStars(frame: FieldFrame): SkyStar[] {
  const [layer] = PRACTICE_LAYERS;
  const found: SkyStar[] = [];
  for (let pixel = 0; pixel < 12 << (2 * layer.order); pixel++) {
    const { dirs, milliMag, colourBV } = fieldStars(frame, practiceTileKey(layer, pixel));
    milliMag.forEach((mag, i) => {
      // As blocks carry them, so that a line ends on the very star.
      const dir: Dir = [Math.fround(dirs[3 * i]!), Math.fround(dirs[3 * i + 1]!), Math.fround(dirs[3 * i + 2]!)];
      found.push({ dir, milliMag: mag, colourBV: colourBV[i]! });
    });
  }
  return found.sort((a, b) => a.milliMag - b.milliMag);
}

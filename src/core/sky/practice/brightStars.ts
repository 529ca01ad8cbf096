/** The bright stars of a sky: those that its figures are made of. */
import type { Dir } from "#core/seams/index.ts";
import { fieldStars } from "./fieldStars.ts";
import type { SkyFrame, SkyStar } from "./frame.ts";
import { PRACTICE_LAYERS, practiceTileKey } from "./layers.ts";

/**
 * The field stars of the bright layer (V to 6.5), brightest first; of a close pair the brighter alone. The list is final for
 * a seed and a version of the sky: fainter layers change nothing in it.
 */
export function brightFieldStars(frame: SkyFrame): SkyStar[] {
  const [layer] = PRACTICE_LAYERS;
  const found: SkyStar[] = [];
  for (let pixel = 0; pixel < 12 << (2 * layer.order); pixel++) {
    const { dirs, milliMag, colourBV } = fieldStars(frame, practiceTileKey(layer, pixel));
    for (let i = 0; i < milliMag.length; i++) {
      // As blocks carry them, so that a line ends on the very star.
      const dir: Dir = [Math.fround(dirs[3 * i]!), Math.fround(dirs[3 * i + 1]!), Math.fround(dirs[3 * i + 2]!)];
      found.push({ dir, milliMag: milliMag[i]!, colourBV: colourBV[i]! });
    }
  }
  return found.sort((a, b) => a.milliMag - b.milliMag);
}

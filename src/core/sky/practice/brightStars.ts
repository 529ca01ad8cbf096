/** The bright stars of a sky: those that its figures are made of. */
import { fieldStars } from "./fieldStars.ts";
import type { SkyFrame, SkyStar } from "./frame.ts";
import { PRACTICE_LAYERS, practiceTileKey } from "./layers.ts";
import { starOf } from "./starList.ts";

/**
 * The field stars of the bright layer (V to 6.5), brightest first; of a close pair the brighter alone. The list is final for
 * a seed and a version of the sky: fainter layers change nothing in it.
 */
export function brightFieldStars(frame: SkyFrame): SkyStar[] {
  const [layer] = PRACTICE_LAYERS;
  const found: SkyStar[] = [];
  for (let pixel = 0; pixel < 12 << (2 * layer.order); pixel++) {
    const stars = fieldStars(frame, practiceTileKey(layer, pixel));
    for (let i = 0; i < stars.count; i++) found.push(starOf(stars, i));
  }
  return found.sort((a, b) => a.milliMag - b.milliMag);
}

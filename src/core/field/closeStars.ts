/** Stars that an eye parts though a picture would run them together: pairs that the glass splits, and Jupiter's moons. */

import { DEG } from "#core/celestial/vector.ts";
import { splitIn } from "#core/eye/doubles.ts";
import type { Dir, Gear } from "#core/seams/index.ts";
import type { BodiesInView } from "./bodies.ts";
import type { SeenObject } from "./seenField.ts";

/** Stars near a place are drawn no wider than so much. */
export interface CloseStars {
  readonly dir: Dir;
  readonly widthRad: number;
}

const ARCSEC = DEG / 3600;
/** Share of a pair's distance that each star may take; of Jupiter's disc, that a moon may (drawing rules). */
const PAIR_SHARE = 0.9;
const MOON_SHARE = 0.15;
/** Pairs wider than this share of the field stand apart anyway. */
const WIDE_SHARE = 1 / 20;

/**
 * What of a field is drawn smaller, so that it stands apart as it does to the eye. A pair that air, aperture or power does not
 * split stays one.
 * @param blurArcsec width of a star's image by the air
 */
export function closeStars(
  objects: readonly SeenObject[],
  view: BodiesInView | null,
  gear: Gear,
  blurArcsec: number,
): readonly CloseStars[] {
  if (gear.magnification === 1) return [];
  const close: CloseStars[] = [];
  const jupiter = view?.discs.find(({ name }) => name === "jupiter");
  if (jupiter)
    for (let i = 0; i < view!.points.count; i++) {
      const [x, y, z] = view!.points.dirs.subarray(3 * i, 3 * i + 3);
      close.push({ dir: [x!, y!, z!], widthRad: MOON_SHARE * jupiter.diameterRad });
    }
  for (const { object } of objects) {
    const { dir, double } = object;
    if (!double || double.separationArcsec > 3600 * gear.fieldDeg * WIDE_SHARE) continue;
    if (splitIn(gear, double, blurArcsec).isSplit)
      close.push({ dir, widthRad: PAIR_SHARE * double.separationArcsec * ARCSEC });
  }
  return close;
}

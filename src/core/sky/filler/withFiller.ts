/** The catalogue sky with what it lacks filled in, for pictures alone: charts, answers and scores ask the bare source. */
import { pixelsInCone } from "#core/celestial/healpix.ts";
import type { SkyObject, StarBlock, StarSource } from "#core/seams/index.ts";
import { createRefilled, createResidents } from "../catalogue/residents.ts";
import { darkClouds } from "../darkClouds.ts";
import { FILLED_FROM_MAG, FILLER_ORDER, fillerTile, missingIn, WHOLE_ORDER } from "./fillerTile.ts";

export interface FillerHow {
  /** Asked at each look: with it off the source is the bare one. */
  readonly isOn: () => boolean;
  /** There is more to be filled than one look did: look again. */
  readonly again: () => void;
  /** Objects of the sky: the dark nebulae among them are thinned. */
  readonly objects?: readonly SkyObject[];
}

/** The catalogue's layer that holds V 9.5 to 12.5. */
const FAINT_LAYER = 2;
/** Parts made in one look, so that no look is long: some 2 ms. */
const MADE_AT_ONCE = 3;
const PARTS_KEPT = 300;

/** A source that shows invented stars beyond V 11 beside the catalogue's own, where the catalogue's own are here. */
export function withFiller(source: StarSource, { isOn, again, objects = [] }: FillerHow): StarSource {
  const parts = new Map<number, StarBlock>();
  const missing = new Map<number, readonly number[]>();
  const seeThrough = darkClouds(objects);
  const residents = createResidents();
  const pixels: number[] = [];
  const blocks = createRefilled<StarBlock>();

  /** The filling of a part, or null where its tile is not here. */
  const make = (pixel: number, own: readonly StarBlock[]): StarBlock | null => {
    const whole = pixel >> (2 * (FILLER_ORDER - WHOLE_ORDER));
    let lack = missing.get(whole);
    if (!lack) {
      const tile = own.filter((block) => isOf(block, whole));
      if (tile.length === 0) return null;
      lack = missingIn(whole, tile);
      missing.set(whole, lack);
    }
    const part = fillerTile(pixel, lack, seeThrough);
    if (parts.size >= PARTS_KEPT) parts.delete(parts.keys().next().value!);
    parts.set(pixel, part);
    return part;
  };

  return {
    ref: source.ref,
    want: (tiles, priority, signal) => source.want(tiles, priority, signal),
    resident(cone, limitMag) {
      const own = source.resident(cone, limitMag);
      if (limitMag <= FILLED_FROM_MAG || !isOn()) return own;
      blocks.begin();
      for (const block of own.blocks) blocks.add(block);
      let left = MADE_AT_ONCE;
      let isLeft = false;
      for (const pixel of pixelsInCone(FILLER_ORDER, cone.centre, cone.radiusRad, pixels)) {
        const known = parts.get(pixel);
        if (known) blocks.add(known);
        else if (left === 0) isLeft = true;
        else {
          const made = make(pixel, own.blocks);
          if (!made) continue;
          blocks.add(made);
          left -= 1;
        }
      }
      if (isLeft) again();
      return residents.answerFor(blocks.end(), own.missing);
    },
  };
}

/** Whether a block is of a tile of the catalogue's faint layer, or of a part of it. */
function isOf({ key }: StarBlock, whole: number): boolean {
  return key.layer === FAINT_LAYER && key.pixel >> (2 * (key.order - WHOLE_ORDER)) === whole;
}

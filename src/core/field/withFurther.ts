/** Stars of a source and, beside them, what is in no catalogue. */
import type { Resident, StarBlock, StarSource } from "#core/seams/index.ts";

/**
 * A source that shows further stars beside its own: what moves, and is in no catalogue. `further` is asked at each look and
 * may change; nothing is allocated while it and the tiles stay.
 */
export function withFurther(source: StarSource, further: () => StarBlock | null): StarSource {
  let own: Resident | null = null;
  let block: StarBlock | null = null;
  let shown: Resident | null = null;
  let version = 0;
  return {
    ref: source.ref,
    want: (tiles, priority, signal) => source.want(tiles, priority, signal),
    resident(cone, limitMag) {
      const ownNow = source.resident(cone, limitMag);
      const blockNow = further();
      if (shown && ownNow === own && blockNow === block) return shown;
      [own, block] = [ownNow, blockNow];
      version += 1;
      shown = { ...own, blocks: block ? [...own.blocks, block] : own.blocks, version };
      return shown;
    },
  };
}

/** Places in one's own catalogue to look round from. */

import { DEG, separationRad } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { findByName } from "#core/sky/names/findByName.ts";
import type { NamedStar } from "#core/sky/names/types.ts";
import { createLoading } from "../play/loading.ts";
import type { OpenSky } from "../play/skies.ts";
import type { LookPlace } from "./lookLesson.ts";
import { say } from "./words.ts";

/** The ends of the layers of tiles: the brightest star is sought in the fewest files. */
const ENDS_MAG = [6.4, 9.4, 12.5] as const;
const WHOLE_SKY = { centre: [0, 0, 1] as Dir, radiusRad: Math.PI };

/** A name belongs to the star that it is so near to: tiles round their places. */
const NAME_RAD = (10 / 3600) * DEG;

/** The brightest star of a sky, under its name where it has one; null where there is no star. */
export async function brightestPlace(
  { source }: Pick<OpenSky, "source">,
  own: readonly NamedStar[],
): Promise<LookPlace | null> {
  const loading = createLoading(source, () => undefined);
  try {
    for (const limitMag of ENDS_MAG) {
      const { blocks } = await loading.whole(WHOLE_SKY, limitMag);
      // Every block has its brightest star first.
      const firsts = blocks.filter(({ count }) => count > 0).sort((a, b) => a.milliMag[0]! - b.milliMag[0]!);
      const [block] = firsts;
      if (block) {
        const [x, y, z] = block.dirs;
        const dir: Dir = [x!, y!, z!];
        const named = own.find((star) => separationRad(star.dir, dir) < NAME_RAD);
        return { name: named?.label ?? say("lookBrightestName"), dir };
      }
    }
    return null;
  } finally {
    loading.stop();
  }
}

/** What bears a name: a star of the catalogue first, else anything of the real sky; null where nothing does. */
export function namedPlace(query: string, sky: OpenSky, own: readonly NamedStar[]): LookPlace | null {
  const ofOwn = findByName(query, { stars: own, segments: [], figures: [] }, []);
  const [best] = ofOwn.length > 0 ? ofOwn : findByName(query, sky.names, sky.objects);
  return best ? { name: best.name, dir: best.dir } : null;
}

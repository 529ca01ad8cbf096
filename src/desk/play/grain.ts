/**
 * Grain: what an instrument shows beyond the catalogue's end is invented, and looks like grain. It is in the picture alone;
 * sheet, hints and score know the catalogue's own stars. Its code comes after the first sky.
 */
import { signal } from "@preact/signals";
import type { StarBlock, StarSource } from "#core/seams/index.ts";
import type { OpenSky } from "./openSky.ts";

/** The reader wants it. */
export const grainOn = signal(true);

export interface Grain {
  /** The sky's source with the grain, as soon as that is there and wanted. */
  readonly source: StarSource;
  /** Brings the code. Where it does not come, there is no grain. */
  begin(): Promise<void>;
}

/** @param again there is more to be shown: a frame is to be drawn */
export function createGrain({ source, objects }: Pick<OpenSky, "source" | "objects">, again: () => void): Grain {
  let shown = source;
  return {
    source: {
      ref: source.ref,
      want: (tiles, priority, signal) => source.want(tiles, priority, signal),
      resident: (cone, limitMag) => shown.resident(cone, limitMag),
    },
    async begin() {
      const { withFiller } = await import("#core/sky/filler/withFiller.ts");
      shown = withFiller(source, { isOn: () => grainOn.value, again, objects });
      again();
    },
  };
}

export const hasGrain = (blocks: readonly StarBlock[]): boolean =>
  blocks.some(({ invented, count }) => invented && count > 0);

import type { Dir, StarBlock } from "#core/seams/index.ts";

export interface PointOfLight {
  readonly dir: Dir;
  readonly milliMag: number;
  readonly colourBV: number;
}

/** Things that are in no catalogue of stars, and look like them, as a block to be shown beside the stars. */
export function pointBlock(points: readonly PointOfLight[]): StarBlock {
  const sorted = points.toSorted((a, b) => a.milliMag - b.milliMag);
  return {
    key: { order: 0, pixel: 0, layer: 0 },
    count: sorted.length,
    dirs: Float32Array.from(sorted.flatMap(({ dir }) => [...dir])),
    milliMag: Int16Array.from(sorted, ({ milliMag }) => milliMag),
    colourBV: Float32Array.from(sorted, ({ colourBV }) => colourBV),
    invented: false,
    moves: true,
  };
}

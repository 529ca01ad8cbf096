/** The Milky Way as a picture needs it: triangles over the sky with how much brighter each corner makes the night. */
import { pixelCentre, pixelCorners } from "#core/celestial/healpix.ts";
import type { Dir } from "#core/seams/index.ts";
import { GLOW_FLOATS } from "./glowFormat.ts";
import { GLOW_ORDER, GLOW_PIXELS, type GlowMuAt } from "./glowMap.ts";

/** Corners of a cell's two triangles. */
const CORNERS = [0, 1, 2, 0, 2, 3] as const;
/** Cells that brighten the night by less are left out: a fiftieth, a step of the display at most. */
const LEAST_DEX = 0.01;
/** Neighbouring cells share corners: each is worked out once. */
const GRAIN = 1e6;

export interface GlowCells {
  /** Triangles, three corners each. */
  readonly corners: Float32Array;
  readonly count: number;
}

/**
 * @param glow light of faint stars at a direction, mag/arcsec2
 * @param nightMu the night without it, mag/arcsec2
 */
export function glowCells(glow: GlowMuAt, nightMu: number): GlowCells {
  const known = new Map<string, number>();
  const dexAt = (dir: Dir): number => {
    const key = dir.map((value) => Math.round(value * GRAIN)).join();
    const before = known.get(key);
    if (before !== undefined) return before;
    const dex = Math.log10(1 + 10 ** (0.4 * (nightMu - glow(dir))));
    known.set(key, dex);
    return dex;
  };
  const values: number[] = [];
  for (let pixel = 0; pixel < GLOW_PIXELS; pixel++) {
    const corners = pixelCorners(GLOW_ORDER, pixel);
    const dexes = corners.map(dexAt);
    if (Math.max(...dexes) < LEAST_DEX) continue;
    const centre = pixelCentre(GLOW_ORDER, pixel);
    for (const i of CORNERS) values.push(...corners[i]!, ...centre, dexes[i]!);
  }
  return { corners: Float32Array.from(values), count: values.length / GLOW_FLOATS };
}

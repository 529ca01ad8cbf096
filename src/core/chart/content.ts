/** What a page is made from, and the sizes its print agrees on. */
import type { Dir, SkyObject, StarBlock } from "#core/seams/index.ts";
import type { FigureSegment, NamedStar } from "#core/sky/names/types.ts";

/** The ring about the anchor, px. */
export const ANCHOR_RADIUS_PX = 9.5;

export interface ChartContent {
  readonly blocks: readonly StarBlock[];
  readonly names: readonly NamedStar[];
  readonly segments: readonly FigureSegment[];
  readonly figures: readonly { readonly abbr?: string; readonly name: string; readonly centre: Dir }[];
  /** Borders of constellations, from place to place. */
  readonly borders?: readonly (readonly Dir[])[];
  /** Small figures that a hop steers by, each from star to star. */
  readonly asterisms?: readonly (readonly Dir[])[];
  readonly objects: readonly SkyObject[];
  readonly anchor: Dir | null;
  /** The target's sign stands where the object is; `kind` chooses it. */
  readonly target: { readonly dir: Dir; readonly object: SkyObject | null } | null;
  /** The ways to print, each from mark to mark; only where the lesson shows them. */
  readonly ways: readonly (readonly Dir[])[];
  readonly words: { readonly anchor: string; readonly target: string };
}

/** Radius of a star's dot for a chart that ends at a limit: linear in magnitude, in steps of half a magnitude, px. */
export function dotRadiusPx(magV: number, limitMag: number): number {
  const half = Math.round(magV * 2) / 2;
  return Math.max(0.6, 0.72 + 0.62 * (limitMag - half));
}

/** Which tiles of a practice sky its dark nebulae reach into. */
import { pixelsInCone } from "#core/celestial/healpix.ts";
import { DEG } from "#core/celestial/vector.ts";
import type { TileKey } from "#core/seams/index.ts";
import { darkClouds, type SeeThrough } from "../darkClouds.ts";
import type { WildObject } from "./population.ts";

/** What dark nebulae leave of the faint stars in a tile; nothing where there is none: most tiles are asked in vain. */
export type DarkTiles = (key: TileKey) => SeeThrough | undefined;

/** The dark ones among a sky's objects, tile by tile. Tiles of an order are gone through when one of them is first asked for. */
export function darkTilesOf(objects: readonly WildObject[]): DarkTiles {
  const dark = objects.filter(({ kind }) => kind === "darkNebula");
  const orders = new Map<number, Map<number, SeeThrough>>();
  return ({ order, pixel }) => {
    const known = orders.get(order) ?? byPixel(dark, order);
    orders.set(order, known);
    return known.get(pixel);
  };
}

function byPixel(dark: readonly WildObject[], order: number): Map<number, SeeThrough> {
  const lists = new Map<number, WildObject[]>();
  for (const cloud of dark)
    for (const pixel of pixelsInCone(order, cloud.dir, (cloud.majorArcmin / 120) * DEG))
      lists.set(pixel, [...(lists.get(pixel) ?? []), cloud]);
  return new Map([...lists].map(([pixel, clouds]) => [pixel, darkClouds(clouds)]));
}

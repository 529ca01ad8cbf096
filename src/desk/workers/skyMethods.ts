/** What the sky worker does: tiles out of files, tiles out of seed words, and where the planets stand. */
import type { Site } from "#core/celestial/frames.ts";
import { InputError } from "#core/seams/errors.ts";
import type { SkyRef, StarBlock, TileKey } from "#core/seams/index.ts";
import { decodeTileFile, type TileFile } from "#core/sky/catalogue/decodeTileFile.ts";
import { type GlowCells, glowCells } from "#core/sky/glow/glowCells.ts";
import { glowOfSky } from "#core/sky/glow/glowOfSky.ts";
import type { MovingBody } from "#core/sky/names/findByName.ts";
import { generateTile } from "#core/sky/practice/generateTile.ts";
import { movingBodies } from "#core/sky/solar/movingBodies.ts";
import { type SolarSystem, solarSystemAt } from "#core/sky/solar/solarSystem.ts";
import type { Methods } from "./methods.ts";

export type GenerateTile = { readonly seed: string; readonly key: TileKey };
export type MilkyWayOver = { readonly sky: Pick<SkyRef, "kind" | "seed">; readonly nightMu: number };
export type SolarSystemAt = { readonly site: Site; readonly utcMs: number };
export type DecodeTileFile = { readonly bytes: Uint8Array; readonly name: string };

/**
 * Here, for its tables are heavy and only a worker keeps them out of what the page loads first.
 * @throws InputError where the instant is no number
 */
function wanderers({ utcMs }: { readonly utcMs: number }): MovingBody[] {
  return movingBodies(instant(utcMs));
}
/** @throws InputError where the instant is no number */
function discs({ site, utcMs }: SolarSystemAt): SolarSystem {
  return solarSystemAt(site, instant(utcMs));
}
/** The Milky Way over a night, for the picture. @throws InputError where a practice sky has no seed word */
async function milkyWay({ sky, nightMu }: MilkyWayOver): Promise<GlowCells> {
  return glowCells(await glowOfSky(sky, true), nightMu);
}
function instant(utcMs: number): number {
  if (!Number.isFinite(utcMs)) throw new InputError(`${utcMs} is no instant`, "Give milliseconds since 1970, UTC.");
  return utcMs;
}

export const skyMethods = {
  /** @throws InputError where the seed is no seed word or a practice sky has no such tile */
  generateTile: ({ seed, key }: GenerateTile): StarBlock => generateTile(seed, key),
  /** @throws DataFileError where the bytes are no tile file */
  decodeTileFile: ({ bytes, name }: DecodeTileFile): TileFile => decodeTileFile(bytes, name),
  movingBodies: wanderers,
  solarSystem: discs,
  milkyWay,
} satisfies Methods;

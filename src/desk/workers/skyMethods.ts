/** What the sky worker does: tiles out of files, tiles out of seed words. */
import type { StarBlock, TileKey } from "#core/seams/index.ts";
import { decodeTileFile, type TileFile } from "#core/sky/catalogue/decodeTileFile.ts";
import { generateTile } from "#core/sky/practice/generateTile.ts";
import type { Methods } from "./methods.ts";

export type GenerateTile = { readonly seed: string; readonly key: TileKey };
export type DecodeTileFile = { readonly bytes: Uint8Array; readonly name: string };

export const skyMethods = {
  /** @throws InputError where the seed is no seed word or a practice sky has no such tile */
  generateTile: ({ seed, key }: GenerateTile): StarBlock => generateTile(seed, key),
  /** @throws DataFileError where the bytes are no tile file */
  decodeTileFile: ({ bytes, name }: DecodeTileFile): TileFile => decodeTileFile(bytes, name),
} satisfies Methods;

/** A catalogue that `sky import` laid into a folder here: its stars and names. */
import { existsSync, readFileSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { InputError } from "#core/seams/errors.ts";
import { NAMES_FILE, readOwnNames } from "#core/sky/import/ownNames.ts";
import { catalogueNames } from "#core/sky/names/catalogueNames.ts";
import { plainName } from "#core/sky/names/letters.ts";
import type { SkyNames } from "#core/sky/names/types.ts";
import { UsageError } from "./usageError.ts";

export const CATALOGUE_WORD = "catalogue";
/** A file that only an import writes: by it a folder is known as one. */
export const OWN_MARK = "imported.txt";
const OWN_WORD = /^[A-Za-z0-9_-]{1,60}$/;

/** Whether the current folder holds an imported catalogue of that name. */
export const isOwnSky = (word: string): boolean => OWN_WORD.test(word) && existsSync(join(word, OWN_MARK));

/** Fetches a file of an imported catalogue for its star source. */
export const ownFileFetcher =
  (folder: string) =>
  async (name: string, signal: AbortSignal): Promise<ArrayBuffer> => {
    const bytes = await readFile(join(folder, name), { signal });
    return bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer;
  };

const ofFolder = new Map<string, SkyNames>();

/** The names of an imported catalogue, and those of the real sky that it does not give itself. @throws UsageError */
export function ownNames(folder: string): SkyNames {
  const kept = ofFolder.get(folder) ?? read(folder);
  ofFolder.set(folder, kept);
  return kept;
}

function read(folder: string): SkyNames {
  const path = join(folder, NAMES_FILE);
  const real = catalogueNames();
  if (!existsSync(path)) return real;
  try {
    const own = readOwnNames(Uint8Array.from(readFileSync(path)));
    const given = new Set(own.map(({ label }) => plainName(label)));
    const others = real.stars.filter(({ proper }) => proper === undefined || !given.has(plainName(proper)));
    return { ...real, stars: [...own, ...others].sort((a, b) => a.magV - b.magV) };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new UsageError("FILE", error.message, error.hint, { file: path });
  }
}

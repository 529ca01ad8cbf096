/** `sky import`: a catalogue of one's own to tile files in a folder. */
import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import { access, mkdir, readdir, rename, rm, stat, writeFile } from "node:fs/promises";
import { basename, extname, join, resolve } from "node:path";
import { InputError } from "#core/seams/errors.ts";
import { startImport } from "#core/sky/import/importStars.ts";
import { NAMES_FILE } from "#core/sky/import/ownNames.ts";
import type { Imported } from "#core/sky/import/types.ts";
import { unreadable } from "../files.ts";
import { CATALOGUE_WORD, OWN_MARK } from "../ownSky.ts";
import { UsageError } from "../usageError.ts";

export type SkyImportResult = Omit<Imported, "files"> & {
  readonly name: string;
  readonly folder: string;
  readonly files: number;
  readonly bytes: number;
};

const OWN_FILE = new RegExp(`^(stars-\\d(-\\d\\d)?\\.bin|SHA256SUMS|${NAMES_FILE}|${OWN_MARK})$`);

function nameOf(path: string, given: string | undefined): string {
  const name = given ?? basename(path, extname(path)).replaceAll(/[^A-Za-z0-9_-]+/g, "-");
  if (name === CATALOGUE_WORD)
    throw new UsageError("ARGUMENTS", `"${name}" is the name of the sky that comes with the program`, "give another");
  if (/^[A-Za-z0-9_-]{1,60}$/.test(name)) return name;
  throw new UsageError("ARGUMENTS", `"${name}" is no name for a sky`, "take letters, digits, - and _: --as my-stars");
}

async function exists(path: string): Promise<boolean> {
  return access(path).then(
    () => true,
    () => false,
  );
}

/** A folder that holds anything but an earlier import is not ours to replace: the tiles of the program's own sky least of all. */
async function refuseForeign(folder: string): Promise<void> {
  if (!(await exists(folder))) return;
  const there = (await stat(folder)).isDirectory() ? await readdir(folder) : [];
  const isOwn = there.includes(OWN_MARK) && there.every((name) => OWN_FILE.test(name));
  if (!isOwn)
    throw new UsageError("FILE", `${folder} is there and holds other things`, "give another name with --as NAME");
}

async function read(path: string, progress: (line: string) => void): Promise<Imported> {
  const work = startImport();
  const decoder = new TextDecoder();
  const { size } = await stat(path).catch((error: unknown) => {
    throw unreadable(path, error);
  });
  let done = 0;
  let told = 0;
  try {
    for await (const piece of createReadStream(path) as AsyncIterable<Uint8Array>) {
      work.push(decoder.decode(piece, { stream: true }));
      done += piece.length;
      const percent = Math.floor((100 * done) / size);
      if (percent >= told + 10) {
        told = percent;
        progress(`${percent} %, ${work.rows()} rows`);
      }
    }
    work.push(decoder.decode());
    return work.finish();
  } catch (error) {
    if (error instanceof InputError) throw new UsageError("FILE", error.message, error.hint, { file: path });
    throw (error as NodeJS.ErrnoException).syscall === undefined ? error : unreadable(path, error);
  }
}

/** Writes beside the folder and changes names at the end: a failure leaves what was there. */
async function replaceFolder(folder: string, { files }: Imported): Promise<void> {
  const [fresh, old] = [`${folder}.new-${process.pid}`, `${folder}.old-${process.pid}`];
  try {
    await mkdir(fresh);
    for (const { name, bytes } of files) await writeFile(join(fresh, name), bytes);
    const sums = files.map(({ name, bytes }) => `${createHash("sha256").update(bytes).digest("hex")}  ${name}\n`);
    await writeFile(join(fresh, "SHA256SUMS"), sums.join(""));
    await writeFile(join(fresh, OWN_MARK), "A catalogue of one's own, made by faintward sky import.\n");
    const isThere = await exists(folder);
    if (isThere) await rename(folder, old);
    try {
      await rename(fresh, folder);
    } catch (error) {
      if (isThere) await rename(old, folder);
      throw error;
    }
    await rm(old, { recursive: true, force: true });
  } finally {
    await rm(fresh, { recursive: true, force: true });
  }
}

/**
 * Reads a CSV file or a VOTable into the folder NAME below the current one, replacing an earlier import of that name.
 * @param as name of the sky; the file's own without its ending where none is given
 * @throws UsageError where file or name cannot be used; then nothing is written
 */
export async function skyImport(
  path: string,
  as: string | undefined,
  progress: (line: string) => void,
): Promise<SkyImportResult> {
  const name = nameOf(path, as);
  const folder = resolve(name);
  await refuseForeign(folder);
  const imported = await read(path, progress);
  await replaceFolder(folder, imported);
  const { files, ...rest } = imported;
  const bytes = files.reduce((sum, file) => sum + file.bytes.length, 0);
  return { name, folder, files: files.length, bytes, ...rest };
}

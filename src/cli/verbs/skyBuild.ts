/** `sky build`: the raw Tycho-2 catalogue to the tile files that page and command line read. */
import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import { readdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { InputError } from "#core/seams/errors.ts";
import { type BuiltSky, startSkyBuild } from "#core/sky/build/skyBuild.ts";
import { makeFolder } from "../files.ts";
import { UsageError } from "../usageError.ts";

type Count = { readonly why: string; readonly count: number };
export type SkyBuildResult = {
  readonly files: number;
  readonly bytes: number;
  readonly stars: number;
  readonly dropped: readonly Count[];
  readonly mended: readonly Count[];
};

/** The line that is being read: a fault is blamed on it. */
type Reading = { file: string; line: number };

/**
 * Reads `tyc2.dat.00` and on, `suppl_1.dat` and `suppl_2.dat` of a folder and writes the tiles and their `SHA256SUMS` into
 * another, made where it is missing. Nothing is written unless all was read. Throws InputError where a file is missing, and
 * UsageError with file and line where a file is empty, packed, or has a line that is not of the catalogue.
 */
export async function skyBuild(rawFolder: string, outFolder: string): Promise<SkyBuildResult> {
  const names = await readdir(rawFolder).catch(() => {
    throw new InputError(`${rawFolder} is no folder that can be read`, "Give the folder with the raw Tycho-2 files.");
  });
  const main = names.filter((name) => /^tyc2\.dat(\.\d\d)?$/.test(name)).sort();
  for (const needed of [...SUPPLEMENTS, ...numberedUpTo(main.at(-1))]) {
    if (!names.includes(needed)) missing(needed, rawFolder);
  }
  if (main.length > 1 && main[0] === "tyc2.dat")
    throw new InputError(`${rawFolder} has the main catalogue whole and in parts`, "Keep one of the two.");
  const reading: Reading = { file: "", line: 0 };
  const sky = await built(rawFolder, main, reading).catch((error: unknown) => {
    if (!(error instanceof InputError)) throw error;
    const { file, line } = reading;
    throw new UsageError(error.code, `${file}:${line}: ${error.message}`, error.hint, { file, line });
  });
  await makeFolder(outFolder);
  for (const file of sky.files) await writeFile(join(outFolder, file.name), file.bytes);
  await writeFile(join(outFolder, "SHA256SUMS"), sumsOf(sky.files));
  const bytes = sky.files.reduce((sum, file) => sum + file.bytes.length, 0);
  return { files: sky.files.length, bytes, stars: sky.stars, dropped: sky.dropped, mended: sky.mended };
}

const SUPPLEMENTS = ["suppl_1.dat", "suppl_2.dat"] as const;

/** The parts of the main catalogue that must be there: one at least, and none left out before the last. */
function numberedUpTo(last = "tyc2.dat.00"): string[] {
  const count = Number(/\.(\d\d)$/.exec(last)?.[1] ?? -1) + 1;
  return Array.from({ length: count }, (_, i) => `tyc2.dat.${String(i).padStart(2, "0")}`);
}

async function built(folder: string, main: readonly string[], reading: Reading): Promise<BuiltSky> {
  const [first, second] = await Promise.all(SUPPLEMENTS.map((name) => readFile(join(folder, name), "latin1")));
  const supplement2 = [...counted(join(folder, SUPPLEMENTS[1]), second!, reading)];
  const build = startSkyBuild(counted(join(folder, SUPPLEMENTS[0]), first!, reading), supplement2.length);
  for (const name of main) for await (const line of linesOf(join(folder, name), reading)) build.addMainLine(line);
  return build.finish();
}

/** Lines of a text that are not empty; the reading goes along. */
function* counted(file: string, text: string, reading: Reading): Generator<string> {
  Object.assign(reading, { file, line: 0 });
  if (text === "") isEmpty(reading);
  for (const line of text.split(/\r\n|\n|\r/)) if (isLine(line, ++reading.line)) yield line;
}

async function* linesOf(file: string, reading: Reading): AsyncGenerator<string> {
  Object.assign(reading, { file, line: 0 });
  const lines = createInterface({ input: createReadStream(file, "latin1"), crlfDelay: Number.POSITIVE_INFINITY });
  for await (const line of lines) if (isLine(line, ++reading.line)) yield line;
  if (reading.line === 0) isEmpty(reading);
}

function isEmpty(reading: Reading): never {
  reading.line = 1;
  return unusable("the file is empty", "Get the file once more, whole.");
}

/** What a packed file begins with (RFC 1952, section 2.3.1). */
const GZIP = "\u001f\u008b";
function isLine(line: string, number: number): boolean {
  if (number === 1 && line.startsWith(GZIP)) unusable("the file is packed", "Unpack it first (gunzip).");
  return line !== "";
}

function unusable(what: string, hint: string): never {
  throw new InputError(what, hint);
}

/** The list that `sha256sum -c` reads. */
function sumsOf(files: readonly { name: string; bytes: Uint8Array }[]): string {
  return files.map((file) => `${createHash("sha256").update(file.bytes).digest("hex")}  ${file.name}\n`).join("");
}

function missing(name: string, folder: string): never {
  throw new InputError(`${name} is missing in ${folder}`, "Give the folder with the raw Tycho-2 files, unpacked.");
}

/** `sky build`: the raw Tycho-2 catalogue to the tile files that page and command line read. */
import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import { mkdir, readdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { InputError } from "#core/seams/errors.ts";
import { startSkyBuild } from "#core/sky/build/skyBuild.ts";

type Count = { readonly why: string; readonly count: number };
export type SkyBuildResult = {
  readonly files: number;
  readonly bytes: number;
  readonly stars: number;
  readonly dropped: readonly Count[];
  readonly mended: readonly Count[];
};

/**
 * Reads `tyc2.dat.00` and on, `suppl_1.dat` and `suppl_2.dat` of a folder and writes the tiles and their `SHA256SUMS` into
 * another, made where it is missing. Nothing is written unless all was read. Throws InputError where a file is missing or a
 * line is not of the catalogue.
 */
export async function skyBuild(rawFolder: string, outFolder: string): Promise<SkyBuildResult> {
  const names = await readdir(rawFolder).catch(() => {
    throw new InputError(`${rawFolder} is no folder that can be read`, "Give the folder with the raw Tycho-2 files.");
  });
  const main = names.filter((name) => /^tyc2\.dat(\.\d\d)?$/.test(name)).sort();
  for (const needed of ["suppl_1.dat", "suppl_2.dat"]) refuseWithout(names.includes(needed), needed, rawFolder);
  refuseWithout(main.length > 0, "tyc2.dat.00", rawFolder);
  const supplement1 = await wholeFile(join(rawFolder, "suppl_1.dat"));
  const supplement2 = await wholeFile(join(rawFolder, "suppl_2.dat"));
  const build = startSkyBuild(supplement1, supplement2.length);
  for (const name of main) for await (const line of linesOf(join(rawFolder, name))) build.addMainLine(line);
  const sky = build.finish();
  await mkdir(outFolder, { recursive: true });
  for (const file of sky.files) await writeFile(join(outFolder, file.name), file.bytes);
  await writeFile(join(outFolder, "SHA256SUMS"), sumsOf(sky.files));
  const bytes = sky.files.reduce((sum, file) => sum + file.bytes.length, 0);
  return { files: sky.files.length, bytes, stars: sky.stars, dropped: sky.dropped, mended: sky.mended };
}

/** The list that `sha256sum -c` reads. */
function sumsOf(files: readonly { name: string; bytes: Uint8Array }[]): string {
  return files.map((file) => `${createHash("sha256").update(file.bytes).digest("hex")}  ${file.name}\n`).join("");
}

async function wholeFile(path: string): Promise<string[]> {
  return (await readFile(path, "latin1")).split(/\r?\n/).filter((line) => line !== "");
}

async function* linesOf(path: string): AsyncGenerator<string> {
  const lines = createInterface({ input: createReadStream(path, "latin1"), crlfDelay: Number.POSITIVE_INFINITY });
  for await (const line of lines) if (line !== "") yield line;
}

function refuseWithout(isThere: boolean, name: string, folder: string): void {
  if (isThere) return;
  throw new InputError(`${name} is missing in ${folder}`, "Give the folder with the raw Tycho-2 files, unpacked.");
}

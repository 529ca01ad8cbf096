/**
 * Checks that the tiles of the catalogue sky are the very bytes on the committed list:
 * `node src/tools/checkSky.mjs [FOLDER]` (default: assets/sky). Exit 0: they are; 1: a file differs, is missing or is not on
 * the list; 2: there is no list.
 */
import { createHash } from "node:crypto";
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const LIST = "SHA256SUMS";

/** What is wrong with a folder of tiles, a line each; empty where all is well. Rejects where the list cannot be read. */
export async function findingsOfSky(folder) {
  const lines = (await readFile(join(folder, LIST), "utf8")).split("\n").filter((line) => line !== "");
  const listed = new Map(lines.map((line) => [line.slice(66), line.slice(0, 64)]));
  const findings = [];
  for (const [name, wanted] of listed) {
    const bytes = await readFile(join(folder, name)).catch(() => undefined);
    if (!bytes) findings.push(`${name}: missing`);
    else if (createHash("sha256").update(bytes).digest("hex") !== wanted)
      findings.push(`${name}: differs from ${LIST}`);
  }
  const tiles = (await readdir(folder)).filter((name) => name.endsWith(".bin"));
  for (const name of tiles) if (!listed.has(name)) findings.push(`${name}: not on ${LIST}`);
  if (listed.size === 0) findings.push(`${LIST}: empty`);
  return findings;
}

async function main() {
  const folder = process.argv[2] ?? fileURLToPath(new URL("../../assets/sky", import.meta.url));
  try {
    const findings = await findingsOfSky(folder);
    for (const finding of findings) console.error(finding);
    if (findings.length === 0) console.log(`${folder}: every tile is as listed`);
    process.exitCode = findings.length === 0 ? 0 : 1;
  } catch (error) {
    console.error(`${folder}: ${LIST} cannot be read (${error.message}); build the tiles with "faintward sky build"`);
    process.exitCode = 2;
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) await main();

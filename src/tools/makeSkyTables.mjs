/**
 * Makes the tables that follow from others: `node src/tools/makeSkyTables.mjs [--check]`.
 *   shared/glow.json        the Milky Way's light, from the tiles of the catalogue sky
 * With --check nothing is written: exit 1 where a table differs from what is there.
 */
import { readFile, writeFile } from "node:fs/promises";
import { runnerImport } from "vite";
import { at } from "./run.mjs";

const WHOLE_SKY = { centre: [0, 0, 1], radiusRad: Math.PI };

/** The code of core, run through vite, which knows the aliases that Node does not. */
async function core() {
  const { module } = await runnerImport(at("src", "tools", "skyTables.ts"), {
    configFile: false,
    logLevel: "silent",
    resolve: { alias: { "#core": at("src", "core"), "#shared": at("shared") } },
  });
  return module;
}

async function glowTable({ createCatalogueSource, measureGlow }) {
  const fetchFile = async (name) => new Uint8Array(await readFile(at("assets", "sky", name))).buffer;
  const source = createCatalogueSource({ fetchFile, capBytes: Number.POSITIVE_INFINITY });
  await source.want(source.resident(WHOLE_SKY, 12).missing, 0, new AbortController().signal);
  const bytes = measureGlow(source.resident(WHOLE_SKY, 12).blocks);
  return {
    about:
      "Light of the stars fainter than V 6.5, from Tycho-2 (Hog et al. 2000, A&A 355, L27) to V 11 and continued beyond: one byte a HEALPix pixel of order 4, nested, base64; mag/arcsec2 = 19 + 0.025 byte.",
    map: Buffer.from(bytes).toString("base64"),
  };
}

const TABLES = { "glow.json": glowTable };

const module = await core();
let differs = 0;
for (const [name, make] of Object.entries(TABLES)) {
  const text = `${JSON.stringify(await make(module), null, 2)}\n`;
  const path = at("shared", name);
  const before = await readFile(path, "utf8").catch(() => "");
  if (text === before) console.log(`${name}: as it was`);
  else if (process.argv.includes("--check")) {
    console.error(`${name}: differs; run node src/tools/makeSkyTables.mjs`);
    differs += 1;
  } else {
    await writeFile(path, text);
    console.log(`${name}: written`);
  }
}
process.exitCode = differs > 0 ? 1 : 0;

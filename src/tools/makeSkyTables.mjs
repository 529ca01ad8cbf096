/**
 * Makes the tables that follow from others: `node src/tools/makeSkyTables.mjs [--check]`.
 *   shared/glow.json          the Milky Way's light, from the tiles of the catalogue sky
 *   shared/star-colours.json  which colours stars have, from the same tiles
 *   shared/borders.json       the borders of the constellations, from the look-up that knows them by place
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

/** All blocks of the catalogue sky to V 12. */
async function wholeSky({ createCatalogueSource }) {
  const fetchFile = async (name) => new Uint8Array(await readFile(at("assets", "sky", name))).buffer;
  const source = createCatalogueSource({ fetchFile, capBytes: Number.POSITIVE_INFINITY });
  await source.want(source.resident(WHOLE_SKY, 12).missing, 0, new AbortController().signal);
  return source.resident(WHOLE_SKY, 12).blocks;
}

async function glowTable(module) {
  const bytes = module.measureGlow(await wholeSky(module));
  return {
    about:
      "Light of the stars fainter than V 6.5, from Tycho-2 (Hog et al. 2000, A&A 355, L27) to V 11 and continued beyond: one byte a HEALPix pixel of order 4, nested, base64; mag/arcsec2 = 19 + 0.025 byte.",
    map: Buffer.from(bytes).toString("base64"),
  };
}

async function coloursTable(module) {
  return {
    about:
      "B-V of stars in the tiles of the catalogue sky (Tycho-2, Hog et al. 2000, A&A 355, L27), for each range of V and band of galactic latitude, north and south: how many of a thousand have each 5-bit colour, from -0.40 in steps of 0.08.",
    ...module.measureColours(await wholeSky(module)),
  };
}

function bordersTable({ frameOfB1875, lookUpCell, traceBorders }) {
  return {
    about:
      "Borders of the constellations, traced from astronomy-engine's look-up on a grid of 48 lines a degree, equinox B1875: meridians as column, first and last row; parallels as row, first and last column; frame turns B1875 to ICRS.",
    ...traceBorders(lookUpCell()),
    frame: frameOfB1875().map((each) => Number(each.toFixed(10))),
  };
}

const TABLES = { "glow.json": glowTable, "star-colours.json": coloursTable, "borders.json": bordersTable };

/** Long lists of numbers on one line each. */
const textOf = (table) =>
  `{\n${Object.entries(table)
    .map(([key, value]) => `  ${JSON.stringify(key)}: ${JSON.stringify(value)}`)
    .join(",\n")}\n}\n`;

const module = await core();
let differs = 0;
for (const [name, make] of Object.entries(TABLES)) {
  const text = textOf(await make(module));
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

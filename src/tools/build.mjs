/** Builds the page into dist/page: `npm run build`. */
import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { at, ensurePackages, runTool } from "./run.mjs";

const SOURCES = ["src", "lessons", "shared", "assets", "index.html", "vite.config.ts", "package-lock.json"];

const newestMs = (path) => {
  const entry = statSync(path, { throwIfNoEntry: false });
  if (!entry) return 0;
  if (!entry.isDirectory()) return entry.mtimeMs;
  return readdirSync(path).reduce((newest, name) => Math.max(newest, newestMs(join(path, name))), entry.mtimeMs);
};

/** Builds where the built page is missing or older than a source. Throws with the tool's own words where it fails. */
export async function ensureBuilt() {
  const built = newestMs(at("dist", "page", "index.html"));
  if (built > Math.max(...SOURCES.map((name) => newestMs(at(name))))) return;
  console.log("Building the page ...");
  const { code, out } = await runTool("vite/bin/vite.js", ["build", "--logLevel", "warn"], { quiet: true });
  if (code !== 0) throw new Error(`the build failed:\n${out}`);
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  await ensurePackages();
  await ensureBuilt();
}

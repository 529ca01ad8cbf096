/** Builds src/cli/main.ts into one file, where that file is missing or older than a source. One process builds, others wait. */
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { at } from "../tools/run.mjs";

const SOURCES = [at("src", "core"), at("src", "cli"), at("shared"), at("package-lock.json")];
const CACHE = at("node_modules", ".cache", "faintward");
const PROGRAM = join(CACHE, "main.mjs");
const LOCK = join(CACHE, "lock");
const LOOK_AGAIN_MS = 100;
/** A builder that was killed leaves its lock: longer than any build, it is taken over. */
const LOCK_STALE_MS = 60_000;

const newestMs = (path) => {
  const entry = statSync(path, { throwIfNoEntry: false });
  if (!entry) return 0;
  if (!entry.isDirectory()) return entry.mtimeMs;
  return readdirSync(path).reduce((newest, name) => Math.max(newest, newestMs(join(path, name))), entry.mtimeMs);
};

/** Up to a whole ms: files keep no more. */
const newestSourceMs = () => Math.ceil(Math.max(...SOURCES.map(newestMs)));

/** The program bears the time of the newest source that was there when its build began. */
const isFresh = () => {
  const built = statSync(PROGRAM, { throwIfNoEntry: false });
  return built !== undefined && Math.round(built.mtimeMs) >= newestSourceMs();
};

const isAlive = (pid) => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === "EPERM";
  }
};

/** True where the lock is ours now. */
function takeLock() {
  mkdirSync(CACHE, { recursive: true });
  try {
    writeFileSync(LOCK, String(process.pid), { flag: "wx" });
    return true;
  } catch (error) {
    if (error.code !== "EEXIST") throw error;
  }
  const made = statSync(LOCK, { throwIfNoEntry: false });
  if (!made) return false;
  const owner = Number(readFileSync(LOCK, "utf8"));
  const abandoned = owner > 0 ? !isAlive(owner) : Date.now() - made.mtimeMs > LOCK_STALE_MS;
  if (abandoned) rmSync(LOCK, { force: true });
  return false;
}

async function build() {
  const { build: viteBuild } = await import("vite");
  const outDir = join(CACHE, `build-${process.pid}`);
  const madeFromMs = newestSourceMs();
  try {
    await viteBuild({
      configFile: false,
      root: at(),
      logLevel: "silent",
      publicDir: false,
      resolve: { alias: { "#core": at("src", "core"), "#shared": at("shared") } },
      ssr: { noExternal: true },
      build: {
        ssr: at("src", "cli", "main.ts"),
        outDir,
        target: "node20",
        emptyOutDir: true,
        minify: false,
        rolldownOptions: { output: { entryFileNames: "main.mjs", codeSplitting: false } },
      },
    });
    const built = join(outDir, "main.mjs");
    utimesSync(built, madeFromMs / 1000, madeFromMs / 1000);
    renameSync(built, PROGRAM);
  } finally {
    rmSync(outDir, { recursive: true, force: true });
  }
}

/**
 * @param {(line: string) => void} say where progress goes
 * @returns {Promise<string>} path of the built program, newer than every source
 */
export async function ensureProgram(say) {
  while (!isFresh()) {
    if (!takeLock()) {
      await pause(LOOK_AGAIN_MS);
      continue;
    }
    try {
      if (isFresh()) break;
      say("Building the command line ...");
      await build();
    } finally {
      rmSync(LOCK, { force: true });
    }
    break;
  }
  return PROGRAM;
}

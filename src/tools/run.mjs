/** Running other programs and knowing where the project is. Node alone; nothing needs to be installed. */
import { spawn } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

export const ROOT = fileURLToPath(new URL("../..", import.meta.url));
export const at = (...parts) => join(ROOT, ...parts);

/**
 * Runs a program in the project's folder and waits for its end.
 * @returns {Promise<{code: number, out: string}>} exit code, and what it printed where `quiet`
 */
export function run(command, args, { quiet = false, env = {} } = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, {
      cwd: ROOT,
      env: { ...process.env, ...env },
      stdio: ["ignore", quiet ? "pipe" : "inherit", quiet ? "pipe" : "inherit"],
      shell: process.platform === "win32",
    });
    let out = "";
    child.stdout?.on("data", (bytes) => {
      out += bytes;
    });
    child.stderr?.on("data", (bytes) => {
      out += bytes;
    });
    child.on("error", (error) => resolve({ code: 127, out: `${out}${error.message}\n` }));
    child.on("close", (code) => resolve({ code: code ?? 1, out }));
  });
}

/** Runs a tool of a package that is installed here, by its script. */
export const runTool = (script, args, how) => run(process.execPath, [at("node_modules", script), ...args], how);

const versionsOf = (path) => {
  const lock = JSON.parse(readFileSync(path, "utf8"));
  return Object.entries(lock.packages)
    .filter(([name, entry]) => name !== "" && !entry.optional)
    .map(([name, entry]) => `${name}@${entry.version}`)
    .sort()
    .join("\n");
};

/** Installs the packages of the lock file where they are missing or of other versions. */
export async function ensurePackages() {
  const installed = at("node_modules", ".package-lock.json");
  if (existsSync(installed)) {
    const wanted = versionsOf(at("package-lock.json")).split("\n");
    const here = new Set(versionsOf(installed).split("\n"));
    if (wanted.every((one) => here.has(one))) return;
  }
  console.log("Installing packages ...");
  const { code } = await run("npm", ["ci", "--no-audit", "--no-fund", "--loglevel=error"]);
  if (code !== 0) throw new Error("npm ci failed: is the network there, and Node.js 20.19 or newer?");
}

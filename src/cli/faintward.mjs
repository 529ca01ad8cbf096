#!/usr/bin/env node
/**
 * The command line's front door: plain JavaScript that builds the rest where it is missing or older than a source, then
 * hands over. Says nothing on standard output of its own.
 */
import { existsSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { at, ROOT, run } from "../tools/run.mjs";
import { ensureProgram } from "./ensureProgram.mjs";

const say = (line) => {
  if (process.stderr.isTTY) process.stderr.write(`${line}\n`);
};

async function ensureInstalled() {
  if (existsSync(at("node_modules", "vite", "package.json"))) return;
  say("Installing packages ...");
  const { code } = await run("npm", ["ci", "--no-audit", "--no-fund", "--loglevel=error"], { quiet: true });
  if (code !== 0) throw new Error("npm ci failed: is the network there, and Node.js 20.19 or newer?");
}

// A reader that has seen enough (`| head`) closes the pipe: that is no failure.
process.stdout.on("error", (error) => {
  if (error.code !== "EPIPE") throw error;
});

try {
  await ensureInstalled();
  const program = await ensureProgram(say);
  const { main } = await import(pathToFileURL(program).href);
  process.exitCode = await main(process.argv.slice(2), ROOT);
} catch (error) {
  process.stderr.write(
    `faintward: the program cannot be built or run: ${String(error?.message ?? error).split("\n")[0]}\n`,
  );
  process.exitCode = 2;
}

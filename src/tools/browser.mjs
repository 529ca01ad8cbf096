/** Finds a Chromium for the browser tests, trying what is there before anything is fetched. */
import { accessSync, constants, existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { run, runTool } from "./run.mjs";

const NAMES = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome", "chrome.exe"];
const PLACES = [
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe",
];

const runnable = (path) => {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
};

const installed = () => {
  const folders = (process.env.PATH ?? "").split(delimiter);
  return [...NAMES.flatMap((name) => folders.map((folder) => join(folder, name))), ...PLACES].find(runnable) ?? null;
};

const playwrightsOwn = async () => {
  const { chromium } = await import("@playwright/test");
  const path = chromium.executablePath();
  return path && existsSync(path) ? path : null;
};

const downloaded = async () => {
  console.log("No browser found: asking Playwright for its own ...");
  const { code } = await runTool("@playwright/test/cli.js", ["install", "chromium"], { quiet: true });
  return code === 0 ? playwrightsOwn() : null;
};

const debians = async () => {
  if (process.platform !== "linux" || process.getuid?.() !== 0 || !runnable("/usr/bin/apt-get")) return null;
  console.log("Installing Debian's chromium ...");
  const env = { DEBIAN_FRONTEND: "noninteractive" };
  await run("apt-get", ["update", "-qq"], { quiet: true, env });
  const { code } = await run("apt-get", ["install", "-y", "-qq", "--no-install-recommends", "chromium"], {
    quiet: true,
    env,
  });
  return code === 0 ? installed() : null;
};

/**
 * The order: CHROME_PATH, an installed Chromium or Chrome, Playwright's own, Playwright's download, Debian's package.
 * @returns {Promise<string>} path of the program @throws Error with what to do where there is none
 */
export async function findBrowser() {
  const named = process.env.CHROME_PATH;
  if (named) {
    if (runnable(named)) return named;
    throw new Error(`CHROME_PATH names ${named}, which cannot be run: correct it or unset it.`);
  }
  for (const attempt of [installed, playwrightsOwn, downloaded, debians]) {
    const path = await attempt();
    if (path) return path;
  }
  throw new Error("No browser for the browser tests: install Chromium or Chrome, or set CHROME_PATH to one.");
}

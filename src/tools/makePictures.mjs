/** Makes the README's pictures from the program itself: `node src/tools/makePictures.mjs`. */
import { mkdirSync } from "node:fs";
import { findBrowser } from "./browser.mjs";
import { ensureBuilt } from "./build.mjs";
import { at, ensurePackages, runTool } from "./run.mjs";

await ensurePackages();
await ensureBuilt();
mkdirSync(at("src", "tools", "pictures"), { recursive: true });
const env = { CHROME_PATH: await findBrowser() };
const args = ["test", "--config", "tests/browser/pictures/playwright.config.ts"];
const { code } = await runTool("@playwright/test/cli.js", args, { env });
process.exitCode = code;

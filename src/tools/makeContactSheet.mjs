/** Lays ten known fields beside what an observer notes of them, in `dist/contact`: `node src/tools/makeContactSheet.mjs`. */
import { findBrowser } from "./browser.mjs";
import { ensurePackages, runTool } from "./run.mjs";

await ensurePackages();
const env = { CHROME_PATH: await findBrowser() };
const args = ["test", "--config", "tests/browser/contact/playwright.config.ts"];
const { code } = await runTool("@playwright/test/cli.js", args, { env });
process.exitCode = code;

/** `npm run bench`: measurements, each beside a baseline of the same run. One at a time: leave the machine alone meanwhile. */
import { findBrowser } from "./browser.mjs";
import { ensureBuilt } from "./build.mjs";
import { ensurePackages, runTool } from "./run.mjs";

await ensurePackages();
await ensureBuilt();
const env = { CHROME_PATH: await findBrowser() };
const { code } = await runTool("@playwright/test/cli.js", ["test", "--config", "tests/bench/playwright.config.ts"], {
  env,
});
process.exitCode = code;

/** Timings in a real page: `npm run bench`. One at a time, on an otherwise idle machine. */
import { defineConfig } from "@playwright/test";
import browser from "../browser/playwright.config.ts";

const PORT = 4193;

export default defineConfig({
  ...browser,
  testDir: ".",
  testMatch: "*.bench.ts",
  outputDir: "../../dist/test/bench",
  workers: 1,
  fullyParallel: false,
  use: { ...browser.use, baseURL: `http://localhost:${PORT}`, contextOptions: { reducedMotion: "no-preference" } },
  webServer: {
    command: `node src/tools/servePage.mjs ${PORT}`,
    cwd: "../..",
    url: `http://localhost:${PORT}/`,
    reuseExistingServer: false,
  },
  reporter: [["line"]],
});

/** Timings in a real page: `npx playwright test -c tests/bench`. One at a time, on an otherwise idle machine. */
import { defineConfig } from "@playwright/test";
import browser from "../browser/playwright.config.ts";

export default defineConfig({
  ...browser,
  testDir: ".",
  testMatch: "*.bench.ts",
  outputDir: "../../dist/test/bench",
  workers: 1,
  fullyParallel: false,
  webServer: [],
  reporter: [["line"]],
});

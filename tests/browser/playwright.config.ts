import { defineConfig } from "@playwright/test";

/** Parts of the browser's own that no test sees: two of them start a process for each page, and all of them take time. */
const WITHOUT = [
  "WebUIOmniboxPopup",
  "WebUIOmniboxAimPopup",
  "AimEnabled",
  "MediaRouter",
  "NetworkTimeServiceQuerying",
  "OptimizationHints",
  "PaintHolding",
  "PreconnectToSearch",
  "Translate",
];

/** Software rendering everywhere, so that a picture is the same on every machine; no connection but to the page itself. */
const FLAGS = [
  "--no-sandbox",
  "--use-angle=swiftshader",
  "--enable-unsafe-swiftshader",
  // The page is put together by the processor, as where there is no graphics processor: the canvas alone goes through WebGL.
  "--disable-gpu-compositing",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--no-first-run",
  "--disable-quic",
  "--autoplay-policy=no-user-gesture-required",
  "--force-color-profile=srgb",
  `--disable-features=${WITHOUT.join(",")}`,
];

export default defineConfig({
  testDir: ".",
  outputDir: "../../dist/test/browser",
  timeout: 120_000,
  // One more than the processors of a small machine: a player waits more than it reckons.
  workers: 3,
  retries: 0,
  reporter: [["line"], ["json"]],
  use: {
    baseURL: "http://localhost:4190",
    viewport: { width: 1440, height: 900 },
    // The page speaks the browser's language.
    locale: "en-US",
    // Stars hold still, so that pictures of them can be read and compared. Specs of what moves ask for motion.
    contextOptions: { reducedMotion: "reduce" },
    launchOptions: { args: FLAGS, executablePath: process.env.CHROME_PATH ?? "/usr/bin/chromium" },
    trace: "off",
  },
  webServer: [
    {
      command: "node src/tools/servePage.mjs 4190",
      cwd: "../..",
      url: "http://localhost:4190/",
      reuseExistingServer: false,
    },
  ],
});

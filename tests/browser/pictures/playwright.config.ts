import config from "../playwright.config.ts";

const PORT = 4197;

/** Makes pictures instead of tests: `node src/tools/makePictures.mjs`. */
export default {
  ...config,
  testDir: ".",
  testMatch: "*.make.ts",
  reporter: "line",
  use: { ...config.use, baseURL: `http://localhost:${PORT}` },
  webServer: {
    command: `node src/tools/servePage.mjs ${PORT}`,
    cwd: "../../..",
    url: `http://localhost:${PORT}/`,
    reuseExistingServer: false,
  },
};

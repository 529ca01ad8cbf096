import config from "../playwright.config.ts";

/** Makes sheets instead of tests: `node src/tools/makeContactSheet.mjs`. */
export default { ...config, testDir: ".", testMatch: "*.make.ts", reporter: "line", timeout: 600_000, webServer: [] };

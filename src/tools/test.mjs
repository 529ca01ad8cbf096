/**
 * `npm test`: installs what is missing, then types, lint, dependencies, purity, unit and reference tests, build, browser
 * tests. Every part runs even where one before it failed; the last line counts.
 */
import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { at, ensurePackages, runTool } from "./run.mjs";

const RESULTS = at("dist", "test");

/** What a tool printed, without its colours. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: colours are control characters
const plain = (out) => out.replace(/\u001b\[[0-9;]*m/g, "");

const one = (ok, out) => ({ passed: ok ? 1 : 0, failed: ok ? 0 : 1, out });

const tool = (script, args) => async () => {
  const { code, out } = await runTool(script, args, { quiet: true });
  return one(code === 0, out);
};

const dependencies = async () => {
  const args = ["--config", ".dependency-cruiser.mjs", "--output-type", "json", "src"];
  const { code, out } = await runTool("dependency-cruiser/bin/dependency-cruise.mjs", args, { quiet: true });
  const start = out.indexOf("{");
  if (start < 0) return one(false, out);
  const { summary } = JSON.parse(out.slice(start));
  const faults = summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`);
  if (summary.totalCruised < 50) faults.push(`only ${summary.totalCruised} modules seen: the check is blind`);
  return one(code === 0 && faults.length === 0, faults.join("\n") || out.slice(0, start));
};

const purity = async () => {
  const { checkPurity } = await import("./checkPurity.mjs");
  const { files, deciding, faults } = checkPurity();
  if (files < 50 || deciding < 10)
    faults.push(`only ${files} files and ${deciding} deciding ones seen: the check is blind`);
  return one(faults.length === 0, faults.join("\n"));
};

/** What failed and how, briefly: told once more at the very end, where a long log is cut last. */
const MOST_TOLD = 900;
const brief = (title, message = "") =>
  `- ${title}\n  ${plain(message).trim().slice(0, MOST_TOLD).replaceAll("\n", "\n  ")}`;

const unitFailures = ({ testResults }) =>
  testResults.flatMap(({ name, message, assertionResults }) => {
    const failed = assertionResults.filter(({ status }) => status === "failed");
    if (failed.length === 0) return message ? [brief(name, message)] : [];
    return failed.map(({ fullName, failureMessages }) => brief(fullName, failureMessages[0]));
  });

const browserFailures = ({ suites = [], specs = [], errors = [] }) => [
  ...errors.map(({ message }) => brief("before any test", message)),
  ...specs
    .filter(({ ok }) => !ok)
    .map(({ title, file, tests }) => {
      const results = tests.flatMap((one) => one.results);
      return brief(`${file}: ${title}`, results.find(({ error }) => error)?.error.message);
    }),
  ...suites.flatMap(browserFailures),
];

const unit = async () => {
  const file = `${RESULTS}/unit.json`;
  const args = ["run", "--reporter=default", "--reporter=json", `--outputFile.json=${file}`];
  const { code, out } = await runTool("vitest/vitest.mjs", args, { quiet: true });
  const report = JSON.parse(readFileSync(file, "utf8"));
  const { numPassedTests, numFailedTests, numFailedTestSuites } = report;
  const failed = numFailedTests + (numFailedTests === 0 ? numFailedTestSuites : 0);
  return { passed: numPassedTests, failed: failed || (code === 0 ? 0 : 1), out, told: unitFailures(report) };
};

const build = async () => {
  const { ensureBuilt } = await import("./build.mjs");
  await ensureBuilt();
  return one(true, "");
};

const browser = async () => {
  const { findBrowser } = await import("./browser.mjs");
  const env = { CHROME_PATH: await findBrowser(), PLAYWRIGHT_JSON_OUTPUT_NAME: `${RESULTS}/browser.json` };
  const args = ["test", "--config", "tests/browser/playwright.config.ts"];
  const { code, out } = await runTool("@playwright/test/cli.js", args, { quiet: true, env });
  const report = JSON.parse(readFileSync(`${RESULTS}/browser.json`, "utf8"));
  const failed = report.stats.unexpected + report.stats.flaky;
  return { passed: report.stats.expected, failed: failed || (code === 0 ? 0 : 1), out, told: browserFailures(report) };
};

const PARTS = [
  ["types", tool("typescript/bin/tsc", ["-p", ".", "--noEmit"])],
  ["types of core", tool("typescript/bin/tsc", ["-p", "src/core", "--noEmit"])],
  [
    "lint",
    tool("@biomejs/biome/bin/biome", [
      "ci",
      "--config-path=.biome.json",
      "--diagnostic-level=warn",
      "--error-on-warnings",
    ]),
  ],
  ["dependencies", dependencies],
  ["purity", purity],
  ["sky files", tool("../src/tools/checkSky.mjs", [])],
  ["unit and reference", unit],
  ["build", build],
  ["browser", browser],
];

const attempt = async (part) => {
  try {
    return await part();
  } catch (error) {
    return one(false, `${error.message}\n`);
  }
};

await ensurePackages();
rmSync(RESULTS, { recursive: true, force: true });
mkdirSync(RESULTS, { recursive: true });
const only = process.argv.slice(2);
const total = { passed: 0, failed: 0 };
const faults = [];
for (const [name, part] of PARTS) {
  if (only.length > 0 && !only.includes(name)) continue;
  const startMs = Date.now();
  const { passed, failed, out, told = [] } = await attempt(part);
  if (failed > 0) console.log(plain(out));
  faults.push(...told);
  console.log(`${name}: ${passed} passed, ${failed} failed (${((Date.now() - startMs) / 1000).toFixed(1)} s)`);
  total.passed += passed;
  total.failed += failed;
}
if (faults.length > 0) console.log(`What failed:\n${faults.join("\n")}`);
console.log(`${total.passed} passed, ${total.failed} failed`);
process.exitCode = total.failed === 0 ? 0 : 1;

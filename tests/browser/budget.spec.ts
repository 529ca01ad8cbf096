/** What the page weighs before the first sky of a catalogue lesson: held in budget.json, which fails at one kB more. */
import { readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import { expect, test } from "@playwright/test";

const noted: { scriptBytes: number; allBytes: number } = JSON.parse(
  readFileSync(new URL("./budget.json", import.meta.url), "utf8"),
);
const MOST = { scriptBytes: 230_000, allBytes: 430_000 };
const SLACK_BYTES = 1000;

test("before the first sky: script, stars, names, type and style within their budget", async ({ page }) => {
  const sizes = new Map<string, number>();
  const reading: Promise<void>[] = [];
  let first = true;
  page.on("response", (response) => {
    if (!first) return;
    const name = new URL(response.url()).pathname;
    reading.push(
      response.body().then((body) => {
        // What is packed already travels as it is.
        const packed = /\.(woff2|png|jpg)$/.test(name);
        sizes.set(name, packed ? body.length : gzipSync(body, { level: 9 }).length);
      }),
    );
  });
  await page.goto("/#/lesson/3-03");
  // The field stands when its canvas is no longer hidden and the briefing can be begun.
  await page.getByRole("button", { name: "Begin" }).waitFor();
  await page.locator(".canvas-place:not(.is-empty) canvas").waitFor();
  first = false;
  await Promise.all(reading);
  const sum = (wanted: RegExp) =>
    [...sizes].reduce((total, [name, bytes]) => total + (wanted.test(name) ? bytes : 0), 0);
  // Deeper tiles stream behind the first sky, whose stars are the bright layer's.
  const scriptBytes = sum(/\.js$/);
  const allBytes = sum(/./) - sum(/stars-[12]-/);
  const list = [...sizes].sort((a, b) => b[1] - a[1]).map(([name, bytes]) => `${name} ${bytes}`);
  console.log(`script ${scriptBytes}, all ${allBytes}\n${list.slice(0, 16).join("\n")}`);
  expect(scriptBytes).toBeLessThanOrEqual(Math.min(MOST.scriptBytes, noted.scriptBytes + SLACK_BYTES));
  expect(allBytes).toBeLessThanOrEqual(Math.min(MOST.allBytes, noted.allBytes + SLACK_BYTES));
});

/** What comes over the network before the first sky of a catalogue lesson, on a fresh profile; packed as a server would. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { expect, type Page, test } from "@playwright/test";
import { findStars } from "./play/blobs.ts";
import { picture } from "./play/looks.ts";

interface Sizes {
  readonly scriptBytes: number;
  readonly allBytes: number;
}
const noted = JSON.parse(readFileSync(fileURLToPath(new URL("budget.json", import.meta.url)), "utf8")) as Sizes;
/** Never more than this, whatever is noted. */
const CAPS: Sizes = { scriptBytes: 230_000, allBytes: 430_000 };
const GROWTH_BYTES = 1000;

interface Fetched {
  readonly name: string;
  readonly isScript: boolean;
  readonly packedBytes: number;
}

/** Addresses that had been asked for when the field was first painted. */
async function askedBeforeSky(page: Page): Promise<string[]> {
  await page.addInitScript(() => {
    const seen = new MutationObserver(() => {
      if (!document.querySelector(".canvas-place:not(.is-empty)")) return;
      performance.mark("sky");
      seen.disconnect();
    });
    seen.observe(document, { subtree: true, childList: true, attributes: true, attributeFilter: ["class"] });
  });
  await page.goto("/#/lesson/3-03");
  await page.waitForFunction(() => performance.getEntriesByName("sky").length > 0);
  return page.evaluate(() => {
    const skyMs = performance.getEntriesByName("sky")[0]!.startTime;
    const asked = performance.getEntriesByType("resource").filter(({ startTime }) => startTime <= skyMs);
    return [location.origin + location.pathname, ...asked.map(({ name }) => name)];
  });
}

test("script and everything together stay within what is noted", async ({ page }) => {
  const bodies = new Map<string, Promise<Buffer>>();
  page.on("response", (response) => {
    const body = response.body();
    // What comes after the sky is nobody's concern, and may be cut off by the end of the test.
    body.catch(() => undefined);
    bodies.set(response.url(), body);
  });
  const asked = new Set(await askedBeforeSky(page));
  const fetched: Fetched[] = [];
  for (const url of asked) {
    const body = await bodies.get(url);
    if (!body) throw new Error(`no answer was seen for ${url}`);
    fetched.push({ name: new URL(url).pathname, isScript: url.endsWith(".js"), packedBytes: gzipSync(body).length });
  }
  expect(findStars(await picture(page), 1).length, "stars in the first picture").toBeGreaterThan(50);
  const sum = (files: readonly Fetched[]) => files.reduce((total, { packedBytes }) => total + packedBytes, 0);
  const sizes: Sizes = { scriptBytes: sum(fetched.filter(({ isScript }) => isScript)), allBytes: sum(fetched) };
  const largest = fetched.sort((a, b) => b.packedBytes - a.packedBytes);
  const told = largest.map(({ name, packedBytes }) => `${packedBytes} ${name}`).join("\n");
  for (const what of ["scriptBytes", "allBytes"] as const) {
    expect(sizes[what], `${what}, of\n${told}\n`).toBeLessThan(noted[what] + GROWTH_BYTES);
    expect(sizes[what], `${what}, of\n${told}\n`).toBeLessThanOrEqual(CAPS[what]);
  }
});

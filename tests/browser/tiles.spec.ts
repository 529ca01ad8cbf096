/** Star tiles come in beside the page; one that is damaged is told, and the rest works. */
import { expect, type Page } from "@playwright/test";
import { keep, keptAttempts, SCREENS } from "./access/screens.ts";
import { findStars } from "./play/blobs.ts";
import { fieldBox } from "./play/hands.ts";
import { readPng } from "./play/png.ts";
import { test } from "./play/watch.ts";

test.describe.configure({ mode: "parallel" });

/** The first four bytes of a tile file, as a number; whoever opens one reads them first. */
const MAGIC_AT = 0;
const BRIGHT_LAYER = "stars-0.bin";
const LEAST_STARS = 20;

interface Seen {
  /** Lengths of the tile files that the page's own thread began to read. */
  readonly readHereBytes: number[];
  /** Tile files handed to a worker, and what was left of their bytes here. */
  readonly handedOver: { readonly name: string; readonly leftBytes: number }[];
}
declare global {
  interface Window {
    tileSpy: Seen;
  }
}

/** Notes on the page's thread, and only there, for a worker has globals of its own. */
async function spyOnTiles(page: Page): Promise<void> {
  await page.addInitScript((magicAt) => {
    const seen: Seen = { readHereBytes: [], handedOver: [] };
    window.tileSpy = seen;
    const { getUint32 } = DataView.prototype;
    DataView.prototype.getUint32 = function (at, little) {
      if (at === magicAt) seen.readHereBytes.push(this.byteLength);
      return getUint32.call(this, at, little);
    };
    type Post = (message: unknown, transfer: Transferable[]) => void;
    const post = Worker.prototype.postMessage as Post;
    Worker.prototype.postMessage = function (this: Worker, message: unknown, transfer: Transferable[] = []) {
      post.call(this, message, transfer);
      const { method, input } = message as { method?: string; input?: { name: string; bytes: Uint8Array } };
      if (method === "decodeTileFile" && input)
        seen.handedOver.push({ name: input.name, leftBytes: input.bytes.byteLength });
    } as typeof Worker.prototype.postMessage;
  }, MAGIC_AT);
}

/** Names and lengths of the tile files that came. */
function tileFilesOf(page: Page): Map<string, number> {
  const came = new Map<string, number>();
  page.on("response", async (response) => {
    const name = /\/sky\/(stars-.*\.bin)/.exec(response.url())?.[1];
    if (name) came.set(name, (await response.body()).length);
  });
  return came;
}

async function starsInField(page: Page): Promise<number> {
  const { middle, radiusPx } = await fieldBox(page);
  const clip = { x: middle.x - radiusPx, y: middle.y - radiusPx, width: 2 * radiusPx, height: 2 * radiusPx };
  return findStars(readPng(await page.screenshot({ clip })), 1).length;
}

test("only the bright layer is decoded on the page's own thread; the rest is handed to the worker whole", async ({
  page,
}) => {
  await keep(page, await keptAttempts());
  const came = tileFilesOf(page);
  await spyOnTiles(page);
  await SCREENS.finder(page);
  expect(await starsInField(page)).toBeGreaterThanOrEqual(LEAST_STARS);
  const { readHereBytes, handedOver } = await page.evaluate(() => window.tileSpy);
  const deeper = [...came.keys()].filter((name) => name !== BRIGHT_LAYER).sort();
  expect(deeper.length).toBeGreaterThan(0);
  expect(handedOver.map(({ name }) => name).sort()).toEqual(deeper);
  for (const { name, leftBytes } of handedOver) expect(leftBytes, name).toBe(0);
  expect(readHereBytes).toContain(came.get(BRIGHT_LAYER));
  for (const name of deeper) expect(readHereBytes, name).not.toContain(came.get(name));
});

test("a damaged tile is told by name, the rest of the sky is there, and another try brings it", async ({ page }) => {
  await keep(page, await keptAttempts());
  let damaged = "";
  await page.route(/\/sky\/stars-1-.*\.bin/, async (route) => {
    const response = await route.fetch();
    const body = await response.body();
    damaged ||= /stars-1-[0-9]+\.bin/.exec(route.request().url())![0];
    if (route.request().url().endsWith(damaged)) body[body.length >> 1]! ^= 1;
    await route.fulfill({ response, body });
  });
  await SCREENS.finder(page);
  const alert = page.getByRole("alert").filter({ hasText: "did not come" });
  await expect(alert).toContainText(damaged);
  await expect(alert).toContainText("checksum");
  expect(await starsInField(page)).toBeGreaterThan(0);
  await page.keyboard.press("w");
  await expect(page.locator("main.play")).not.toContainText("Push the tube up");
  await page.unroute(/\/sky\/stars-1-.*\.bin/);
  await alert.getByRole("button", { name: "Try again" }).click();
  await expect(alert).toHaveCount(0);
});

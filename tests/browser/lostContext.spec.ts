/** The graphics processor goes and comes back: the picture is the same, and the attempt goes on. */
import { expect, type Page } from "@playwright/test";
import { keep, keptAttempts, SCREENS } from "./access/screens.ts";
import { nodeModule } from "./nodeModule.ts";
import { findStars } from "./play/blobs.ts";
import { picture } from "./play/looks.ts";
import type { Pixels } from "./play/png.ts";
import { test } from "./play/watch.ts";
import { readBase } from "./store/idb.ts";
import type * as Left from "./store/leftAttempt.ts";

test.describe.configure({ mode: "parallel" });

const TIMES = 10;
/** A field of the finder shows so many stars at least that stand well above the limit. */
const LEAST_STARS = 20;
const BRIGHT_MAG = 1;
const WINDOW_STAR_PX = 1;
/** What is read late is there within so long. */
const STILL_MS = 700;
const MOST_LOOKS = 20;

/** The picture once it stays as it is: an instrument is there at once, but its stars may have to be read. */
async function stillPicture(page: Page): Promise<Pixels> {
  let before = await picture(page);
  for (let i = 0; i < MOST_LOOKS; i++) {
    await page.waitForTimeout(STILL_MS);
    const after = await picture(page);
    if (difference(before, after) <= 1) return after;
    before = after;
  }
  throw new Error("the picture does not come to rest");
}

const brightStars = (pixels: Pixels): number =>
  findStars(pixels, WINDOW_STAR_PX).filter(({ overLimitMag }) => overLimitMag > BRIGHT_MAG).length;

/** The greatest difference of any channel of any pixel. */
function difference(a: Pixels, b: Pixels): number {
  expect([b.width, b.height]).toEqual([a.width, a.height]);
  return a.bytes.reduce((most, value, i) => Math.max(most, Math.abs(value - b.bytes[i]!)), 0);
}

/** Takes the context away; it comes back when `giveBack` is called. */
async function takeAway(page: Page): Promise<{ giveBack: () => Promise<void> }> {
  const lost = await page.locator(".canvas-place canvas").evaluateHandle(async (canvas: HTMLCanvasElement) => {
    const context = canvas.getContext("webgl2")!;
    const extension = context.getExtension("WEBGL_lose_context")!;
    const gone = new Promise((resolve) => canvas.addEventListener("webglcontextlost", resolve, { once: true }));
    extension.loseContext();
    await gone;
    return { canvas, extension, context };
  });
  expect(await lost.evaluate(({ context }) => context.isContextLost())).toBe(true);
  const giveBack = () =>
    lost.evaluate(async ({ canvas, extension, context }) => {
      const back = new Promise((resolve) => canvas.addEventListener("webglcontextrestored", resolve, { once: true }));
      extension.restoreContext();
      await back;
      if (context.isContextLost()) throw new Error("the context is still lost");
    });
  return { giveBack };
}

const recordText = async (page: Page): Promise<string> => (await readBase(page)).running[0]!.recordText;

async function push(page: Page, key: string): Promise<void> {
  await page.keyboard.down(key);
  await page.waitForTimeout(300);
  await page.keyboard.up(key);
  // The tube comes to rest.
  await page.waitForTimeout(1200);
}

test("ten times lost and back: the same picture, the same attempt", async ({ page }) => {
  const { told } = await nodeModule<typeof Left>("tests/browser/store/leftAttempt.ts");
  await keep(page, await keptAttempts());
  await SCREENS.finder(page);
  await push(page, "ArrowUp");
  await page.keyboard.press("n");
  await page.keyboard.press("w");
  const before = await stillPicture(page);
  const recordBefore = told(await recordText(page));
  expect(brightStars(before)).toBeGreaterThanOrEqual(LEAST_STARS);

  for (let i = 0; i < TIMES; i++) {
    const { giveBack } = await takeAway(page);
    await giveBack();
  }
  await page.waitForTimeout(300);
  const after = await picture(page);
  expect(brightStars(after)).toBeGreaterThanOrEqual(LEAST_STARS);
  expect(difference(before, after)).toBeLessThanOrEqual(1);

  await push(page, "ArrowRight");
  expect(difference(after, await picture(page))).toBeGreaterThan(40);
  await page.keyboard.press("n");
  await page.keyboard.press("w");
  await expect
    .poll(async () => told(await recordText(page)).trail.length, { timeout: 10_000 })
    .toBeGreaterThan(recordBefore.trail.length);
  const { events, trail } = told(await recordText(page));
  expect(events.slice(0, recordBefore.events.length)).toEqual(recordBefore.events);
  expect(trail.slice(0, recordBefore.trail.length)).toEqual(recordBefore.trail);
  expect(events.length).toBeGreaterThan(recordBefore.events.length);
});

test("what is pushed while the context is away is in the picture when it is back", async ({ page }) => {
  await keep(page, await keptAttempts());
  await SCREENS.finder(page);
  const before = await picture(page);
  const { giveBack } = await takeAway(page);
  await push(page, "ArrowLeft");
  await giveBack();
  await page.waitForTimeout(300);
  const back = await picture(page);
  expect(brightStars(back)).toBeGreaterThanOrEqual(LEAST_STARS);
  expect(difference(before, back)).toBeGreaterThan(40);
  // Drawn anew for a reason of its own, the picture is the same: nothing of it was left over from before.
  await page.keyboard.press("n");
  await page.keyboard.press("w");
  expect(difference(back, await stillPicture(page))).toBeLessThanOrEqual(1);
});

test("each instrument's picture comes back: sight and eye with the ground below, the eyepiece", async ({ page }) => {
  await keep(page, await keptAttempts());
  await SCREENS.finder(page);
  for (const key of ["w", "w", "n", "n", "n"]) {
    await page.keyboard.press(key);
    const before = await stillPicture(page);
    const { giveBack } = await takeAway(page);
    await giveBack();
    await page.waitForTimeout(300);
    const after = await picture(page);
    expect(findStars(after, WINDOW_STAR_PX).length).toBeGreaterThanOrEqual(LEAST_STARS);
    expect(difference(before, after)).toBeLessThanOrEqual(1);
  }
});

/** The page at 200 % and for those who want no motion. */
import { expect, type Locator, type Page } from "@playwright/test";
import { cutOff } from "./access/cutOff.ts";
import { keep, keptAttempts, SCREENS, type ScreenName } from "./access/screens.ts";
import { test } from "./play/watch.ts";

test.describe.configure({ mode: "parallel" });

/** The picture of a new instrument is there so soon where nothing moves, ms. */
const AT_ONCE_MS = 100;

/** Brings something into the window as a reader would, and has it wholly there. */
async function isReached(one: Locator): Promise<void> {
  await one.scrollIntoViewIfNeeded();
  await expect(one).toBeInViewport({ ratio: 0.99 });
}

test.describe("at 200 %", () => {
  test.use({ viewport: { width: 720, height: 450 }, deviceScaleFactor: 2 });

  test("nothing of any screen is cut off at a side", async ({ page }) => {
    await keep(page, await keptAttempts());
    const found: Record<string, string[]> = {};
    for (const name of Object.keys(SCREENS) as ScreenName[]) {
      await SCREENS[name](page);
      expect(await page.evaluate(() => document.documentElement.scrollWidth), name).toBeLessThanOrEqual(720);
      const cut = await cutOff(page);
      if (cut.length > 0) found[name] = cut;
    }
    expect(found).toEqual({});
  });

  test("headline, claim, instruments, help and sheet can be reached", async ({ page }) => {
    await keep(page, await keptAttempts());
    await SCREENS.finder(page);
    await isReached(page.locator(".headline"));
    await isReached(page.locator(".now"));
    await isReached(page.locator(".arc-button.claim .arc-face"));
    for (const name of [/^Naked eye/, /^Reflex sight/, /^Finder/, /^Eyepiece/])
      await isReached(page.getByRole("button", { name }));
    // The change of instrument asks for a pin, and the sheet is laid out for it.
    await page.getByRole("button", { name: /^Eyepiece/ }).focus();
    await page.keyboard.press("Enter");
    await expect(page.locator(".sheet-paper")).toBeFocused();
    await isReached(page.locator(".sheet-asks"));
    await page.getByRole("button", { name: "Not now" }).click();
    await expect(page.locator("#field")).toBeFocused();
    await expect(page.getByRole("button", { name: /^Eyepiece/ })).toHaveAttribute("aria-pressed", "true");
    await page.getByRole("button", { name: "Hint", exact: true }).click();
    await isReached(page.getByRole("button", { name: /Back to the anchor/ }));
    await isReached(page.getByRole("button", { name: /lamp/i }));
    expect(await cutOff(page)).toEqual([]);
    await page.getByRole("button", { name: "Sheet", exact: true }).click();
    await expect(page.locator(".sheet-paper")).toBeFocused();
    await expect(page.locator(".sheet-paper")).toBeInViewport({ ratio: 0.6 });
    await isReached(page.getByRole("button", { name: "Flip" }));
    await isReached(page.getByRole("button", { name: "Pin" }));
    expect(await cutOff(page)).toEqual([]);
    await page.getByRole("button", { name: "Words", exact: true }).click();
    await isReached(page.locator(".headline"));
  });
});

/** Motions of the page that take time, after something was done: those of the style sheet and those of scripts. */
const motionsAfter = (page: Page, key: string): Promise<number> =>
  page.evaluate(async (pressed) => {
    let most = 0;
    const look = () => {
      for (const animation of document.getAnimations())
        most = Math.max(most, Number(animation.effect?.getComputedTiming().duration ?? 0));
    };
    dispatchEvent(new KeyboardEvent("keydown", { key: pressed, bubbles: true, cancelable: true }));
    for (let i = 0; i < 12; i++) {
      await new Promise((resolve) => requestAnimationFrame(resolve));
      look();
    }
    return most;
  }, key);

/** Light of each picture of the field that is drawn for a while after a key: when, ms, and how much. */
const drawnAfter = (page: Page, key: string, forMs: number): Promise<{ ms: number; light: number }[]> =>
  page.evaluate(
    async ({ pressed, whileMs }) => {
      const field = document.querySelector<HTMLCanvasElement>(".canvas-place canvas")!;
      const small = new OffscreenCanvas(64, 64);
      const context = small.getContext("2d", { willReadFrequently: true })!;
      const drawn: { ms: number; light: number }[] = [];
      const startMs = performance.now();
      dispatchEvent(new KeyboardEvent("keydown", { key: pressed, bubbles: true, cancelable: true }));
      while (performance.now() - startMs < whileMs) {
        // Asked for after the page's own frame, read before it is given away.
        await new Promise((resolve) => requestAnimationFrame(resolve));
        context.clearRect(0, 0, 64, 64);
        context.drawImage(field, 0, 0, 64, 64);
        const light = context
          .getImageData(16, 16, 32, 32)
          .data.reduce((sum, value, i) => sum + (i % 4 < 3 ? value : 0), 0);
        if (light > 0) drawn.push({ ms: performance.now() - startMs, light });
      }
      return drawn;
    },
    { pressed: key, whileMs: forMs },
  );

test("by default a flip turns and a new instrument comes up", async ({ page }) => {
  await page.emulateMedia({ reducedMotion: "no-preference" });
  await keep(page, await keptAttempts());
  await SCREENS.finder(page);
  await page.locator(".sheet-paper").waitFor();
  expect(await motionsAfter(page, "f")).toBeGreaterThan(100);
  await page.waitForTimeout(600);
  const lights = (await drawnAfter(page, "n", 1200)).map(({ light }) => light);
  expect(Math.min(...lights)).toBeLessThan(0.8 * lights.at(-1)!);
});

test("with reduced motion nothing takes time, and a new instrument is there at once", async ({ page }) => {
  await keep(page, await keptAttempts());
  await SCREENS.finder(page);
  await page.locator(".sheet-paper").waitFor();
  for (const key of ["f", ".", "n", "w"]) expect(await motionsAfter(page, key), key).toBe(0);
  const firstMs: number[] = [];
  for (const key of ["n", "w", "n", "w"]) {
    await page.waitForTimeout(500);
    const drawn = await drawnAfter(page, key, 700);
    expect(drawn.length, key).toBeGreaterThan(0);
    firstMs.push(drawn[0]!.ms);
    for (const { light } of drawn) expect(light / drawn.at(-1)!.light).toBeCloseTo(1, 1);
  }
  // The best of several: other work on the machine is no cost of the page.
  expect(Math.min(...firstMs)).toBeLessThan(AT_ONCE_MS);
});

test("the caution of the first briefing is wholly in sight, without scrolling, in any usual window", async ({
  page,
}) => {
  for (const [width, height] of [
    [1440, 900],
    [1280, 720],
    [1024, 768],
    [768, 1024],
    [390, 844],
  ] as const) {
    await page.setViewportSize({ width, height });
    await SCREENS.briefing(page);
    const caution = await page.locator(".caution").boundingBox();
    const words = await page.locator(".words").boundingBox();
    expect(caution && words && caution.y + caution.height, `${width} x ${height}`).toBeLessThanOrEqual(
      Math.min(words!.y + words!.height, height) + 0.5,
    );
  }
});

/** Stars twinkle on the page, and hold still where the reader or their machine wants it; then a tube at a stand draws nothing. */
import { expect, type Page } from "@playwright/test";
import { fieldBox, waitInPage } from "./play/hands.ts";
import { test } from "./play/watch.ts";

test.use({ contextOptions: { reducedMotion: "no-preference" } });

/** Whether two pictures of the field a moment apart are the same. */
async function holdsStill(page: Page): Promise<boolean> {
  const { middle, radiusPx } = await fieldBox(page);
  const half = radiusPx / 2;
  const clip = { x: middle.x - half, y: middle.y - half, width: radiusPx, height: radiusPx };
  const before = await page.screenshot({ clip });
  await waitInPage(page, 400);
  return before.equals(await page.screenshot({ clip }));
}

test("stars twinkle, until the reader holds them still or motion is reduced", async ({ page }) => {
  await page.goto("/#/lesson/3-03");
  await page.getByRole("button", { name: "Begin" }).click();
  await page.locator(".canvas-place:not(.is-empty) canvas").waitFor();
  await page.getByRole("button", { name: "More help" }).click();
  await expect.poll(() => holdsStill(page)).toBe(false);
  await page.getByRole("button", { name: /^Hold the stars still/ }).click();
  await expect.poll(() => holdsStill(page)).toBe(true);

  const letGo = page.getByRole("button", { name: /^Let the stars twinkle/ });
  await letGo.click();
  await page.emulateMedia({ reducedMotion: "reduce" });
  await expect.poll(() => holdsStill(page)).toBe(true);
  await expect(letGo).toHaveCount(0);
  await expect(page.getByRole("button", { name: /^Hold the stars still/ })).toHaveCount(0);
});

/** Draws of the sky from now on, counted in the page. */
const countDraws = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const counted = window as unknown as { draws: number };
    counted.draws = 0;
    const proto = WebGL2RenderingContext.prototype;
    const draw = proto.drawElements;
    proto.drawElements = function (...how) {
      counted.draws++;
      return draw.apply(this, how);
    };
  });
const draws = (page: Page): Promise<number> => page.evaluate(() => (window as unknown as { draws: number }).draws);

test("a held arrow draws frames; a tube that stands draws none", async ({ page }) => {
  await page.emulateMedia({ reducedMotion: "reduce" });
  await page.goto("/#/lesson/3-03");
  await page.getByRole("button", { name: "Begin" }).click();
  await page.locator(".canvas-place:not(.is-empty) canvas").waitFor();
  await waitInPage(page, 1500);
  await countDraws(page);
  await page.keyboard.down("ArrowRight");
  await waitInPage(page, 500);
  await page.keyboard.up("ArrowRight");
  expect(await draws(page)).toBeGreaterThan(0);
  // The hand's mark goes after 0.7 s.
  await waitInPage(page, 1200);
  const atStand = await draws(page);
  await waitInPage(page, 1000);
  expect(await draws(page)).toBe(atStand);
});

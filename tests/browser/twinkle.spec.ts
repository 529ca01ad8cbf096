/** Stars twinkle on the page, and hold still where the reader or their machine wants it. */
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

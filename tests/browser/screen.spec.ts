/** The reader's screen: two steps by mouse, keys and touch, kept over a reload, and what the picture makes of them. */
import { expect, type Page } from "@playwright/test";
import { picture } from "./play/looks.ts";
import { test } from "./play/watch.ts";
import { readSetting } from "./store/idb.ts";

const open = async (page: Page) => {
  await page.goto("/#/screen");
  await page.getByRole("heading", { name: "Your screen" }).waitFor();
};
const dot = (page: Page, place: number) => page.getByRole("radio", { name: `Dot ${place} of 8` });

test("a dot and a card are told by the mouse and by keys, kept over a reload, and undone", async ({ page }) => {
  await open(page);
  await expect(page.getByText("Not told: stars are drawn")).toBeVisible();
  await page.locator(".screen-dots label").nth(4).click();
  await expect(page.getByText(/This screen hides the faintest \d\.\d magnitudes/)).toBeVisible();
  await dot(page, 4).focus();
  await page.keyboard.press("Space");
  await expect(page.getByText("shows on this screen as it is drawn")).toBeVisible();
  const slider = page.getByRole("slider", { name: "Width of the card" });
  await slider.fill("342");
  await slider.press("ArrowRight");
  await expect(page.getByText(/The round field in a hop looks \d+ degrees/)).toBeVisible();
  await expect.poll(() => readSetting(page, "screenFit")).toMatchObject({ cardPx: 343 });
  await page.reload();
  await expect(dot(page, 4)).toBeChecked();
  await expect(slider).toHaveValue("343");
  await page.getByRole("button", { name: "As it was" }).click();
  await expect(page.getByText("Not told: stars are drawn")).toBeVisible();
  await expect(dot(page, 4)).not.toBeChecked();
});

/** Pixels of the field that stand out from its sky, in a hop that is begun or under way. */
async function litIn(page: Page, isBegun: boolean): Promise<number> {
  await page.goto("/#/lesson/3-03");
  if (!isBegun) await page.getByRole("button", { name: "Begin" }).click();
  await page.locator(".canvas-place:not(.is-empty) canvas").waitFor();
  await page.waitForTimeout(1500);
  const { bytes, channels } = await picture(page);
  let lit = 0;
  for (let i = 1; i < bytes.length; i += channels) lit += Number(bytes[i]! > 110);
  return lit;
}

test("in a hop the faintest stars are lifted to what shows, and what stays hidden is said", async ({ page }) => {
  const asDrawn = await litIn(page, false);
  await open(page);
  await page.locator(".screen-dots label").nth(4).click();
  const said = /This screen hides the faintest \d\.\d magnitudes/;
  await expect(page.getByText(said)).toBeVisible();
  expect(await litIn(page, true)).toBeGreaterThan(1.15 * asDrawn);
  await page.getByRole("button", { name: "More help" }).click();
  await expect(page.getByText(said)).toBeVisible();
});

test.describe("on a phone", () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });
  test("a tap tells the dot", async ({ page }) => {
    await open(page);
    await page.locator(".screen-dots label").nth(5).tap();
    await expect(dot(page, 6)).toBeChecked();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  });
});

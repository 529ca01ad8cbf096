/** The reader's screen: two steps by mouse, keys and touch, kept over a reload, and what the picture makes of them. */
import { expect, type Page } from "@playwright/test";
import { test } from "./play/watch.ts";

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
  await page.reload();
  await expect(dot(page, 4)).toBeChecked();
  await expect(slider).toHaveValue("343");
  await page.getByRole("button", { name: "As it was" }).click();
  await expect(page.getByText("Not told: stars are drawn")).toBeVisible();
  await expect(dot(page, 4)).not.toBeChecked();
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

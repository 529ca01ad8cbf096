/** Grain: it comes with the eyepiece, is said to be invented, and goes at one switch, for good. */
import { expect, type Page } from "@playwright/test";
import { test } from "./play/watch.ts";

const said = (page: Page) => page.getByText("Finest grain: invented");

test("only the eyepiece has it, the page says so, and one switch leaves it out, also after a fresh start", async ({
  page,
}) => {
  await page.goto("/#/lesson/3-03");
  await page.getByRole("button", { name: "Begin" }).click();
  await page.locator(".canvas-place:not(.is-empty) canvas").waitFor();
  await expect(said(page)).toHaveCount(0);
  for (let i = 0; i < 3; i++) await page.keyboard.press("n");
  await expect(said(page)).toBeVisible();
  await page.getByRole("button", { name: "More help" }).click();
  await page.getByRole("button", { name: /^Leave out the invented grain/ }).click();
  await expect(said(page)).toHaveCount(0);
  await page.reload();
  await page.locator(".canvas-place:not(.is-empty) canvas").waitFor();
  for (let i = 0; i < 3; i++) await page.keyboard.press("n");
  await page.getByRole("button", { name: "More help" }).click();
  await page.getByRole("button", { name: /^Show grain/ }).click();
  await expect(said(page)).toBeVisible();
});

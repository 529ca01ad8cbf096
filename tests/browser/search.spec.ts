/** The search by name: in the start page and over a hop, by keys and by mouse; it tells and rings, and moves nothing. */
import { expect, type Page } from "@playwright/test";
import { axeFaults } from "./access/axe.ts";
import { keep, keptAttempts, LAMPS, lightLamp, SCREENS } from "./access/screens.ts";
import { test } from "./play/watch.ts";

const box = (page: Page) => page.getByRole("combobox", { name: /^Name of a star/ });
const chosen = (page: Page) => page.getByRole("search").getByRole("article");

test("from the start page by mouse: what it is and where, in either sky", async ({ page }) => {
  await SCREENS.start(page);
  const row = page.getByRole("button", { name: /^Find by name/ });
  await row.click();
  await expect(box(page)).toBeFocused();
  await box(page).fill("ring nebula");
  await page.getByRole("option").first().click();
  await expect(chosen(page)).toContainText("planetary nebula in Lyra");
  await box(page).fill("orlo");
  await page.getByRole("option").first().click();
  await expect(chosen(page)).toContainText("practice sky sallow");
  await box(page).fill("saturn");
  await page.getByRole("option").first().click();
  await expect(chosen(page)).toContainText("wanderer in");
  await page.getByRole("search").getByRole("button", { name: "Back" }).click();
  await expect(page.getByRole("search")).toHaveCount(0);
  await expect(row).toBeFocused();
});

test("over a hop by keys: letters are letters, the sheet has a ring, the tube stays where it was", async ({ page }) => {
  await keep(page, await keptAttempts());
  await SCREENS.finder(page);
  await page.locator("#field").focus();
  const heard = () => page.locator("#field").getAttribute("aria-label");
  const before = await heard();
  await page.keyboard.press("/");
  await expect(box(page)).toBeFocused();
  // With K, R, N and W in it, which mean something outside.
  await page.keyboard.type("krnw");
  await expect(page.getByRole("status").filter({ hasText: "Nothing bears that name." })).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(box(page)).toHaveValue("");
  await page.keyboard.type("gamma sge");
  await expect(page.getByRole("option").first()).toHaveAttribute("aria-selected", "true");
  await page.keyboard.press("Enter");
  await expect(chosen(page)).toContainText("star in Sagitta");
  await expect(chosen(page)).toContainText("A ring on the sheet is about it.");
  await page.keyboard.press("Escape");
  await expect(page.getByRole("search")).toHaveCount(0);
  await expect(page.locator("#field")).toBeFocused();
  await expect(page.getByRole("heading", { name: "Keys" })).toHaveCount(0);
  expect(await heard()).toBe(before);
});

test("arrows walk through what was found, and round", async ({ page }) => {
  await SCREENS.start(page);
  await page.keyboard.press("/");
  await box(page).fill("alpha");
  const options = page.getByRole("option");
  await expect(options).toHaveCount(8);
  await page.keyboard.press("ArrowDown");
  await expect(options.nth(1)).toHaveAttribute("aria-selected", "true");
  expect(await box(page).getAttribute("aria-activedescendant")).toBe(await options.nth(1).getAttribute("id"));
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("ArrowUp");
  await expect(options.nth(7)).toHaveAttribute("aria-selected", "true");
});

for (const lamp of LAMPS)
  test(`${lamp} lamp: its tree is sound, open and with something chosen`, async ({ page }) => {
    await SCREENS.start(page);
    await lightLamp(page, lamp);
    await page.keyboard.press("/");
    await box(page).fill("m3");
    expect(await axeFaults(page, lamp === "normal")).toEqual([]);
    await page.keyboard.press("Enter");
    await expect(chosen(page)).toContainText("globular cluster");
    expect(await axeFaults(page, lamp === "normal")).toEqual([]);
  });

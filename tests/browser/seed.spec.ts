/** The start page's own hops: the sky of the day by its row, free practice by a word that is typed; both come when asked for. */
import { expect } from "@playwright/test";
import { dailyId, seedTitle } from "../../src/desk/seed/seedIds.ts";
import { test } from "./play/watch.ts";

test("the daily sky's row opens the hop of this day, which stands at its address", async ({ page }) => {
  await page.goto("/#/");
  await page.getByRole("button", { name: /^The daily sky/ }).click();
  const id = dailyId(Date.now());
  await expect(page).toHaveURL(new RegExp(`#/lesson/${id}$`));
  await expect(page.getByRole("heading", { level: 1, name: seedTitle(id) })).toBeVisible();
  await page.getByRole("button", { name: "Begin" }).click();
  await expect(page.locator("main.play")).toContainText("Find ");
  await page.getByRole("link", { name: "Back to the start page" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Faintward" })).toBeVisible();
});

test("free practice takes a word as it is typed, and no other", async ({ page }) => {
  await page.goto("/#/");
  await page.getByRole("button", { name: /^Free practice/ }).click();
  const word = page.getByRole("textbox", { name: "A word for the sky" });
  await expect(word).toHaveValue(/^[a-z]+-[a-z]+$/);
  await word.fill("no, not this");
  await expect(page.getByRole("button", { name: "Hop here" })).toBeDisabled();
  await word.fill("Peat Lane");
  await page.keyboard.press("Enter");
  await expect(page).toHaveURL(/#\/lesson\/free-peat-lane$/);
  await expect(page.getByRole("heading", { level: 1, name: "Free practice: peat-lane" })).toBeVisible();
});

test("the sky over a free hop is chosen by a slider, told in words, kept, and goes with the address", async ({
  page,
}) => {
  await page.goto("/#/");
  await page.getByRole("button", { name: /^Free practice/ }).click();
  const slider = page.getByRole("slider", { name: "The sky over it" });
  const reach = page.locator(".sky-reach");
  await expect(slider).toHaveAttribute("aria-valuetext", "at the edge of a village");
  const faintest = async () => Number(/magnitude ([\d.]+)/.exec((await reach.textContent())!)?.[1]);
  const inVillage = await faintest();
  await slider.focus();
  await page.keyboard.press("Home");
  await expect(slider).toHaveAttribute("aria-valuetext", "in the city");
  expect(await faintest()).toBeLessThan(inVillage - 0.8);
  await page.getByRole("textbox", { name: "A word for the sky" }).fill("peat lane");
  await page.keyboard.press("Enter");
  await expect(page).toHaveURL(/#\/lesson\/free180-peat-lane$/);
  await page.getByRole("button", { name: "Begin" }).click();
  await expect(page.locator("main.play")).toContainText("Clear, in the city");
  await page.goto("/#/");
  await page.getByRole("button", { name: /^Free practice/ }).click();
  await expect(slider).toHaveAttribute("aria-valuetext", "in the city");
});

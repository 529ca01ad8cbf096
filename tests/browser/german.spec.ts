/** The page for who asks for German: by the browser's language, or by the switch on the start page. */
import { expect, type Page } from "@playwright/test";
import { axeFaults } from "./access/axe.ts";
import { cutOff } from "./access/cutOff.ts";
import { keep, keptAttempts } from "./access/screens.ts";
import { test } from "./play/watch.ts";

test.use({ locale: "de-DE" });

const SIZES = [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
] as const;
/** Height by width of a page of A4, and the thickness of a hair. */
const A4 = 297 / 210 + 0.002;

/** At each size nothing is cut off at a side; the tree is sound. */
async function expectSound(page: Page): Promise<void> {
  for (const size of SIZES) {
    await page.setViewportSize(size);
    await page.waitForTimeout(200);
    // The ladder's widest ring runs out of a phone on purpose: it is cut by the thumb's edge.
    const cut = (await cutOff(page)).filter((line) => !line.startsWith("out: BUTTON ring"));
    expect.soft(cut, `${size.width} wide`).toEqual([]);
  }
  expect.soft(await axeFaults(page, true)).toEqual([]);
}

const spoken = (page: Page) => page.evaluate(() => document.documentElement.lang);

test("the start page speaks the browser's language, and at once and from then on the one that was chosen", async ({
  page,
}) => {
  await page.goto("/#/");
  await expect(page.getByText("Vom sichtbaren Stern zum unsichtbaren.")).toBeVisible();
  expect(await spoken(page)).toBe("de");
  await expectSound(page);
  const english = page.getByRole("button", { name: "English" });
  await expect(english).toHaveAttribute("lang", "en");
  await english.click();
  await expect(page.getByText("From a star you can see to one you cannot.")).toBeVisible();
  await expect(page.locator("html")).toHaveAttribute("lang", "en");
  await page.reload();
  await expect(page.getByText("From a star you can see to one you cannot.")).toBeVisible();
  await page.getByRole("button", { name: "Deutsch" }).click();
  await expect(page.getByRole("button", { name: "Den Kurs beginnen" })).toBeVisible();
  await expect(page.locator("html")).toHaveAttribute("lang", "de");
});

test("a hop, its report and its printed sheet", async ({ page }) => {
  await keep(page, await keptAttempts());
  await page.goto("/#/lesson/1-01");
  await page.getByRole("button", { name: "Beginnen" }).waitFor();
  await expectSound(page);
  await page.getByRole("button", { name: "Beginnen" }).click();
  await expect(page.getByText("Aufrechtes Bild", { exact: false }).first()).toBeAttached();
  await page.setViewportSize(SIZES[0]);
  await expect(page.locator("text.engraved", { hasText: "DER STERN IST IN DER MITTE" })).toBeVisible();
  await expect(page.locator("text.engraved", { hasText: /GRENZE \d+,\d/ })).toBeVisible();
  await expectSound(page);

  await page.goto("/#/report/ended");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(/: gefunden$/);
  await expect(page.locator("table.sum")).toContainText(/Geradlinigkeit.*\d,\d° ÷ \d,\d°/);
  await expectSound(page);

  await page.goto("/#/print/3-03");
  const sheet = page.locator(".hop-sheet");
  await expect(sheet).toContainText(/Sucher 9×: \d,\d° nach \S+, \d,\d\d Felder/);
  await page.setViewportSize(SIZES[0]);
  const { width, height } = (await sheet.boundingBox())!;
  expect(height / width, "one page of A4").toBeLessThan(A4);
});

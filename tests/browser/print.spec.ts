/** The hop sheet: one page of A4, nothing cut off, black on white or in the red lamp's tones. */
import { expect, type Page } from "@playwright/test";
import { test } from "./play/watch.ts";

const MM = 96 / 25.4;
const WHITE = "rgb(255, 255, 255)";
const BLACK = "rgb(0, 0, 0)";

async function openSheet(page: Page, id: string) {
  await page.goto(`/#/print/${id}`);
  await page.locator(".hop-sheet .chart svg").nth(1).waitFor();
}

/** As it lies on paper: the printed area of A4 within its margins is the window. */
async function onPaper(page: Page) {
  await page.setViewportSize({ width: Math.round(180 * MM), height: Math.round(267 * MM) });
  await page.emulateMedia({ media: "print" });
}

const pagesOf = (pdf: Buffer) => pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length ?? 0;
const boxesMm = (page: Page, selector: string) =>
  page.locator(selector).evaluateAll(
    (all, mm) =>
      all.map((one) => {
        const { left, top, width, height } = one.getBoundingClientRect();
        return { left: left / mm, top: top / mm, right: (left + width) / mm, bottom: (top + height) / mm };
      }),
    MM,
  );

for (const id of ["1-01", "3-03", "3-04s"])
  test(`the hop sheet of ${id} is one page of A4 and nothing on it is cut off`, async ({ page }) => {
    await openSheet(page, id);
    const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
    expect(pagesOf(pdf)).toBe(1);
    const [, width, height] = /\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf.toString("latin1")) ?? [];
    expect(Number(width)).toBeCloseTo((210 * 72) / 25.4, 0);
    expect(Number(height)).toBeCloseTo((297 * 72) / 25.4, 0);
    await onPaper(page);
    await expect(page.locator(".print-tools")).toBeHidden();
    const [left, right] = await boxesMm(page, ".columns > div");
    expect([left!.left, left!.right, right!.left, right!.right].map((mm) => Math.round(mm))).toEqual([0, 67, 74, 180]);
    const texts = ".hop-sheet p, .hop-sheet dt, .hop-sheet dd, .hop-sheet li, .hop-sheet figcaption, .hop-sheet text";
    for (const box of await boxesMm(page, `${texts}, .hop-sheet h1, .hop-sheet h2`)) {
      expect(box.left).toBeGreaterThan(-0.3);
      expect(box.right).toBeLessThan(180.3);
      expect(box.bottom).toBeLessThan(267);
    }
    const spilt = await page
      .locator(".hop-sheet *")
      .evaluateAll((all) =>
        all
          .filter((one) => one instanceof HTMLElement && one.clientWidth > 0 && one.scrollWidth > one.clientWidth + 1)
          .map((one) => `${one.tagName} ${one.className}`),
      );
    expect(spilt).toEqual([]);
  });

test("paper is white and print black; for the red lamp both are its tones", async ({ page }) => {
  await openSheet(page, "3-03");
  await page.emulateMedia({ media: "print" });
  const sheet = page.locator(".hop-sheet");
  await expect(sheet).toHaveCSS("background-color", WHITE);
  await expect(sheet).toHaveCSS("color", BLACK);
  // About the sheet the browser paints the page's own ground, or one of its scheme.
  await expect(page.locator("html")).toHaveCSS("background-color", WHITE);
  await expect(page.locator("html")).toHaveCSS("color-scheme", "light");
  await page.emulateMedia({ media: "screen" });
  await page.getByRole("button", { name: "For the red lamp" }).click();
  await page.emulateMedia({ media: "print" });
  await expect(sheet).toHaveCSS("background-color", "rgb(122, 0, 0)");
  await expect(sheet).toHaveCSS("color", "rgb(4, 0, 0)");
  const [box] = await boxesMm(page, ".hop-sheet");
  expect(Math.round(box!.right - box!.left)).toBe(210);
  expect(pagesOf(await page.pdf({ preferCSSPageSize: true, printBackground: true }))).toBe(1);
});

test("the sheet says what is to be done, and the start page leads to it", async ({ page }) => {
  await page.goto("/#/");
  await page.getByRole("button", { name: /^Hop sheet/ }).click();
  await page.locator(".hop-sheet").waitFor();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Push, look, claim");
  await openSheet(page, "3-03");
  await expect(page.locator(".way li")).toHaveText([
    /^Reflex sight: put γ Sge in the middle\.$/,
    /^Finder 9×: 3\.2° north, 0\.61 fields, to M 27\.$/,
    /^Eyepiece 48×: /,
  ]);
  await expect(page.locator(".way .step-sign")).toHaveCount(3);
  await page.getByRole("link", { name: "Back to the course" }).focus();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { level: 1 })).toHaveAccessibleName("Faintward");
});

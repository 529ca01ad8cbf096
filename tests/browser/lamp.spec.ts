/** A change of lamp goes through black: whoever is used to the dark meets no bright page on the way. */
import { expect } from "@playwright/test";
import { test } from "./play/watch.ts";

interface Moment {
  readonly lamp: string;
  readonly dark: number;
}

for (const reducedMotion of ["no-preference", "reduce"] as const)
  test(`the page is black while its light changes, motion: ${reducedMotion}`, async ({ page }) => {
    await page.emulateMedia({ reducedMotion });
    await page.goto("/");
    await page.getByRole("heading", { level: 1 }).waitFor();
    const settled = page.locator("html[data-lamp-settled]");
    for (const lamp of ["red", "amber", "normal"]) {
      await page.evaluate(() => {
        const root = document.documentElement;
        const moments: Moment[] = [];
        const note = () => {
          const veil = document.querySelector(".lamp-veil");
          moments.push({ lamp: root.dataset.lamp ?? "", dark: veil ? Number(getComputedStyle(veil).opacity) : 0 });
          requestAnimationFrame(note);
        };
        Object.assign(window, { moments });
        note();
      });
      await page.keyboard.press("r");
      await expect(settled).toHaveCount(0);
      await settled.waitFor({ state: "attached" });
      const moments = await page.evaluate(() => (window as unknown as { moments: Moment[] }).moments);
      const changed = moments.findIndex((moment) => moment.lamp === lamp);
      expect(changed, lamp).toBeGreaterThan(0);
      expect(
        [moments[changed - 1]!.dark, moments[changed]!.dark],
        `${lamp}: black on both sides of the change`,
      ).toEqual([1, 1]);
      await expect(page.locator(".lamp-veil")).toBeHidden();
    }
  });

test("pressed twice at once, the lamp goes on to the second light, through black once", async ({ page }) => {
  await page.goto("/");
  await page.getByRole("heading", { level: 1 }).waitFor();
  await page.evaluate(() => {
    for (let i = 0; i < 2; i++) dispatchEvent(new KeyboardEvent("keydown", { key: "r" }));
  });
  await page.locator("html[data-lamp-settled]").waitFor({ state: "attached" });
  await expect(page.locator("html")).toHaveAttribute("data-lamp", "amber");
});

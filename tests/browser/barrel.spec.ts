/** What stands about the barrel, and the barrel itself where a page is turned. */
import { expect, type Page } from "@playwright/test";
import { test } from "./play/watch.ts";

const FIELD_IS_THERE = ".canvas-place:not(.is-empty) canvas";

/** Tools of the corner whose words reach onto the rim. */
const onTheRim = (page: Page) =>
  page.evaluate(() => {
    const middle = document.querySelector(".barrel")!.getBoundingClientRect();
    const outerPx = document.querySelector(".rim-ground .hair")!.getBoundingClientRect().width / 2;
    return [...document.querySelectorAll(".corner .tool span")]
      .filter((word) => {
        const words = document.createRange();
        words.selectNodeContents(word);
        const { left, right, top, bottom } = words.getBoundingClientRect();
        const across = Math.max(left - middle.x, 0, middle.x - right);
        const along = Math.max(top - middle.y, 0, middle.y - bottom);
        return Math.hypot(across, along) < outerPx;
      })
      .map((word) => word.textContent);
  });

test.describe("in German, whose words are wide", () => {
  test.use({ locale: "de-DE" });

  test("the corner's tools stand clear of the rim, and under a dim lamp, which brings one row more", async ({
    page,
  }) => {
    await page.goto("/#/lesson/1-01");
    await page.locator(FIELD_IS_THERE).waitFor();
    await page.keyboard.press("r");
    await page.locator("html[data-lamp=red][data-lamp-settled]").waitFor({ state: "attached" });
    await expect(page.locator(".corner .brightness")).toBeVisible();
    for (const [width, height] of [
      [1440, 900],
      [1280, 800],
    ] as const) {
      await page.setViewportSize({ width, height });
      // The barrel is laid out for the window's new size with the next picture.
      await expect.poll(() => page.evaluate(() => document.querySelector("main")!.offsetWidth)).toBe(width);
      await expect.poll(() => onTheRim(page), `${width} wide`).toEqual([]);
    }
  });
});

/** Notes each width of the field once a page is laid out, as it is painted. */
const watchField = (page: Page) =>
  page.evaluate(() => {
    const painted: string[] = [];
    Object.assign(window, { painted });
    const canvas = document.querySelector(".canvas-place canvas")!;
    const turned = document.querySelector<HTMLElement>("main.play")!;
    const afterPaint = new MessageChannel();
    afterPaint.port1.onmessage = () => {
      const now = `${turned.dataset.page} ${Math.round(canvas.getBoundingClientRect().width)}`;
      if (painted.at(-1) !== now) painted.push(now);
    };
    const look = () => {
      afterPaint.port2.postMessage(null);
      requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  });

test.describe("on a phone", () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test("the field is as small as its door, and as large as its page, from the first picture on", async ({ page }) => {
    await page.goto("/#/lesson/1-01");
    await page.locator(FIELD_IS_THERE).waitFor();
    await page.getByRole("button", { name: "Begin" }).tap();
    const toSheet = page.getByRole("button", { name: "Sheet", exact: true });
    await toSheet.waitFor();
    await watchField(page);
    await toSheet.tap();
    await page.locator(".sheet-paper").waitFor();
    await page.locator("button.door").tap();
    await toSheet.waitFor();
    const painted = await page.evaluate(() => (window as unknown as { painted: string[] }).painted);
    expect(painted.map((one) => one.split(" ")[0])).toEqual(["field", "sheet", "field"]);
    const [before, door, after] = painted.map((one) => Number(one.split(" ")[1]));
    expect(after).toBe(before);
    expect(door).toBeLessThan(before! * 0.8);
  });

  test("the focus on the ladder's widest ring does not scroll the table from under the field", async ({ page }) => {
    await page.goto("/#/lesson/3-03");
    await page.getByRole("button", { name: "Begin" }).click();
    await page.locator(FIELD_IS_THERE).waitFor();
    for (const ring of await page.locator("nav .ring, nav .rung").all()) {
      await ring.focus();
      expect(await page.evaluate(() => [document.querySelector("main")!.scrollTop, scrollY])).toEqual([0, 0]);
    }
  });
});

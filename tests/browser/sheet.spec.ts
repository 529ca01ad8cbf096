/** The sheet in a browser: turned, flipped, nearer, pinned and drawn on, by mouse, touch and keys, in three lamps. */

import { expect, type Page } from "@playwright/test";
import axe from "axe-core";
import type { SheetScene } from "./sheet/page.tsx";
import { letterBoxes, openSheet, settled, showSheet, test, toldNow, viewNow } from "./sheet/sheetServer.ts";

const DEG = Math.PI / 180;
const ARROW: SheetScene = {
  centre: [298.6, 21.2],
  pxPerDeg: 34,
  limitMag: 8,
  widthPx: 424,
  heightPx: 520,
  at: [1100, 300],
  anchor: [299.689, 19.492],
  target: [299.9015, 22.7212],
};
const ORION: SheetScene = { ...ARROW, centre: [84, -1], pxPerDeg: 9, limitMag: 5.5, anchor: [83.86, -5.9] };
const MIDDLE = { x: 1100, y: 300 };
const around = (deg: number, r = 170) => ({
  x: MIDDLE.x + r * Math.cos(deg * DEG),
  y: MIDDLE.y + r * Math.sin(deg * DEG),
});

test.beforeEach(async ({ page, sheetAddress }) => {
  await openSheet(page, sheetAddress);
});
test.afterEach(async ({ page }) => {
  expect(await page.evaluate(() => window.sheetPage.violations)).toEqual([]);
});

async function dragAround(page: Page, fromDeg: number, toDeg: number): Promise<void> {
  const from = around(fromDeg);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  for (let i = 1; i <= 12; i++) {
    const { x, y } = around(fromDeg + ((toDeg - fromDeg) * i) / 12);
    await page.mouse.move(x, y);
  }
}
const canvasSum = (page: Page) =>
  page.evaluate(() => {
    const canvas = document.querySelector<HTMLCanvasElement>(".sheet-paper canvas")!;
    const { data } = canvas.getContext("2d")!.getImageData(0, 0, canvas.width, canvas.height);
    return data.reduce((sum, value, i) => (sum * 31 + value + i) % 2147483647, 7);
  });

test("a drag turns the paper with the finger; print is untouched, lettering goes and comes back level", async ({
  page,
}) => {
  await showSheet(page, ARROW);
  const before = await canvasSum(page);
  await dragAround(page, 20, 65);
  expect((await viewNow(page)).turnRad / DEG).toBeCloseTo(45, 0);
  await expect(page.locator(".sheet-letters")).toHaveCSS("opacity", "0");
  expect(await canvasSum(page)).toBe(before);
  await page.mouse.up();
  await settled(page);
  await expect(page.locator(".sheet-letters")).toHaveCSS("opacity", "1");
  const boxes = await letterBoxes(page);
  expect(boxes.length).toBeGreaterThan(6);
  // Level: every name is wider than high, or a single letter.
  for (const { text, left, right, top, bottom } of boxes)
    if (text!.length > 3) expect(right - left).toBeGreaterThan(bottom - top);
  const turn = await page
    .locator(".sheet-paper")
    .evaluate((paper) => Number.parseFloat(getComputedStyle(paper).rotate));
  expect(Math.abs(turn)).toBeCloseTo(45, 0);
  await expect(page.locator(".sheet-tools [role=status]")).toHaveText("From the front, turned 45° to the right");
});

test("lettering never meets lettering, whatever way the sheet lies", async ({ page }) => {
  for (const scene of [ARROW, ORION]) {
    for (const view of [{}, { turnRad: -21 * DEG, flipped: true }, { turnRad: 140 * DEG }, { turnRad: 1, scale: 2 }]) {
      await showSheet(page, { ...scene, view });
      const boxes = await letterBoxes(page);
      expect(boxes.length).toBeGreaterThan(5);
      const letters = boxes.map(({ text, left, top, right, bottom }) => {
        // The box of a line is higher than its letters are.
        const spare = (bottom - top) * 0.22;
        return { text, left: left + 1, right: right - 1, top: top + spare, bottom: bottom - spare };
      });
      letters.forEach((a, i) => {
        for (const b of letters.slice(i + 1)) {
          const meet = a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
          expect(meet, `${a.text} and ${b.text}`).toBe(false);
        }
      });
    }
  }
});

test("by keys: turn, flip, nearer, the cross and the pin; what it does is said", async ({ page }) => {
  await showSheet(page, ARROW);
  await page.locator(".sheet-paper").focus();
  for (let i = 0; i < 3; i++) await page.keyboard.press("Shift+ArrowRight");
  expect((await viewNow(page)).turnRad / DEG).toBeCloseTo(15, 9);
  await page.keyboard.press("f");
  expect((await viewNow(page)).flipped).toBe(true);
  await page.keyboard.press("+");
  expect((await viewNow(page)).scale).toBeCloseTo(1.5, 9);
  await page.keyboard.press("-");
  await settled(page);
  await page.keyboard.press("p");
  for (let i = 0; i < 4; i++) await page.keyboard.press("ArrowUp");
  await expect(page.locator(".sheet > [role=status]")).toContainText("Cross");
  await page.keyboard.press("Enter");
  await expect(page.locator(".sheet > [role=status]")).toHaveText("Pin set");
  const [told] = (await toldNow(page)).filter(({ what }) => what === "pin");
  const [raDeg, decDeg] = told!.value as [number, number];
  // Four steps of a twentieth of 5.3 degrees straight up the screen; the paper is flipped and turned by 15 degrees.
  const [east, north] = [(raDeg - 298.6) * Math.cos(21.2 * DEG), decDeg - 21.2];
  expect(Math.hypot(east, north)).toBeCloseTo(0.2 * 5.3, 1);
  expect(Math.atan2(east, north) / DEG).toBeCloseTo(-15, 0);
});

test("a tap pins the place under it, on a sheet that lies turned, flipped and nearer", async ({ page }) => {
  await showSheet(page, { ...ARROW, mode: "pin", view: { turnRad: 33 * DEG, flipped: true, scale: 2 } });
  await page.mouse.click(MIDDLE.x, MIDDLE.y);
  const [told] = (await toldNow(page)).filter(({ what }) => what === "pin");
  const [raDeg, decDeg] = told!.value as [number, number];
  expect(raDeg).toBeCloseTo(298.6, 2);
  expect(decDeg).toBeCloseTo(21.2, 2);
});

test("the pencil draws and rubs out, the ruler reads degrees and fields", async ({ page }) => {
  await showSheet(page, { ...ARROW, mode: "pencil" });
  await page.mouse.move(MIDDLE.x - 60, MIDDLE.y);
  await page.mouse.down();
  await page.mouse.move(MIDDLE.x, MIDDLE.y + 30, { steps: 5 });
  await page.mouse.up();
  await expect(page.locator(".hand-pencil")).toHaveCount(1);
  await page.getByRole("button", { name: "Rub out" }).click();
  await expect(page.locator(".hand-pencil")).toHaveCount(0);
  await page.getByRole("button", { name: "Ruler" }).click();
  await page.mouse.move(MIDDLE.x - 90, MIDDLE.y);
  await page.mouse.down();
  await page.mouse.move(MIDDLE.x + 90, MIDDLE.y, { steps: 5 });
  await page.mouse.up();
  await expect(page.locator(".sheet-letters .by-hand")).toHaveText("5.3°, 1.0 fields");
});

test("two fingers turn and bring nearer; the wheel brings nearer about the pointer", async ({ page }) => {
  await showSheet(page, ARROW);
  const client = await page.context().newCDPSession(page);
  const touch = (type: "touchStart" | "touchMove" | "touchEnd", points: readonly { x: number; y: number }[]) =>
    client.send("Input.dispatchTouchEvent", { type, touchPoints: points.map((point, id) => ({ ...point, id })) });
  await touch("touchStart", [around(180, 80), around(0, 80)]);
  for (let i = 1; i <= 10; i++) await touch("touchMove", [around(180 + 3 * i, 80 + 6 * i), around(3 * i, 80 + 6 * i)]);
  await touch("touchEnd", []);
  const view = await viewNow(page);
  expect(view.turnRad / DEG).toBeCloseTo(30, 0);
  expect(view.scale).toBeCloseTo(140 / 80, 1);
  await page.mouse.move(MIDDLE.x + 50, MIDDLE.y);
  await page.mouse.wheel(0, -100);
  await page.waitForFunction((scale) => window.sheetPage.view().scale > scale * 1.1, view.scale);
});

test("the red lamp shows red alone, not over its ceiling; the amber one has no blue", async ({ page }) => {
  const ring = { at: [299.7, 20.4], fieldDeg: 5.3 } as const;
  for (const lamp of ["red", "amber"] as const) {
    await page.evaluate((wanted) => window.sheetPage.setLamp(wanted), lamp);
    await showSheet(page, {
      ...ARROW,
      ring,
      trail: [
        [299.7, 19.5],
        [299.7, 20.4],
      ],
      view: { turnRad: -0.4 },
    });
    const shot = (await page.screenshot()).toString("base64");
    const most = await page.evaluate(async (png) => {
      const image = await createImageBitmap(new Blob([Uint8Array.from(atob(png), (c) => c.charCodeAt(0))]));
      const canvas = new OffscreenCanvas(image.width, image.height);
      const ctx = canvas.getContext("2d")!;
      ctx.drawImage(image, 0, 0);
      const { data } = ctx.getImageData(0, 0, image.width, image.height);
      const channels = [0, 0, 0];
      for (let i = 0; i < data.length; i++) if (i % 4 < 3) channels[i % 4] = Math.max(channels[i % 4]!, data[i]!);
      return channels;
    }, shot);
    expect(most[0]).toBeLessThanOrEqual(170);
    expect(most[0]).toBeGreaterThan(120);
    expect(most[1]).toBeLessThanOrEqual(lamp === "red" ? 0 : 85);
    expect(most[2]).toBe(0);
  }
});

test("is told to those who hear it, and has no fault that axe finds", async ({ page }) => {
  await showSheet(page, { ...ARROW, legend: true, asks: "Where does the tube point now?" });
  const told = await page.locator(".sheet > .hidden-words li").allTextContents();
  expect(told[0]).toBe("Anchor");
  expect(told.some((line) => /^Target: 0\.6 fields, towards \d+ o'clock$/.test(line))).toBe(true);
  expect(told.filter((line) => /magnitude/.test(line)).length).toBeGreaterThan(8);
  await page.evaluate(axe.source);
  const faults = await page.evaluate(async () => {
    const { violations } = await (window as unknown as { axe: typeof axe }).axe.run();
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(" | ")}`);
  });
  expect(faults.filter((fault) => !fault.startsWith("page-has-heading-one"))).toEqual([]);
});

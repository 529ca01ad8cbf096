/** By keys alone: the order of what is reached, a focus that is seen, and where it goes when the screen changes. */
import { expect } from "@playwright/test";
import { focused, isFocusSeen } from "./access/focus.ts";
import { keep, keptAttempts, lightLamp, SCREENS } from "./access/screens.ts";
import { test } from "./play/watch.ts";

test.describe.configure({ mode: "parallel" });

const MOST_STOPS = 40;

/** Places in the order in which they are first reached. */
const placesOf = (stops: readonly string[]) => [...new Set(stops.map((stop) => stop.split(":")[0]!))];

for (const lamp of ["normal", "red"] as const)
  test(`Tab goes from the field by way of claim, the eye, ladder, sheet and hints to the tools, seen by ${lamp} lamp`, async ({
    page,
  }) => {
    await keep(page, await keptAttempts());
    await SCREENS.finder(page);
    // A heading that has the focus for those who listen shows no mark of it.
    await expect(page.locator(".headline")).toBeFocused();
    // Asked again: what comes late beside it may come between two pictures.
    await expect.poll(() => isFocusSeen(page)).toBe(false);
    await lightLamp(page, lamp);
    await page.locator("#field").focus();
    const stops: string[] = [];
    const unseen: string[] = [];
    for (let i = 0; i < MOST_STOPS && (await focused(page)) !== "nothing"; i++) {
      const stop = await focused(page);
      if (stops.includes(stop)) break;
      stops.push(stop);
      if (!(await isFocusSeen(page))) unseen.push(stop);
      await page.keyboard.press("Tab");
    }
    expect(placesOf(stops)).toEqual(["field", "claim", "beside", "ladder", "sheet", "sheet tools", "hints", "tools"]);
    const rings = stops.filter((stop) => stop.startsWith("ladder")).map((stop) => Number(/([\d.]+)°/.exec(stop)?.[1]));
    expect(rings).toHaveLength(4);
    expect(rings).toEqual(rings.toSorted((a, b) => a - b));
    expect(unseen).toEqual([]);
  });

test("the focus goes where one goes on: briefing, field, ladder, sheet, keys, report, start", async ({ page }) => {
  await keep(page, await keptAttempts());
  await SCREENS.briefing(page);
  const headline = page.getByRole("heading", { level: 2, name: "Push, look, claim" });
  await expect(headline).toBeFocused();
  const begin = page.getByRole("button", { name: "Begin" });
  for (let i = 0; i < MOST_STOPS && !(await begin.evaluate((one) => one === document.activeElement)); i++)
    await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await expect(page.locator("#field")).toBeFocused();

  await SCREENS.finder(page);
  await expect(page.locator(".headline")).toBeFocused();
  const eyepiece = page.getByRole("button", { name: /^Eyepiece/ });
  await eyepiece.focus();
  await page.keyboard.press("Enter");
  await expect(eyepiece).toHaveAttribute("aria-pressed", "true");
  await expect(eyepiece).toBeFocused();
  await page.keyboard.press("s");
  await expect(page.locator(".sheet-paper")).toBeFocused();
  await page.keyboard.press("s");
  await expect(page.locator("#field")).toBeFocused();

  await page.keyboard.press("k");
  await expect(page.getByRole("heading", { name: "Keys" })).toBeFocused();
  await page.keyboard.press("Tab");
  await expect(page.getByRole("button", { name: "Back to the sky" })).toBeFocused();
  await page.keyboard.press("Escape");
  await expect(page.getByRole("heading", { name: "Keys" })).toHaveCount(0);
  await expect(page.locator("#field")).toBeFocused();
  const keysTool = page.getByRole("button", { name: "Keys", exact: true });
  await keysTool.focus();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { name: "Keys" })).toBeFocused();
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await expect(keysTool).toBeFocused();

  await page.getByRole("button", { name: "More help" }).focus();
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: /Give up this hop/ }).focus();
  await page.keyboard.press("Enter");
  const report = page.getByRole("heading", { level: 1, name: /given up/ });
  await expect(report).toBeFocused({ timeout: 15_000 });
  await page.keyboard.press("k");
  await expect(page.getByRole("heading", { name: "Keys" })).toBeFocused();
  await page.keyboard.press("Escape");
  await expect(report).toBeFocused();

  await page.getByRole("button", { name: "Back to the course" }).focus();
  await page.keyboard.press("Enter");
  const start = page.getByRole("heading", { level: 1, name: "Faintward" });
  await expect(start).toBeFocused();
  const logbook = page.getByRole("button", { name: /^Logbook/ });
  await logbook.focus();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { level: 2, name: "Logbook" })).toBeFocused();
  await page.keyboard.press("Escape");
  await expect(logbook).toBeFocused();
  const goOn = page.getByRole("button", { name: "Go on with the course" });
  await goOn.focus();
  await expect(goOn).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.locator(".headline")).toBeFocused();
  await page.goBack();
  await expect(start).toBeFocused();
});

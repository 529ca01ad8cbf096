/** Every screen of the built page for everybody: its tree, its colours in each light. */
import { expect } from "@playwright/test";
import { axeFaults } from "./access/axe.ts";
import { greatest, redContrast, textsOnGrounds, tokenContrasts } from "./access/redLight.ts";
import { keep, keptAttempts, LAMPS, lightLamp, SCREENS, type ScreenName } from "./access/screens.ts";
import { test as watched } from "./play/watch.ts";

/** Bars of the window's own are part of what is seen. */
const test = watched.extend({
  launchOptions: [
    async ({ launchOptions }, use) => use({ ...launchOptions, ignoreDefaultArgs: ["--hide-scrollbars"] }),
    { scope: "worker" },
  ],
});

test.describe.configure({ mode: "parallel" });

const LEAST_CONTRAST = 4.5;
/** 40 % of the red channel's light, and one step for rounding. */
const MOST_RED = 171;

for (const lamp of LAMPS)
  test(`${lamp} lamp: every screen has a sound tree`, async ({ page }) => {
    await keep(page, await keptAttempts());
    const faults: Record<string, string[]> = {};
    const look = async (name: string) => {
      const found = await axeFaults(page, lamp === "normal");
      if (found.length > 0) faults[name] = found;
    };
    await SCREENS.start(page);
    await lightLamp(page, lamp);
    await look("start");
    await page.getByRole("button", { name: /^Lessons/ }).click();
    await look("lessons");
    await SCREENS.briefing(page);
    await look("briefing");
    await SCREENS.finder(page);
    await look("finder");
    await page.getByRole("button", { name: "More help" }).click();
    await page.getByRole("button", { name: "Other tools of the sheet" }).click();
    await look("finder, more of all");
    await page.keyboard.press("k");
    await page.getByRole("heading", { name: "Keys" }).waitFor();
    await look("keys");
    await page.keyboard.press("Escape");
    await SCREENS.report(page);
    await look("report");
    await SCREENS.bench(page);
    await look("bench");
    await SCREENS.catalogue(page);
    await look("own catalogue");
    await SCREENS.print(page);
    await look("hop sheet");
    expect(faults).toEqual({});
  });

for (const lamp of ["red", "amber"] as const)
  test(`${lamp} lamp: texts stand out from their grounds by red light alone`, async ({ page }) => {
    await keep(page, await keptAttempts());
    for (const level of [170, 235]) {
      await SCREENS.start(page);
      await lightLamp(page, lamp, level);
      for (const [pair, contrast] of Object.entries(await tokenContrasts(page)))
        expect(contrast, `${pair} at ${level}`).toBeGreaterThanOrEqual(LEAST_CONTRAST);
      for (const name of Object.keys(SCREENS) as ScreenName[]) {
        await SCREENS[name](page);
        const texts = await textsOnGrounds(page);
        expect(texts.length, name).toBeGreaterThan(4);
        const faint = texts.filter(({ red, ground }) => redContrast(red, ground) < LEAST_CONTRAST);
        expect(faint, `${name} at ${level}`).toEqual([]);
      }
    }
  });

test("red lamp: nothing on any screen has green or blue, or is too bright", async ({ page }) => {
  await keep(page, await keptAttempts());
  await SCREENS.start(page);
  expect((await greatest(page)).b).toBeGreaterThan(200);
  await lightLamp(page, "red");
  for (const name of Object.keys(SCREENS) as ScreenName[]) {
    await SCREENS[name](page);
    const { r, g, b } = await greatest(page);
    expect([g, b], name).toEqual([0, 0]);
    expect(r, name).toBeLessThanOrEqual(MOST_RED);
    expect(r, name).toBeGreaterThan(MOST_RED - 20);
    // What a hand or a key lights up is seen by the same lamp.
    await page.keyboard.press("Tab");
    await page.keyboard.press("Tab");
    const lit = await greatest(page);
    expect([lit.g, lit.b, lit.r <= MOST_RED], `${name}, focus`).toEqual([0, 0, true]);
  }
});

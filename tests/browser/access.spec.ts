/** Every screen of the built page for everybody: its tree, its colours in each light. */
import { expect, type Page } from "@playwright/test";
import { axeFaults } from "./access/axe.ts";
import { greatest, redContrast, textsOnGrounds, tokenContrasts } from "./access/redLight.ts";
import { keep, keptAttempts, lightLamp, SCREENS, type ScreenName } from "./access/screens.ts";
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

/** Whatever can be open, one after the other. */
async function visitAll(page: Page, look: (name: string) => Promise<void>): Promise<void> {
  for (const name of Object.keys(SCREENS) as ScreenName[]) {
    await SCREENS[name](page);
    await look(name);
    if (name === "start") {
      await page.getByRole("button", { name: /^Lessons/ }).click();
      await look("lessons");
    }
    if (name === "finder") {
      await page.getByRole("button", { name: "More help" }).click();
      await page.getByRole("button", { name: "Other tools of the sheet" }).click();
      await look("finder, more of all");
      await page.keyboard.press("k");
      await page.getByRole("heading", { name: "Keys" }).waitFor();
      await look("keys");
      await page.keyboard.press("Escape");
    }
  }
}

async function expectSoundTree(page: Page, name: string, contrastToo: boolean): Promise<void> {
  expect.soft(await axeFaults(page, contrastToo), name).toEqual([]);
}

async function expectTextsStandOut(page: Page, name: string): Promise<void> {
  const texts = await textsOnGrounds(page);
  expect(texts.length, name).toBeGreaterThan(4);
  const faint = texts.filter(({ red, ground }) => redContrast(red, ground) < LEAST_CONTRAST);
  expect.soft(faint, name).toEqual([]);
}

/** Nothing has green or blue or is too bright, nor has what a hand or a key lights up. */
async function expectRedAlone(page: Page, name: string): Promise<void> {
  const { r, g, b } = await greatest(page);
  expect([g, b], name).toEqual([0, 0]);
  expect(r, name).toBeLessThanOrEqual(MOST_RED);
  expect(r, name).toBeGreaterThan(MOST_RED - 20);
  await page.keyboard.press("Tab");
  await page.keyboard.press("Tab");
  const lit = await greatest(page);
  expect([lit.g, lit.b, lit.r <= MOST_RED], `${name}, focus`).toEqual([0, 0, true]);
}

test("normal lamp: every screen has a sound tree", async ({ page }) => {
  await keep(page, await keptAttempts());
  await SCREENS.start(page);
  expect((await greatest(page)).b).toBeGreaterThan(200);
  await visitAll(page, (name) => expectSoundTree(page, name, true));
});

/** The tones that the page gives itself for a level of a lamp; its pairs of text and ground stand out. */
async function tonesAt(page: Page, lamp: "red" | "amber", level: number): Promise<string> {
  await lightLamp(page, lamp, level);
  for (const [pair, contrast] of Object.entries(await tokenContrasts(page)))
    expect(contrast, `${pair} at ${level}`).toBeGreaterThanOrEqual(LEAST_CONTRAST);
  return page.evaluate(() => document.documentElement.style.cssText);
}
const setTones = (page: Page, tones: string): Promise<void> =>
  page.evaluate((text) => {
    document.documentElement.style.cssText = text;
  }, tones);

const PLAIN_NAMES = new Set<string>(Object.keys(SCREENS));
for (const lamp of ["red", "amber"] as const)
  test(`${lamp} lamp: texts that stand out by red light alone${lamp === "red" ? ", sound trees, and no other light" : ""}`, async ({
    page,
  }) => {
    await keep(page, await keptAttempts());
    await SCREENS.start(page);
    const brightest = await tonesAt(page, lamp, 235);
    const dim = await tonesAt(page, lamp, 170);
    expect(brightest).not.toBe(dim);
    await visitAll(page, async (name) => {
      await setTones(page, brightest);
      await expectTextsStandOut(page, `${name}, brightest`);
      await setTones(page, dim);
      await expectTextsStandOut(page, name);
      // The trees of the two lamps differ in nothing but tones.
      if (lamp === "amber") return;
      await expectSoundTree(page, name, false);
      if (PLAIN_NAMES.has(name)) await expectRedAlone(page, name);
    });
  });

/** Every screen of the page, and the ways to each. */
import { expect, type Page } from "@playwright/test";
import type { FinishedAttempt, RunningAttempt } from "../../../src/desk/app/ports.ts";
import { nodeFiles } from "../golden/goldenPage.ts";
import { nodeModule } from "../nodeModule.ts";
import { fillBase } from "../store/idb.ts";
import type * as Left from "../store/leftAttempt.ts";
import type * as Ended from "./endedAttempt.ts";

/** A page of the same origin in which the program does not run. */
const ASIDE = { path: "/aside.html", body: "<!doctype html><link rel=icon href=data:,>" } as const;
const FINDER_LESSON = "3-03";
/** One star and one bad row. */
const OWN_FILE = { name: "own.csv", mimeType: "text/csv", buffer: Buffer.from("ra,dec,vmag\n10,20,3\n10,95,3\n") };

export interface Kept {
  /** The anchor is confirmed, the finder in use, a push made. */
  readonly running: RunningAttempt;
  readonly finished: FinishedAttempt;
}

async function makeKept(): Promise<Kept> {
  const { leftAttempt } = await nodeModule<typeof Left>("tests/browser/store/leftAttempt.ts");
  const { endedAttempt } = await nodeModule<typeof Ended>("tests/browser/access/endedAttempt.ts");
  return {
    running: await leftAttempt(FINDER_LESSON, nodeFiles),
    finished: await endedAttempt(FINDER_LESSON, nodeFiles),
  };
}

let kept: Promise<Kept> | undefined;
/** A hop under way and one that was found; made once for each worker. */
export function keptAttempts(): Promise<Kept> {
  kept ??= makeKept();
  return kept;
}

async function fillAside(page: Page, filled: Parameters<typeof fillBase>[1]): Promise<void> {
  await page.route(`**${ASIDE.path}`, (route) => route.fulfill({ contentType: "text/html", body: ASIDE.body }));
  await page.goto(ASIDE.path);
  await fillBase(page, filled);
}

/** Lays both attempts where the page keeps its own. */
export const keep = (page: Page, { running, finished }: Kept): Promise<void> =>
  fillAside(page, { running: [running], finished: [finished] });

/** Lays an attempt that was left where the page keeps its own. */
export const keepRunning = (page: Page, running: RunningAttempt): Promise<void> =>
  fillAside(page, { running: [running] });

/** Stars are held still by the reader's own setting. */
export const holdStars = (page: Page): Promise<void> => fillAside(page, { settings: { twinkleOn: false } });

/** Nothing is on its way any more: stars, print, type. */
async function atRest(page: Page): Promise<void> {
  await page.evaluate(() => document.fonts.ready);
  await page.waitForTimeout(300);
}

const openHash = async (page: Page, hash: string): Promise<void> => {
  await page.goto(`/#/${hash}`);
};

export const SCREENS = {
  async start(page: Page) {
    await openHash(page, "");
    await page.getByRole("heading", { level: 1, name: "Faintward" }).waitFor();
    await atRest(page);
  },
  async briefing(page: Page) {
    await openHash(page, "lesson/1-01");
    await page.getByRole("button", { name: "Begin" }).waitFor();
    await page.locator(".canvas-place:not(.is-empty) canvas").waitFor();
    await atRest(page);
  },
  /** Needs attempts that are kept. */
  async finder(page: Page) {
    await openHash(page, `lesson/${FINDER_LESSON}`);
    await expect(page.locator("main.play")).toContainText("Push the tube up");
    await page.locator(".canvas-place:not(.is-empty) canvas").waitFor();
    await atRest(page);
  },
  /** Needs attempts that are kept. */
  async report(page: Page) {
    await openHash(page, "report/ended");
    await expect(page.getByRole("heading", { level: 1 })).toContainText("found");
    await page.locator(".report-sheet canvas").first().waitFor();
    await atRest(page);
  },
  async bench(page: Page) {
    await openHash(page, "bench");
    await page.getByRole("heading", { name: "Lesson bench" }).waitFor();
    await atRest(page);
  },
  async catalogue(page: Page) {
    await openHash(page, "catalogue");
    await page.locator("input[type=file]").setInputFiles(OWN_FILE);
    await page.getByRole("heading", { name: "Rows to mend" }).waitFor();
    await atRest(page);
  },
  async screen(page: Page) {
    await openHash(page, "screen");
    await page.getByRole("heading", { name: "Your screen" }).waitFor();
    await atRest(page);
  },
  async free(page: Page) {
    await openHash(page, "");
    await page.getByRole("button", { name: /^Free practice/ }).click();
    await page.getByRole("slider", { name: "The sky over it" }).waitFor();
    await atRest(page);
  },
  async print(page: Page) {
    await openHash(page, `print/${FINDER_LESSON}`);
    await page.locator(".hop-sheet .chart svg").nth(1).waitFor();
    await atRest(page);
  },
} as const satisfies Record<string, (page: Page) => Promise<void>>;
export type ScreenName = keyof typeof SCREENS;

export const LAMPS = ["normal", "red", "amber"] as const;
export type Lamp = (typeof LAMPS)[number];

/** Turns to a lamp by its key, on a screen whose tools are shown; the dim ones are set as bright as asked. */
export async function lightLamp(page: Page, lamp: Lamp, level = 170): Promise<void> {
  const shown = () => page.evaluate(() => document.documentElement.dataset.lamp);
  for (let i = 0; (await shown()) !== lamp; i++) {
    expect(i, "presses of the lamp's key").toBeLessThan(LAMPS.length);
    await page.keyboard.press("r");
    await page.locator("html[data-lamp-settled]").waitFor({ state: "attached" });
  }
  if (lamp !== "normal") await page.getByRole("slider", { name: "Brightness of the lamp" }).fill(String(level));
}

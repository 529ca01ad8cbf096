/** A catalogue of one's own on the built page: taken in whole or not at all, told row by row, used, removed. */
import { expect, type Page } from "@playwright/test";
import { BROKEN_VOTABLE, drop, evenCsv, handOf, keptTiles, spoiltCsv } from "./import/files.ts";
import { findStars } from "./play/blobs.ts";
import { picture } from "./play/looks.ts";
import { test } from "./play/watch.ts";
import { readBase } from "./store/idb.ts";

const MOST_TASK_MS = 50;
const MOST_CANCEL_MS = 100;
/** One of the bright layer, 12 and 48 of the others. */
const TILE_FILES = 61;
/** Enough for a catalogue of 200 stars, not for one of 200,000. */
const ROOM_BYTES = 1_000_000;

async function open(page: Page): Promise<void> {
  await page.goto("./#/catalogue");
  await page.getByRole("button", { name: /^Choose/ }).waitFor();
}
const notice = (page: Page) => page.getByRole("status");
const figure = (page: Page, words: string) => page.getByRole("row").filter({ hasText: words }).getByRole("cell");

/** A small catalogue that is there before something else is tried. */
async function takeSmall(page: Page): Promise<void> {
  await drop(page, await handOf(page, "small.csv", evenCsv(200, 3)));
  await expect(notice(page)).toContainText("small.csv has been taken in. Stars: 200");
}
async function smallIsStillThere(page: Page): Promise<void> {
  await expect(page.getByRole("heading", { name: "small.csv" })).toBeVisible();
  await expect.poll(() => keptTiles(page)).toEqual({ files: TILE_FILES, of: "small.csv" });
}

test("20,000 rows, one in a hundred bad: counted and told by line", async ({ page }) => {
  await open(page);
  await drop(page, await handOf(page, "many.csv", spoiltCsv(20_000)));
  await expect(notice(page)).toContainText("many.csv has been taken in. Stars: 19,800.");
  await expect(figure(page, "rows read")).toHaveText("20,000");
  await expect(figure(page, "stars taken")).toHaveText("19,800");
  await expect(figure(page, "rows left out")).toHaveText("200");
  await expect(figure(page, "declination lies beyond")).toHaveText("50");
  await expect(page.getByText("200 bad rows; the first 100 are listed.")).toBeVisible();
  const rows = page.getByRole("list", { name: "Rows to mend" }).getByRole("listitem");
  await expect(rows).toHaveCount(100);
  await expect(rows.nth(0)).toContainText(/line 101.*right ascension cannot be read.*Write degrees/);
  await expect(rows.nth(1)).toContainText(/line 201.*beyond 90 degrees.*from -90 to 90/);
  await page.reload();
  await expect(figure(page, "stars taken")).toHaveText("19,800");
  expect(await keptTiles(page)).toEqual({ files: TILE_FILES, of: "many.csv" });
});

/** The longest task of the page's own thread while a file is taken in, ms; 0 where none is over 50. */
async function longestTaskMs(page: Page, name: string): Promise<number> {
  const hand = await handOf(page, name, spoiltCsv(20_000));
  await page.evaluate(() => {
    const tasks: number[] = [];
    new PerformanceObserver((list) => tasks.push(...list.getEntries().map(({ duration }) => duration))).observe({
      type: "longtask",
    });
    Object.assign(window, { longTasks: tasks });
  });
  await drop(page, hand);
  await expect(notice(page)).toContainText(`${name} has been taken in. Stars: 19,800.`);
  return page.evaluate(() => Math.max(0, ...(window as unknown as { longTasks: number[] }).longTasks));
}

test("the page is never held up while 20,000 rows are taken in", async ({ page }) => {
  // A busy machine stretches any task now and then; work that is the page's own is in each run.
  const longest: number[] = [];
  for (let run = 0; run < 5 && !longest.some((ms) => ms <= MOST_TASK_MS); run++) {
    // Afresh each time, and with its screen there: a page that only reloads may not take a drop yet.
    await page.goto("about:blank");
    await open(page);
    longest.push(await longestTaskMs(page, `many-${run}.csv`));
  }
  expect(Math.min(...longest), `longest task of each run, ms: ${longest}`).toBeLessThanOrEqual(MOST_TASK_MS);
});

/** Drops a large file, cancels it while it is read, and tells how long that took. */
async function cancelledAfterMs(page: Page, name: string): Promise<number> {
  await drop(page, await handOf(page, name, spoiltCsv(20_000), 45));
  await expect(page.getByText(`Reading ${name}: `)).toContainText(/[\d,]+ rows, [1-9]\d* % of the file/);
  return page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        const [button, said] = [document.getElementById("own-cancel"), document.querySelector(".own-notice")];
        const fromMs = performance.now();
        new MutationObserver(() => resolve(performance.now() - fromMs)).observe(said!, {
          attributeFilter: ["data-ending"],
        });
        button!.click();
      }),
  );
}

test("cancelled within a tenth of a second, a broken and a foreign file: what was there stays", async ({ page }) => {
  await open(page);
  await takeSmall(page);
  // A busy machine is late now and then; what the page itself takes is in each run.
  const cancelMs: number[] = [];
  for (let run = 0; run < 4 && !cancelMs.some((ms) => ms < MOST_CANCEL_MS); run++) {
    cancelMs.push(await cancelledAfterMs(page, `large-${run}.csv`));
    await expect(notice(page)).toHaveText("Cancelled. What was here before is unchanged.");
    await expect(page.getByRole("button", { name: "Choose another file" })).toBeFocused();
  }
  expect(Math.min(...cancelMs), `each run, ms: ${cancelMs}`).toBeLessThan(MOST_CANCEL_MS);
  await smallIsStillThere(page);

  // The screen may be left: it goes on, and is found under way again.
  await drop(page, await handOf(page, "longer.csv", spoiltCsv(20_000), 45));
  await expect(page.getByText(/Reading longer\.csv/)).toBeVisible();
  await page.getByRole("link", { name: "Start page" }).click();
  await page.getByRole("heading", { level: 1 }).waitFor();
  expect(new URL(page.url()).hash).not.toContain("catalogue");
  await page.evaluate(() => {
    location.hash = "#/catalogue";
  });
  await expect(page.getByText(/(Reading longer\.csv: [\d,]+ rows, [1-9]\d* %|rows read\.)/)).toBeVisible();
  await page.getByRole("button", { name: "Cancel" }).click();
  await expect(notice(page)).toHaveText("Cancelled. What was here before is unchanged.");
  await smallIsStillThere(page);

  await drop(page, await handOf(page, "broken.vot", BROKEN_VOTABLE));
  await expect(notice(page)).toContainText(/Not taken in\. Line 5: the file ends in the middle\..*is unchanged/);
  await smallIsStillThere(page);

  await drop(page, await handOf(page, "letter.txt", "Dear observers,\nthe hill is closed.\n"));
  await expect(notice(page)).toContainText(/Not taken in\..*is unchanged/);
  await smallIsStillThere(page);
});

test("where there is no room for it, what was there stays", async ({ page, context, baseURL }) => {
  const session = await context.newCDPSession(page);
  // Before the page asks for any room: what a browser has granted it does not take back.
  await session.send("Storage.overrideQuotaForOrigin", { origin: new URL(baseURL!).origin, quotaSize: ROOM_BYTES });
  await open(page);
  await takeSmall(page);
  await drop(page, await handOf(page, "many.csv", spoiltCsv(20_000), 10));
  await expect(notice(page)).toContainText(/no room left.*What was here before is unchanged/);
  await smallIsStillThere(page);
});

const starsOf = async (page: Page) => findStars(await picture(page), 1);

/** @param isThin a catalogue is in use that has too few stars for the way */
async function openHop(page: Page, isThin = false): Promise<void> {
  await page.goto("./#/lesson/3-03");
  if (isThin) await page.getByRole("button", { name: "Hop all the same" }).click();
  await page.getByRole("button", { name: "Begin" }).waitFor();
  await page.locator(".canvas-place:not(.is-empty) canvas").waitFor();
}

test("in use, a catalogue lesson is drawn from it and kept nowhere; removed, the page's own stars are back", async ({
  page,
}) => {
  await openHop(page);
  await expect.poll(async () => (await starsOf(page)).length).toBeGreaterThan(100);
  await open(page);
  await takeSmall(page);
  await page.getByRole("button", { name: "Use its stars" }).click();
  await expect(page.getByRole("button", { name: "Use its stars" })).toHaveAttribute("aria-pressed", "true");

  await page.goto("./#/lesson/3-03");
  await expect(page.getByRole("heading", { name: "Few stars to hop by" })).toBeFocused();
  await expect(
    page.getByText(/^(The emptiest field of this way shows 1 star|Your catalogue has no star)/),
  ).toBeVisible();
  await openHop(page, true);
  await expect(page.getByText("Your own stars: not kept")).toBeVisible();
  // 200 stars over the sky are some 29 in a field of 90 degrees, all as bright but for the air.
  await expect.poll(async () => (await starsOf(page)).length).toBeLessThan(50);
  const stars = await starsOf(page);
  expect(stars.length).toBeGreaterThan(12);
  const mags = stars.map(({ overLimitMag }) => overLimitMag).sort((a, b) => a - b);
  const near = mags.filter((mag) => Math.abs(mag - mags[mags.length >> 1]!) < 0.6);
  expect(near.length).toBeGreaterThan(0.7 * mags.length);

  await page.getByRole("button", { name: "Begin" }).click();
  await page.getByRole("button", { name: /More help/ }).click();
  await page.getByRole("button", { name: /Give up/ }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("given up");
  await expect(page.getByText("Hopped among the stars of your own catalogue; not in the logbook.")).toBeVisible();
  const { running, finished } = await readBase(page);
  expect(finished).toEqual([]);
  expect(running).toEqual([]);

  await open(page);
  await page.getByRole("button", { name: "Remove it" }).click();
  await expect(notice(page)).toHaveText("Your catalogue has been removed.");
  expect(await keptTiles(page)).toEqual({ files: 0, of: null });
  await openHop(page);
  await expect(page.getByText("Your own stars: not kept")).toHaveCount(0);
  await expect.poll(async () => (await starsOf(page)).length).toBeGreaterThan(100);
});

test("too few stars for a way: the page's own stars are one press away, and the switch is off then", async ({
  page,
}) => {
  await open(page);
  await takeSmall(page);
  await page.getByRole("button", { name: "Use its stars" }).click();
  await page.goto("./#/lesson/3-03");
  await page.getByRole("button", { name: "Hop with the page's own stars" }).click();
  await page.getByRole("button", { name: "Begin" }).waitFor();
  await expect(page.getByText("Your own stars: not kept")).toHaveCount(0);
  await open(page);
  await expect(page.getByRole("button", { name: "Use its stars" })).toHaveAttribute("aria-pressed", "false");
});

test("a look round begins at the brightest star or at a name, seeks nothing, and leaves nothing behind", async ({
  page,
}) => {
  const rows = evenCsv(2000, 6).trim().split("\n");
  const named = rows.map((row, i) => (i === 0 ? `${row},name` : `${row},${i === 700 ? "Fold Lantern" : ""}`));
  await open(page);
  await drop(page, await handOf(page, "ours.csv", `${[...named, "280,39,1.5,0.1,Our Lamp"].join("\n")}\n`));
  await expect(notice(page)).toContainText("Stars: 2,001");

  const name = page.getByLabel("From a name");
  await name.fill("Nobody at all");
  await name.press("Enter");
  await expect(page.getByText("Nothing bears the name Nobody at all.")).toBeVisible();

  await page.getByRole("button", { name: "From its brightest star" }).click();
  await page.getByRole("button", { name: "Begin" }).click();
  const field = page.locator("#field");
  await expect(field).toHaveAttribute(
    "aria-label",
    /Naked eye.*Our Lamp stands in the middle\. One star is seen\. It stands in the middle/,
  );
  await expect(page.getByRole("button", { name: /claim|in the middle/i })).toHaveCount(0);
  await expect(page.getByText("Your own stars: not kept")).toBeVisible();
  // Keys that would confirm or claim find nothing to do.
  await field.focus();
  await page.keyboard.press("Enter");
  await page.keyboard.press("c");
  await page.getByRole("button", { name: /^Finder/ }).dispatchEvent("click");
  await expect(field).toHaveAttribute("aria-label", /Finder.*Our Lamp stands in the middle/);
  expect((await starsOf(page)).length).toBeGreaterThan(0);
  await page.getByRole("button", { name: /More help/ }).click();
  await expect(page.getByRole("button", { name: /Give up/ })).toHaveCount(0);

  await page.goto("./#/");
  await open(page);
  await name.fill("fold lantern");
  await name.press("Enter");
  await page.getByRole("button", { name: "Begin" }).click();
  await expect(field).toHaveAttribute("aria-label", /Fold Lantern stands in the middle/);
  const { running, finished } = await readBase(page);
  expect([running, finished]).toEqual([[], []]);
});

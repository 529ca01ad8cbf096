/** Attempts outlive their tabs: killed, crashed, beside a newer version's data. */
import { type BrowserContext, expect, type Page, test } from "@playwright/test";
import { nodeFiles } from "./golden/goldenPage.ts";
import { nodeModule } from "./nodeModule.ts";
import { fillBase, raiseVersion, readBase } from "./store/idb.ts";
import type * as Left from "./store/leftAttempt.ts";

const LESSON = "3-03";
const KILLS = 20;
/** A file of the same origin in which the program does not run. */
const ASIDE = "/icons/faintward.svg";

/** The renderer crashes, or the tab is closed without a word. */
async function kill(page: Page, crash: boolean): Promise<void> {
  if (!crash) return page.close({ runBeforeUnload: false });
  const session = await page.context().newCDPSession(page);
  const crashed = page.waitForEvent("crash");
  void session.send("Page.crash").catch(() => undefined);
  await crashed;
  await page.close();
}

const runningOf = async (page: Page) => (await readBase(page)).running[0]!;

/** Opens the page, pushes, changes the instrument to and fro; gives the record that was kept of it. */
async function hopOn(
  context: BrowserContext,
  key: string,
  grown: (recordText: string) => boolean,
): Promise<{ page: Page; kept: string }> {
  const page = await context.newPage();
  await page.goto("/");
  await page.locator("#field").waitFor();
  await expect(page.locator("main.play")).toContainText("Push the tube up");
  await page.keyboard.down(key);
  await page.waitForTimeout(250);
  await page.keyboard.up(key);
  await page.keyboard.press("n");
  await page.keyboard.press("w");
  const kept = async () => grown((await runningOf(page)).recordText);
  await expect.poll(kept, { intervals: [50] }).toBe(true);
  return { page, kept: (await runningOf(page)).recordText };
}

test.describe("in a small window, which is drawn sooner", () => {
  test.use({ viewport: { width: 800, height: 600 } });

  test("twenty killed tabs: each attempt is taken up with its events and its trail", async ({ context, page }) => {
    test.setTimeout(240_000);
    const { leftAttempt, told } = await nodeModule<typeof Left>("tests/browser/store/leftAttempt.ts");
    const left = await leftAttempt(LESSON, nodeFiles);
    await page.goto(ASIDE);
    await fillBase(page, { running: [left] });
    let before = left.recordText;
    for (let i = 0; i < KILLS; i++) {
      const was = told(before);
      const grown = (text: string) => told(text).trail.length > was.trail.length;
      const { page: tab, kept } = await hopOn(context, i % 2 ? "ArrowLeft" : "ArrowRight", grown);
      const is = told(kept);
      expect(is.events.slice(0, was.events.length)).toEqual(was.events);
      expect(is.trail.slice(0, was.trail.length)).toEqual(was.trail);
      expect(is.events.length).toBeGreaterThan(was.events.length);
      expect(is.trail.length).toBeGreaterThan(was.trail.length);
      await kill(tab, i % 2 === 0);
      before = (await runningOf(page)).recordText;
      expect(told(before).trail.length).toBeGreaterThanOrEqual(is.trail.length);
    }
    expect((await readBase(page)).running).toHaveLength(1);
  });
});

/** Every place at which the button stands from the page's first picture on. */
const watchMoreHelp = (page: Page) =>
  page.addInitScript(() => {
    const places: string[] = [];
    Object.assign(window, { places });
    const look = () => {
      const box = document.querySelector("button.more")?.getBoundingClientRect();
      if (box && places.at(-1) !== `${box.x} ${box.y}`) places.push(`${box.x} ${box.y}`);
      requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  });

test("an attempt that is taken up has its words from its first picture: no row moves under the hand", async ({
  page,
}) => {
  const { leftAttempt } = await nodeModule<typeof Left>("tests/browser/store/leftAttempt.ts");
  await page.goto(ASIDE);
  await fillBase(page, { running: [await leftAttempt(LESSON, nodeFiles)] });
  await watchMoreHelp(page);
  await page.goto("/");
  await page.locator(".canvas-place:not(.is-empty) canvas").waitFor();
  // Words that come late come with the session's next quarter of a second.
  await page.waitForTimeout(600);
  expect(await page.evaluate(() => (window as unknown as { places: string[] }).places)).toHaveLength(1);
});

test("an ended attempt moves to the logbook, whole, and its report opens after a crash", async ({ context, page }) => {
  const { leftAttempt } = await nodeModule<typeof Left>("tests/browser/store/leftAttempt.ts");
  await page.goto(ASIDE);
  await fillBase(page, { running: [await leftAttempt(LESSON, nodeFiles)] });
  const tab = await context.newPage();
  await tab.goto("/");
  await tab.locator("#field").waitFor();
  await tab.getByRole("button", { name: /More help/ }).click();
  await tab.getByRole("button", { name: /Give up/ }).click();
  await expect(tab.getByRole("heading", { level: 1, name: /given up/ })).toBeVisible();
  await kill(tab, true);
  const { running, finished } = await readBase(page);
  expect(running).toEqual([]);
  expect(finished).toHaveLength(1);
  const again = await context.newPage();
  await again.goto(`/#/report/${finished[0]!.id}`);
  await expect(again.getByRole("heading", { level: 1 })).toHaveText("One step north: given up");
  await again.goto("/#/");
  await again.getByRole("button", { name: /Logbook/ }).click();
  await expect(again.getByRole("link", { name: /One step north/ })).toBeVisible();
});

test("data of a newer version are read and not written", async ({ context, page }) => {
  const { leftAttempt } = await nodeModule<typeof Left>("tests/browser/store/leftAttempt.ts");
  const { recordText } = await leftAttempt(LESSON, nodeFiles);
  const old = { id: "old", lessonId: LESSON, endedAtMs: 1, word: "givenUp", points: 0, stars: 0, recordText } as const;
  await page.goto(ASIDE);
  await fillBase(page, { finished: [old] }, 99);
  const tab = await context.newPage();
  await tab.goto("/#/");
  await tab.getByRole("button", { name: /Logbook/ }).click();
  await expect(tab.getByText(/newer version/)).toBeVisible();
  await tab.getByRole("link", { name: /One step north/ }).click();
  await expect(tab.getByRole("heading", { level: 1 })).toHaveText("One step north: given up");
  expect((await readBase(page)).finished).toEqual([old]);
});

/** The hop that was left is given up; its report opens. */
async function giveUp(tab: Page): Promise<void> {
  await tab.getByRole("button", { name: /More help/ }).click();
  await tab.getByRole("button", { name: /Give up/ }).click();
  await expect(tab.getByRole("heading", { level: 1, name: /given up/ })).toBeVisible();
}

async function openLogbook(tab: Page): Promise<void> {
  await tab.goto("/#/");
  await tab.getByRole("button", { name: /Logbook/ }).click();
}

/** A tab in which the left attempt is taken up. */
async function takeUp(context: BrowserContext): Promise<Page> {
  const tab = await context.newPage();
  await tab.goto("/#/lesson/3-03");
  await tab.locator("#field").waitFor();
  return tab;
}

async function leaveAttempt(page: Page): Promise<void> {
  const { leftAttempt } = await nodeModule<typeof Left>("tests/browser/store/leftAttempt.ts");
  await page.goto(ASIDE);
  await fillBase(page, { running: [await leftAttempt(LESSON, nodeFiles)] });
}

test("a newer version takes the data over during a hop: the hop ends in its report, and the logbook says why it is not kept", async ({
  context,
  page,
}) => {
  await leaveAttempt(page);
  const tab = await takeUp(context);
  await raiseVersion(page, 99);
  await giveUp(tab);
  await openLogbook(tab);
  await expect(tab.getByText(/newer version/)).toBeVisible();
  await expect(tab.getByRole("link", { name: /One step north/ })).toBeVisible();
});

test("where room runs out the attempt stays in the page, which says so, and is kept as soon as there is room", async ({
  context,
  page,
}) => {
  await leaveAttempt(page);
  const tab = await takeUp(context);
  await tab.evaluate(() => {
    const { add } = IDBObjectStore.prototype;
    Object.assign(window, { makeRoom: () => Object.assign(IDBObjectStore.prototype, { add }) });
    IDBObjectStore.prototype.add = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
  });
  await giveUp(tab);
  await openLogbook(tab);
  await expect(tab.getByText(/no room left/)).toBeVisible();
  await expect(tab.getByRole("link", { name: /One step north/ })).toBeVisible();
  expect((await readBase(page)).finished).toEqual([]);
  await tab.evaluate(() => (window as unknown as { makeRoom: () => void }).makeRoom());
  await tab.keyboard.press("Escape");
  await tab.keyboard.press("r");
  await expect.poll(async () => (await readBase(page)).finished.length).toBe(1);
});

test("an attempt that two tabs took up and ended, each in its own way, is kept twice and taken up no more", async ({
  context,
  page,
}) => {
  await leaveAttempt(page);
  const [one, other] = [await takeUp(context), await takeUp(context)];
  await giveUp(one);
  // What the other tab writes after the end opens nothing again.
  await other.keyboard.press("n");
  await expect.poll(async () => (await readBase(page)).running.length).toBe(1);
  const third = await context.newPage();
  await third.goto("/");
  await expect(third.getByRole("button", { name: /Logbook/ })).toBeVisible();
  await third.close();
  await giveUp(other);
  await expect.poll(async () => (await readBase(page)).finished.length).toBe(2);
});

test("a data base that never answers holds nothing up: the page says that nothing is kept", async ({ page }) => {
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => new EventTarget() as IDBOpenDBRequest;
  });
  await openLogbook(page);
  await expect(page.getByText(/keeps nothing/)).toBeVisible({ timeout: 15_000 });
});

/** White light costs the eye the dark, for a quarter of a minute and in the picture alone. */
import { expect, type Locator, type Page } from "@playwright/test";
import { keepRunning } from "./access/screens.ts";
import { nodeFiles } from "./golden/goldenPage.ts";
import { nodeModule } from "./nodeModule.ts";
import { findStars } from "./play/blobs.ts";
import { waitInPage } from "./play/hands.ts";
import { picture } from "./play/looks.ts";
import type { Pixels } from "./play/png.ts";
import { test } from "./play/watch.ts";
import { readBase } from "./store/idb.ts";
import type * as Left from "./store/leftAttempt.ts";

/** The torch goes out by itself, and a quarter of a minute later the eye is adapted again. */
const RECOVERS_MS = 18_000;
/** The picture without the rim in its corners, whose dial has been drawn anew. */
const fieldAlone = ({ bytes, width, channels }: Pixels): Uint8Array =>
  bytes.map((value, i) => {
    const [x, y] = [Math.floor(i / channels) % width, Math.floor(i / channels / width)].map(
      (at) => at + 0.5 - width / 2,
    );
    return Math.hypot(x!, y!) < width / 2 - 1 ? value : 0;
  });
const starsIn = async (page: Page) => findStars(await picture(page), 1).length;

/** Once the hop is there. */
async function openMoreHelp(page: Page): Promise<void> {
  await page.locator(".canvas-place:not(.is-empty) canvas").waitFor();
  await page.getByRole("button", { name: "More help" }).click();
  await waitInPage(page, 1500);
}

async function openLeft(page: Page) {
  const left = await nodeModule<typeof Left>("tests/browser/store/leftAttempt.ts");
  const running = await left.leftAttempt("3-03", nodeFiles);
  await keepRunning(page, running);
  await page.goto("/#/lesson/3-03");
  await openMoreHelp(page);
  const torches = async () => {
    const { events } = left.told((await readBase(page)).running[0]!.recordText);
    return events
      .map((text) => JSON.parse(text) as { kind: string; on?: boolean })
      .filter(({ kind }) => kind === "torch");
  };
  return { torches };
}
const turnLamp = async (page: Page, times: number) => {
  for (let i = 0; i < times; i++) {
    await page.keyboard.press("r");
    await page.locator("html[data-lamp-settled]").waitFor({ state: "attached" });
    await waitInPage(page, 300);
  }
};

/** Every limit that is told in the time in which an eye recovers, in the order in which they are told. */
const limitsTold = (said: Locator): Promise<number[]> =>
  said.evaluate(
    (element, ms) =>
      new Promise<number[]>((resolve) => {
        const seen: number[] = [];
        const watch = new MutationObserver(() => seen.push(Number(/[\d.]+$/.exec(element.textContent.trim())![0])));
        watch.observe(element, { characterData: true, subtree: true, childList: true });
        setTimeout(() => resolve(seen), ms);
      }),
    RECOVERS_MS,
  );

test("a torch puts the faint stars out; they come back, bar and rim tell it in steps of a tenth, and the record has it", async ({
  page,
}) => {
  const { torches } = await openLeft(page);
  const said = page.getByText("White light has cost your eye the dark.");
  const limit = page.getByText("Faintest star to be seen here: magnitude");
  const told = async () => Number(/[\d.]+$/.exec((await limit.textContent())!.trim())![0]);
  const bar = page.locator(".limit-bar");
  const [adapted, adaptedLimit] = [await picture(page), await told()];
  await expect(bar).not.toHaveAccessibleName(/light your eye was in/);
  const limits = limitsTold(limit);
  await page.getByRole("button", { name: /^Shine a white torch/ }).click();
  await expect(said).toHaveCount(1);
  await expect(bar).toHaveAccessibleName(/light your eye was in/);
  expect(await starsIn(page)).toBeLessThan(findStars(adapted, 1).length / 4);

  const seen = await limits;
  await expect(bar).not.toHaveAccessibleName(/light your eye was in/);
  expect(fieldAlone(await picture(page))).toEqual(fieldAlone(adapted));
  await expect.poll(async () => (await torches()).map(({ on }) => on)).toEqual([true, false]);
  const lowest = Math.min(...seen);
  expect(lowest).toBeLessThan(adaptedLimit - 2);
  expect(seen.length).toBeLessThanOrEqual(Math.round(10 * (adaptedLimit - lowest)) + 2);
  expect(new Set(seen).size).toBeGreaterThan(10);
  expect(await told()).toBe(adaptedLimit);
});

test("red and amber lamps spare the eye, white does not, unless the reader keeps it used to the dark", async ({
  page,
}) => {
  const { torches } = await openLeft(page);
  const adapted = await starsIn(page);
  await turnLamp(page, 2);
  expect(await torches()).toEqual([]);
  await turnLamp(page, 1);
  expect(await starsIn(page)).toBeLessThan(adapted / 2);
  await page.getByRole("button", { name: /^Keep my eye used to the dark/ }).click();
  await waitInPage(page, 300);
  expect(await starsIn(page)).toBe(adapted);
  await expect(page.getByRole("button", { name: /^Shine a white torch/ })).toHaveCount(0);
  await turnLamp(page, 3);
  expect(await starsIn(page)).toBe(adapted);
  await expect.poll(async () => (await torches()).length).toBe(2);
  await page.reload();
  await openMoreHelp(page);
  await expect(page.getByRole("button", { name: /^Let white light cost my eye the dark/ })).toHaveCount(1);
});

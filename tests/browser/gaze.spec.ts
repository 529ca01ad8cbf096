/** What the eye does on the page: it stares by a held hand or key, and looks beside by a key or a button. Nothing is moved by it. */
import { expect, type Page } from "@playwright/test";
import { keepRunning } from "./access/screens.ts";
import { nodeFiles } from "./golden/goldenPage.ts";
import { nodeModule } from "./nodeModule.ts";
import { findStars } from "./play/blobs.ts";
import { fieldBox, type Px, waitInPage } from "./play/hands.ts";
import { picture } from "./play/looks.ts";
import type { Pixels } from "./play/png.ts";
import { test } from "./play/watch.ts";
import type * as Faint from "./store/faintAttempt.ts";
import { readBase } from "./store/idb.ts";
import type * as Left from "./store/leftAttempt.ts";

/** A hand is held still for this long, and fades are over. */
const STARE_MS = 900;
/** Stars between the limits: plainly seen by free gaze, and well under what a stare reaches (1.5 mag less). */
const BETWEEN_MAG = { from: 0.5, to: 0.95 } as const;
/** Stands alone, away from the reticle and the rim; radii of the field. */
const ALONE = { within: 0.65, fromReticle: 0.06, fromOthers: 0.07 } as const;
/** A stare reaches three times half a degree at the eye; the mark about it lies within, too (px of the window). */
const REACH_PX = 30;
const FINGER_PX = 46;

interface Star {
  /** On the window. */
  readonly at: Px;
  /** On the picture of the field, px. */
  readonly x: number;
  readonly y: number;
}
type Modules = { left: typeof Left; faint: typeof Faint };
const modules = async (): Promise<Modules> => ({
  left: await nodeModule<typeof Left>("tests/browser/store/leftAttempt.ts"),
  faint: await nodeModule<typeof Faint>("tests/browser/store/faintAttempt.ts"),
});

/** Opens a lesson with an attempt that was left, and waits for its stars. */
async function openLeft(page: Page, running: Awaited<ReturnType<typeof Left.leftAttempt>>): Promise<void> {
  await keepRunning(page, running);
  await page.goto(`/#/lesson/${running.lessonId}`);
  await page.locator(".canvas-place:not(.is-empty) canvas").waitFor();
  await page.getByRole("button", { name: /^Look beside/ }).waitFor();
  await waitInPage(page, 1500);
}

/** A star between the limits that stands alone. */
async function starBetween(page: Page, starPx: number): Promise<Star> {
  const pixels = await picture(page);
  const stars = findStars(pixels, starPx);
  const found = stars.find(({ x, y, overLimitMag }) => {
    const between = overLimitMag > BETWEEN_MAG.from && overLimitMag < BETWEEN_MAG.to;
    const clear = Math.hypot(x, y) < ALONE.within && Math.min(Math.abs(x), Math.abs(y)) > ALONE.fromReticle;
    const near = stars.filter((other) => Math.hypot(other.x - x, other.y - y) < ALONE.fromOthers);
    return between && clear && near.length === 1;
  });
  if (!found) throw new Error(`no star between the limits among ${stars.length}`);
  const { middle, radiusPx } = await fieldBox(page);
  const half = pixels.width / 2;
  return {
    at: { x: middle.x + found.x * radiusPx, y: middle.y - found.y * radiusPx },
    x: half * (1 + found.x),
    y: half * (1 - found.y),
  };
}

const green = ({ width, channels, bytes }: Pixels, x: number, y: number) =>
  bytes[(Math.floor(y) * width + Math.floor(x)) * channels + 1]!;
/** The brightest of a star's place over the sky beside it, display values. */
function brightness(pixels: Pixels, { x, y }: Pick<Star, "x" | "y">): number {
  let most = 0;
  for (let dy = -2; dy <= 2; dy++)
    for (let dx = -2; dx <= 2; dx++) most = Math.max(most, green(pixels, x + dx, y + dy));
  return most - green(pixels, x + 8, y - 8);
}
/** Pixels that differ outside of what a stare reaches. */
function differingBeyond(a: Pixels, b: Pixels, { x, y }: Star, reachPx: number): number {
  let count = 0;
  for (let row = 0; row < a.height; row++)
    for (let column = 0; column < a.width; column++)
      if (Math.hypot(column - x, row - y) > reachPx && green(a, column, row) !== green(b, column, row)) count += 1;
  return count;
}

/** What was recorded since, once the page has written it. */
async function recorded(page: Page, { left }: Modules, before: number, count: number) {
  const now = async () => left.told((await readBase(page)).running[0]!.recordText);
  await expect.poll(async () => (await now()).events.length - before).toBe(count);
  const { events, trail } = await now();
  const since = events.slice(before).map((text) => JSON.parse(text) as { kind: string; on?: boolean; tMs: number });
  return { since, trail };
}
/** Nothing but rests came to a trail: the hand moved nothing, and the tube is where it was. */
function expectAtRest(trail: readonly string[], was: readonly string[]): void {
  const place = (sample: string) => sample.split(" ").slice(1, 3);
  expect(trail.slice(0, was.length)).toEqual(was);
  for (const sample of trail.slice(was.length)) {
    expect(place(sample)).toEqual(place(was.at(-1)!));
    expect(sample.split(" ").at(3)).toBe("0");
  }
}

test.describe("at the window", () => {
  test("a pointer held still on a faint star makes it go, and nothing moves", async ({ page }) => {
    const known = await modules();
    const running = await known.left.leftAttempt("3-03", nodeFiles);
    const was = known.left.told(running.recordText);
    await openLeft(page, running);
    const star = await starBetween(page, 1);
    const free = await picture(page);
    await page.mouse.move(star.at.x, star.at.y);
    await page.mouse.down();
    await expect(page.getByText("You stare:")).toHaveCount(0);
    await expect(page.getByText("You stare:")).toHaveCount(1);
    await waitInPage(page, STARE_MS);
    const stared = await picture(page);
    await page.mouse.up();
    await expect(page.getByText("You stare:")).toHaveCount(0);
    await waitInPage(page, STARE_MS);
    const after = await picture(page);

    expect(brightness(free, star)).toBeGreaterThan(40);
    expect(brightness(stared, star)).toBeLessThan(8);
    expect(differingBeyond(free, stared, star, REACH_PX)).toBe(0);
    expect(brightness(after, star)).toBe(brightness(free, star));
    const { since, trail } = await recorded(page, known, was.events.length, 2);
    expect(since).toEqual([
      { kind: "stare", on: true, tMs: since[0]!.tMs },
      { kind: "stare", on: false, tMs: since[1]!.tMs },
    ]);
    expect(since[1]!.tMs).toBeGreaterThan(since[0]!.tMs);
    expectAtRest(trail, was.trail);
  });

  test("a hand that moves pushes, and ends a stare", async ({ page }) => {
    const known = await modules();
    const running = await known.left.leftAttempt("3-03", nodeFiles);
    const was = known.left.told(running.recordText);
    await openLeft(page, running);
    const { middle } = await fieldBox(page);
    await page.mouse.move(middle.x + 60, middle.y + 60);
    await page.mouse.down();
    await expect(page.getByText("You stare:")).toHaveCount(1);
    await page.mouse.move(middle.x + 62, middle.y + 61);
    await expect(page.getByText("You stare:")).toHaveCount(1);
    await page.mouse.move(middle.x + 80, middle.y + 60);
    await expect(page.getByText("You stare:")).toHaveCount(0);
    await page.mouse.move(middle.x + 140, middle.y + 60);
    await page.mouse.up();
    const { since } = await recorded(page, known, was.events.length, 3);
    expect(since.map(({ kind, on }) => [kind, on])).toEqual([
      ["stare", true],
      ["stare", false],
      ["push", undefined],
    ]);
  });

  test("by keys: beside what comes and goes it holds, brighter; stared at it goes; letting go of the window lets go", async ({
    page,
  }) => {
    const known = await modules();
    const running = await known.faint.faintAttempt(nodeFiles);
    await openLeft(page, running);
    const was = known.left.told(running.recordText);
    const { radiusPx } = await fieldBox(page);
    /** Light of the middle over that of the sky two fifths out, display values, on the mean. */
    const glow = async () => {
      const pixels = await picture(page);
      const mean = (x: number, y: number) => {
        let sum = 0;
        for (let dy = -4; dy <= 4; dy++)
          for (let dx = -4; dx <= 4; dx++) sum += green(pixels, radiusPx + x + dx, radiusPx + y + dy);
        return sum / 81;
      };
      return mean(0, 0) - mean(0.3 * radiusPx, 0.3 * radiusPx);
    };
    await page.locator("#field").focus();
    const free = await glow();
    await page.keyboard.down("v");
    await expect(page.getByRole("button", { name: /^Look beside/ })).toHaveAttribute("aria-pressed", "true");
    await expect(page.getByText("You look beside:")).toHaveCount(1);
    await waitInPage(page, 300);
    const beside = await glow();
    await page.keyboard.up("v");
    await expect(page.getByText("You look beside:")).toHaveCount(0);
    await page.keyboard.down("g");
    await waitInPage(page, 300);
    const stared = await glow();
    await page.evaluate(() => dispatchEvent(new Event("blur")));
    await waitInPage(page, 300);
    expect(free).toBeGreaterThan(4);
    expect(beside).toBeGreaterThan(1.3 * free);
    expect(stared).toBeLessThan(0.5 * free);
    expect(await glow()).toBeCloseTo(free, 6);
    const { since, trail } = await recorded(page, known, was.events.length, 4);
    expect(since.map(({ kind, on }) => [kind, on])).toEqual([
      ["avert", true],
      ["avert", false],
      ["stare", true],
      ["stare", false],
    ]);
    expectAtRest(trail, was.trail);
  });
});

test.describe("on a phone", () => {
  test.use({ viewport: { width: 390, height: 844 }, deviceScaleFactor: 2, hasTouch: true, isMobile: true });

  test("a finger held still stares past its tip, and a button looks beside while it is held, or until the next press", async ({
    page,
  }) => {
    const known = await modules();
    const running = await known.left.leftAttempt("3-03", nodeFiles);
    const was = known.left.told(running.recordText);
    await openLeft(page, running);
    const session = await page.context().newCDPSession(page);
    const touch = (type: "touchStart" | "touchEnd", at?: Px) =>
      session.send("Input.dispatchTouchEvent", { type, touchPoints: at ? [{ x: at.x, y: at.y }] : [] });

    const star = await starBetween(page, 2 * 0.86);
    const free = await picture(page);
    await touch("touchStart", { x: star.at.x, y: star.at.y + FINGER_PX });
    await expect(page.getByText("You stare:")).toHaveCount(1);
    await waitInPage(page, 300);
    const stared = await picture(page);
    await touch("touchEnd");
    await waitInPage(page, 300);
    expect(brightness(free, star)).toBeGreaterThan(40);
    expect(brightness(stared, star)).toBeLessThan(12);
    expect(differingBeyond(free, stared, star, 2 * REACH_PX)).toBe(0);
    expect(brightness(await picture(page), star)).toBe(brightness(free, star));

    const button = page.getByRole("button", { name: /^Look beside/ });
    const box = (await button.boundingBox())!;
    const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    await touch("touchStart", middle);
    await expect(button).toHaveAttribute("aria-pressed", "true");
    await waitInPage(page, STARE_MS);
    await touch("touchEnd");
    await expect(button).toHaveAttribute("aria-pressed", "false");
    await touch("touchStart", middle);
    await touch("touchEnd");
    await expect(button).toHaveAttribute("aria-pressed", "true");
    await touch("touchStart", middle);
    await touch("touchEnd");
    await expect(button).toHaveAttribute("aria-pressed", "false");
    const { since, trail } = await recorded(page, known, was.events.length, 6);
    expect(since.map(({ kind }) => kind)).toEqual(["stare", "stare", "avert", "avert", "avert", "avert"]);
    expectAtRest(trail, was.trail);
  });
});

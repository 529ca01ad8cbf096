/** The night and the gear in the hand of the learner: time set and stopped, and the finder's screws. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, type Page } from "@playwright/test";
import { fieldBox, waitInPage } from "./play/hands.ts";
import { anchorTold } from "./play/looks.ts";
import { openLesson } from "./play/openLesson.ts";
import { createMouseHand } from "./play/pointers.ts";
import { seekAnchor } from "./play/seekAnchor.ts";
import { test } from "./play/watch.ts";

const LESSON = readFileSync(fileURLToPath(new URL("../../lessons/1-01.yaml", import.meta.url)), "utf8");
/** The first lesson under a sky that turns, with a finder that stands beside its telescope. */
const TURNING = LESSON.replaceAll("binocular-10x50", "finder-9x50")
  .replace("use: [finder-9x50]", "use: [finder-9x50, newton200-48x]\n  finderOffDeg: [0.4, 0.3]")
  .replace("claim: finder-9x50", "claim: newton200-48x")
  .replace("briefing:", "drift: true\nbriefing:");

/** A busy machine draws late, and each look takes longer than it waits. */
const SLOW_MS = 20_000;

const conditions = (page: Page) => page.getByRole("region", { name: "Night" });
const slider = (page: Page) => page.getByRole("slider", { name: "Time of the night" });
const openMore = (page: Page) => page.getByRole("button", { name: "More help" }).click();

async function tryTurning(page: Page): Promise<void> {
  await page.goto("/#/bench");
  await page.getByRole("textbox", { name: "Text of the lesson" }).fill(TURNING);
  await expect(page.getByRole("button", { name: "Try it" })).toBeEnabled();
  await page.getByRole("button", { name: "Try it" }).click();
  await page.getByRole("button", { name: "Begin", exact: true }).click();
  await page.locator("#field").focus();
}

test("before the hop the time goes by keys and by the slider, and once the anchor is found it stands", async ({
  page,
}) => {
  const player = await openLesson(page, "1-01", createMouseHand(page));
  await player.hand.press("begin");
  await expect(conditions(page)).toContainText("20:00");
  await page.keyboard.press("t");
  await expect(conditions(page)).toContainText("20:10");
  await page.keyboard.press("Shift+T");
  await page.keyboard.press("Shift+T");
  await expect(conditions(page)).toContainText("19:50");
  await expect(page.getByText("It is 19:50.")).toBeVisible();

  await openMore(page);
  await expect(slider(page)).toHaveAttribute("aria-valuetext", "19:50");
  await slider(page).focus();
  await page.keyboard.press("ArrowRight");
  await expect(conditions(page)).toContainText("20:00");
  const box = (await slider(page).boundingBox())!;
  await page.mouse.click(box.x + box.width - 2, box.y + box.height / 2);
  const latest = await slider(page).getAttribute("max");
  await expect(slider(page)).toHaveValue(latest!);
  await page.locator("#field").focus();
  await page.keyboard.press("t");
  await expect(page.getByText("as far as the night goes")).toBeVisible();
  await page.getByRole("button", { name: "Less help" }).click();
  await expect(page.getByText("is below the horizon. The hop cannot start.")).toBeVisible();
  await page.getByRole("button", { name: "Back to 20:00" }).click();
  await expect(conditions(page)).toContainText("20:00");
  await expect(page.getByText("is below the horizon.")).toHaveCount(0);

  await seekAnchor(player);
  await page.keyboard.press("t");
  await expect(page.getByText("Now the sky would carry the tube.")).toBeVisible();
  await expect(conditions(page)).toContainText("20:00");
  await openMore(page);
  await expect(page.getByRole("button", { name: "Give up this hop" })).toBeVisible();
  await expect(slider(page)).toHaveCount(0);
});

test("a turning sky is stopped and let go on", async ({ page }) => {
  await tryTurning(page);
  await page.keyboard.press("n");
  const { middle, radiusPx } = await fieldBox(page);
  const half = radiusPx / 2;
  const clip = { x: middle.x - half, y: middle.y - half, width: radiusPx, height: radiusPx };
  /** Whether the stars stand still for a while. */
  const stands = async () => {
    const before = await page.screenshot({ clip });
    await waitInPage(page, 1500);
    return before.equals(await page.screenshot({ clip }));
  };
  await expect.poll(stands, { message: "the sky turns", timeout: SLOW_MS }).toBe(false);
  await page.keyboard.press("z");
  await expect(page.getByText("The sky stands still until")).toBeVisible();
  await expect.poll(stands, { message: "the sky is stopped", timeout: SLOW_MS }).toBe(true);
  await openMore(page);
  const row = page.getByRole("button", { name: "Let the sky turn on" });
  await expect(row).toHaveAttribute("aria-pressed", "true");
  await row.click();
  await expect(page.getByRole("button", { name: "Stop the turning sky" })).toHaveAttribute("aria-pressed", "false");
  await expect.poll(stands, { message: "the sky turns on", timeout: SLOW_MS }).toBe(false);
});

test("screws move the finder's stars and not the telescope, by mouse and by keys, until they are let go", async ({
  page,
}) => {
  await tryTurning(page);
  await page.keyboard.press("z");
  const { middle, radiusPx } = await fieldBox(page);
  const dragRight = async (px: number) => {
    await page.mouse.move(middle.x, middle.y);
    await page.mouse.down();
    await page.mouse.move(middle.x + px, middle.y, { steps: 8 });
    await page.mouse.up();
  };
  const before = (await anchorTold(page))!;
  await openMore(page);
  await page.getByRole("button", { name: "Turn the finder's screws" }).click();
  await expect(page.getByText("Your hand is on the finder's screws.")).toBeVisible();
  const acrossOf = ({ out, clock }: typeof before) => out * Math.sin((clock * Math.PI) / 6);
  // Towards the middle, so that the anchor stays in view.
  const way = acrossOf(before) > 0 ? -1 : 1;
  await dragRight(way * 0.5 * radiusPx);
  const after = (await anchorTold(page))!;
  expect(way * acrossOf(after), "its stars follow the hand").toBeGreaterThan(way * acrossOf(before) + 0.2);

  await page.locator("#field").focus();
  await page.keyboard.press("a");
  await expect(page.getByText("Your hand is on the finder's screws.")).toHaveCount(0);
  await page.keyboard.press("a");
  await expect(page.getByText("Your hand is on the finder's screws.")).toBeVisible();
  const back = way > 0 ? "ArrowLeft" : "ArrowRight";
  // In short holds: on a slow page a long one can take the anchor out of view.
  let returned = after;
  for (let i = 0; i < 12 && way * acrossOf(returned) >= way * acrossOf(after) - 0.2; i++) {
    await page.keyboard.down(back);
    await waitInPage(page, 150);
    await page.keyboard.up(back);
    returned = (await anchorTold(page))!;
  }
  expect(way * acrossOf(returned), "they follow the arrow back").toBeLessThan(way * acrossOf(after) - 0.2);

  await page.keyboard.press("n");
  await expect(page.getByText("Your hand is on the finder's screws."), "the eyepiece has none").toHaveCount(0);
  await page.keyboard.press("a");
  await expect(page.getByText("Screws are on the finder.")).toBeVisible();
});

test("the table of keys names them", async ({ page }) => {
  await openLesson(page, "1-01", createMouseHand(page));
  await page.keyboard.press("k");
  for (const words of ["ten minutes later", "ten minutes earlier", "stop the turning sky", "finder's screws"])
    await expect(page.getByRole("row", { name: new RegExp(words) })).toBeVisible();
});

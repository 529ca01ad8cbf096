/** Lessons played to their reports by one who sees field and sheet alone. */
import { expect } from "@playwright/test";
import { createKeyHand } from "./play/keys.ts";
import { openLesson } from "./play/openLesson.ts";
import { playLesson } from "./play/player.ts";
import { createMouseHand } from "./play/pointers.ts";
import { foundWithPoints } from "./play/report.ts";
import { test } from "./play/watch.ts";

/** A hop takes half a minute; on a machine that is busy with other things, several times that. */
test.setTimeout(240_000);
/** The whole table, a little smaller than it is drawn: there are fewer pixels to wait for. */
test.use({ viewport: { width: 1200, height: 750 } });
test.describe.configure({ mode: "parallel" });

const HANDS = [
  ["keys alone", createKeyHand],
  ["dragging", createMouseHand],
] as const;

for (const [by, createHand] of HANDS) {
  test(`the first lesson by ${by}: found at the first claim`, async ({ page }) => {
    await playLesson(await openLesson(page, "1-01", createHand(page)));
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("Push, look, claim: found");
    await expect(page.getByText("Found at the first claim.")).toBeVisible();
    const row = page.locator("table.sum tbody tr");
    await expect(row.locator("th")).toHaveText("Claims");
    await expect(row.locator("td").first()).toHaveText("1");
    await expect(row.locator("td").last()).toHaveText("3 of 3 dots");
  });

  test(`the southern lesson by ${by}: found, with lines that add up`, async ({ page }) => {
    await playLesson(await openLesson(page, "3-04s", createHand(page)));
    expect(await foundWithPoints(page)).toBeGreaterThanOrEqual(70);
  });
}

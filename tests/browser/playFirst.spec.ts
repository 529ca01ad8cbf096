/** The first minute of somebody who has never been here. */
import { expect } from "@playwright/test";
import { waitInPage } from "./play/hands.ts";
import { openLesson } from "./play/openLesson.ts";
import { createMouseHand } from "./play/pointers.ts";
import { seekAnchor } from "./play/seekAnchor.ts";
import { test } from "./play/watch.ts";

const MOST_MS = 60_000;
const REST_MS = 1200;

test("the page opens on the first lesson, and within a minute a claim is made and answered, then a nothing seen", async ({
  page,
}) => {
  const player = await openLesson(page, "1-01", createMouseHand(page));
  await page.goto("about:blank");
  const startMs = Date.now();
  await page.goto("/");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Push, look, claim");
  await expect(page.locator("ul.briefing li")).toHaveCount(3);
  await player.hand.press("begin");
  await seekAnchor(player);
  await waitInPage(page, REST_MS);
  await player.hand.press("claim");
  await expect(page.getByText("That is a star; the cluster is a handful close together.")).toBeVisible();
  await expect(page.locator(".arc-button.claim"), "the claim dims").toHaveClass(/wrong-odd/);
  expect(Date.now() - startMs).toBeLessThan(MOST_MS);

  await player.hand.press("notSeen");
  await expect(page.getByText("Either the place is another")).toBeVisible();
  await expect(page.locator(".arc-button.claim"), "it dims once more").toHaveClass(/wrong-even/);
});

/** The README's pictures, from the program itself: a lesson is played, and looked at on the way. */
import { nodeFiles } from "../golden/goldenPage.ts";
import { nodeModule } from "../nodeModule.ts";
import type * as Sheets from "../play/hopSheet.ts";
import { playLesson } from "../play/player.ts";
import { createMouseHand } from "../play/pointers.ts";
import { test } from "../play/watch.ts";

const FOLDER = "src/tools/pictures";

test("the finder and the report", async ({ page }) => {
  const { hopSheet } = await nodeModule<typeof Sheets>("tests/browser/play/hopSheet.ts");
  const sheet = await hopSheet("3-03", nodeFiles);
  await page.goto("/#/lesson/3-03");
  await page.getByRole("button", { name: "Begin" }).waitFor();
  const hand = createMouseHand(page);
  let taken = false;
  const shot = setInterval(async () => {
    const finder = await page
      .locator("#field[aria-label^='Finder']")
      .count()
      .catch(() => 0);
    if (taken || finder === 0) return;
    taken = true;
    await page.waitForTimeout(900);
    await page.screenshot({ path: `${FOLDER}/finder.jpg`, type: "jpeg", quality: 82 });
  }, 400);
  await playLesson({ page, hand, sheet, starPx: 1 });
  clearInterval(shot);
  await page.waitForTimeout(1500);
  await page.screenshot({ path: `${FOLDER}/report.jpg`, type: "jpeg", quality: 82 });
});

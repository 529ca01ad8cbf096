/** Where the processor puts the page together, as here, nothing of it is left unpainted. */
import { expect } from "@playwright/test";
import { openLesson } from "./play/openLesson.ts";
import { readPng } from "./play/png.ts";
import { createMouseHand } from "./play/pointers.ts";
import { test } from "./play/watch.ts";

test("the open sky goes on under the sheet: no pixel is black or missing", async ({ page }) => {
  await openLesson(page, "3-03", createMouseHand(page));
  await page.locator("#sheet-place canvas").waitFor();
  const { bytes, channels } = readPng(await page.screenshot());
  let unpainted = 0;
  for (let i = 0; i < bytes.length; i += channels) {
    const [r, g, b, a = 255] = [bytes[i]!, bytes[i + 1]!, bytes[i + 2]!, channels === 4 ? bytes[i + 3]! : 255];
    if (a < 255 || r + g + b === 0) unpainted += 1;
  }
  // An icon's edge may be black; the strip had forty thousand.
  expect(unpainted).toBeLessThan(50);
});

/** Where the focus is, and whether it is seen there. */
import type { Page } from "@playwright/test";
import { readPng } from "../play/png.ts";

/** A mark lies so far outside of what it marks at most: the field's, outside of the rim. */
const AROUND_PX = 64;
/** Channels that differ by so much are seen to differ; a focus mark has so many such pixels at least. */
const SEEN_STEP = 50;
const LEAST_PX = 60;

/** What has the focus, by its place in the page and its name. */
export const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const element = document.activeElement;
    if (!element || element === document.body) return "nothing";
    const places = [
      ["field", ".field"],
      ["claim", ".arc-button"],
      ["beside", ".beside-button"],
      ["ladder", "nav.ladder, nav.ladder-row"],
      ["sheet", ".sheet-place"],
      ["sheet tools", ".sheet-side"],
      ["hints", ".words .rows"],
      ["words", ".words"],
      ["tools", ".tools"],
      ["keys", ".keys-panel"],
      ["title", ".lesson-title"],
    ] as const;
    const [place] = places.find(([, selector]) => element.closest(selector)) ?? ["page"];
    const name = element.getAttribute("aria-label") ?? element.textContent?.trim() ?? "";
    return `${place}: ${name.replace(/\s+/g, " ").slice(0, 60)}`;
  });

/** The part of the window about what has the focus. */
const placeOfFocus = (page: Page) =>
  page.evaluate((around) => {
    const element = document.activeElement!;
    const boxes = [element, ...element.querySelectorAll("svg")].map((one) => one.getBoundingClientRect());
    const drawn = boxes.filter(({ width, height }) => width > 0 && height > 0);
    const x = Math.max(0, Math.min(...drawn.map(({ left }) => left)) - around);
    const y = Math.max(0, Math.min(...drawn.map(({ top }) => top)) - around);
    const right = Math.min(innerWidth, Math.max(...drawn.map((box) => box.right)) + around);
    const bottom = Math.min(innerHeight, Math.max(...drawn.map((box) => box.bottom)) + around);
    return { x, y, width: right - x, height: bottom - y };
  }, AROUND_PX);

/** Takes the focus away and gives it back: true where that is to be seen on the window. */
export async function isFocusSeen(page: Page): Promise<boolean> {
  const clip = await placeOfFocus(page);
  const picture = async () => readPng(await page.screenshot({ clip }));
  const withIt = await picture();
  const handle = await page.evaluateHandle(() => {
    const element = document.activeElement as HTMLElement;
    element.blur();
    return element;
  });
  const without = await picture();
  await handle.evaluate((element) => element.focus());
  let count = 0;
  for (let i = 0; i < withIt.bytes.length; i++)
    if (Math.abs(withIt.bytes[i]! - without.bytes[i]!) > SEEN_STEP) count += 1;
  return count / withIt.channels >= LEAST_PX;
}

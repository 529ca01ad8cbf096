/** Opens a lesson and puts its sheet into a player's hands. */
import type { Page } from "@playwright/test";
import { nodeFiles } from "../golden/goldenPage.ts";
import { nodeModule } from "../nodeModule.ts";
import type { Hand } from "./hands.ts";
import type * as Sheets from "./hopSheet.ts";
import type { Player } from "./looks.ts";

/** @param starPx see Player */
export async function openLesson(page: Page, id: string, hand: Hand, starPx = 1): Promise<Player> {
  const { hopSheet } = await nodeModule<typeof Sheets>("tests/browser/play/hopSheet.ts");
  const sheet = await hopSheet(id, nodeFiles);
  await page.goto(`/#/lesson/${id}`);
  await page.getByRole("button", { name: "Begin" }).waitFor();
  return { page, hand, sheet, starPx };
}

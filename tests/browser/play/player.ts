/** Plays a lesson as somebody does who sees the field and has the sheet: nothing else is asked of the page. */
import { expect, type Page } from "@playwright/test";
import type { LearnerMove, Look, PaperPoint } from "#core/rehearsal/types.ts";
import { type Px, waitInPage } from "./hands.ts";
import type { HopSheet } from "./hopSheet.ts";
import { fieldRadOf, isPinAsked, look, type Player, WORDS_MS } from "./looks.ts";
import { seekAnchor } from "./seekAnchor.ts";

/** Time for the tube to come to rest and for the page to say so. */
const REST_MS = 1050;
/** After a short push, which tells which way is which, nobody waits for more than the picture. */
const SHORT_FIELDS = 0.2;
const SHORT_REST_MS = 400;
const MOST_MOVES = 25;

/** From the open briefing to the report. @throws Error where the learner gives up or is not done in time */
export async function playLesson(player: Player): Promise<void> {
  await player.hand.press("begin");
  await seekAnchor(player);
  if (player.sheet.lesson.gear.hopping.startsWith("finder")) await player.hand.take(/Finder/);
  await waitInPage(player.page, REST_MS);
  await hop(player);
}

async function hop(player: Player): Promise<void> {
  const { page, sheet } = player;
  const told: string[] = [];
  for (let i = 0; i < MOST_MOVES; i++) {
    const seen = await look(player);
    const move = sheet.learner.next(seen);
    told.push(tellMove(move, seen));
    await carryOut(player, move);
    if (move.kind === "claim" && (await isOver(page))) return;
  }
  throw new Error(`not done after ${told.join("; ")}; the page says: ${await page.locator("main").textContent()}`);
}

/** A move and what it was made upon, for the one who reads of a failure. */
function tellMove(move: LearnerMove, { stars, patches }: Look): string {
  const { kind, ...how } = move;
  const patchesAt = patches.map(({ x, y }) => `${x.toFixed(3)}/${y.toFixed(3)}`).join(" ");
  return `${kind} ${JSON.stringify(how)} on ${stars.count} stars, patches ${patchesAt || "none"}`;
}

/** Whether a claim has ended the hop; then the report is awaited. */
async function isOver(page: Page): Promise<boolean> {
  await waitInPage(page, WORDS_MS);
  const goesOn = (await isPinAsked(page)) || (await page.locator(".arc-button.claim").count()) > 0;
  if (goesOn) return false;
  await expect(page.locator("main.report h1")).toBeVisible({ timeout: 20_000 });
  return true;
}

async function carryOut({ page, hand, sheet }: Player, move: LearnerMove): Promise<void> {
  switch (move.kind) {
    case "push": {
      const fieldRad = await fieldRadOf(page);
      const [right, up] = [move.axis1 / fieldRad, move.axis2 / fieldRad];
      await hand.push(right, up);
      return waitInPage(page, Math.hypot(right, up) < SHORT_FIELDS ? SHORT_REST_MS : REST_MS);
    }
    case "pin":
      await hand.pin(() => placeOnSheet(page, sheet, move.at));
      return waitInPage(page, WORDS_MS);
    case "use":
      await hand.take(/Eyepiece/);
      return waitInPage(page, REST_MS);
    case "claim":
      await waitInPage(page, REST_MS);
      return hand.press(move.says === "here" ? "claim" : "notSeen");
    case "restart":
      await hand.press("home");
      return waitInPage(page, REST_MS);
    case "giveUp":
      throw new Error("the learner gives up");
  }
}

/** Where a place of the printed page lies on the window, as the paper lies now. */
async function placeOnSheet(page: Page, { page: { widthPx } }: HopSheet, at: PaperPoint): Promise<Px> {
  const lie = await page.locator(".sheet").evaluate((sheet) => {
    const { left, top, width, height } = sheet.getBoundingClientRect();
    const { translate, rotate, scale } = getComputedStyle(sheet.querySelector(".sheet-paper")!);
    return { x: left + width / 2, y: top + height / 2, width, translate, rotate, scale };
  });
  const [dx = 0, dy = 0] = lie.translate.split(" ").map((part) => Number.parseFloat(part) || 0);
  const turn = lie.rotate === "none" ? 0 : (Number.parseFloat(lie.rotate) * Math.PI) / 180;
  const k = lie.width / widthPx;
  const [x, y] = [at.x * k * (lie.scale.startsWith("-1") ? -1 : 1), at.y * k];
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return { x: lie.x + dx + c * x - s * y, y: lie.y + dy + s * x + c * y };
}

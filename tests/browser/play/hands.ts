/** Three ways to do the same on the page: by keys alone, by mouse, by touch. */
import type { Page } from "@playwright/test";

/** A place or a way on the window, CSS px, x right and y down. */
export interface Px {
  readonly x: number;
  readonly y: number;
}
/** The circle of the window that the field fills. */
export interface FieldBox {
  readonly middle: Px;
  readonly radiusPx: number;
}
export type Press = "begin" | "confirm" | "claim" | "notSeen" | "home";

export interface Hand {
  /** Pushes by so many fields, right and up, as seen by one who faces the target. */
  push(right: number, up: number): Promise<void>;
  /** Looks round with the naked eye, by so many fields. */
  lookRound(right: number, up: number): Promise<void>;
  /** Takes an instrument by its kind, as the page names it. */
  take(name: RegExp): Promise<void>;
  press(what: Press): Promise<void>;
  /** Makes sure that the field is before the eye, where only one thing is at a time. */
  toField(): Promise<void>;
  /** Answers on the sheet: `placeNow` tells where on the window the place is. */
  pin(placeNow: () => Promise<Px>): Promise<void>;
}

export const fieldBox = async (page: Page): Promise<FieldBox> => {
  const box = await page.locator("#field").boundingBox();
  if (!box) throw new Error("no field on the page");
  return { middle: { x: box.x + box.width / 2, y: box.y + box.height / 2 }, radiusPx: box.width / 2 };
};

/** The middle of the claim's arc, under the field. */
export async function claimPlace(page: Page): Promise<Px> {
  const { middle, radiusPx } = await fieldBox(page);
  const box = await page.locator(".arc-button.claim svg").boundingBox();
  if (!box) throw new Error("no claim on the rim");
  return { x: middle.x, y: (middle.y + radiusPx + box.y + box.height) / 2 };
}

/** The middle of "nothing seen" beside it, or of the button of that name where the rim has no room for one. */
export async function notSeenPlace(page: Page): Promise<Px> {
  const arc = page.locator(".arc-button.not-seen svg");
  const drawnAt = (await arc.count()) > 0 ? arc : page.getByRole("button", { name: "Right place, nothing seen" });
  const box = await drawnAt.boundingBox();
  if (!box || box.width === 0) throw new Error("no way to say that nothing is seen");
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** A place on the ring of an instrument, or on its name where the instruments stand in a row. */
export async function ringPlace(page: Page, name: RegExp): Promise<Px> {
  const button = page.getByRole("button", { name }).and(page.locator(".ring, .rung"));
  const box = await button.boundingBox();
  if (!box) throw new Error(`no instrument ${name}`);
  const onRing = await button.evaluate((element) => element.classList.contains("ring"));
  return { x: box.x + box.width / 2, y: box.y + (onRing ? 5 : box.height / 2) };
}

export const sleep = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** Waits as the page counts time: on a busy machine its own timers are late, and this with them. */
export const waitInPage = (page: Page, ms: number): Promise<void> =>
  page.evaluate((forMs) => new Promise<void>((resolve) => setTimeout(resolve, forMs)), ms);

/** Until the page has drawn, and with it taken in what was done before. */
export const drawn = (page: Page): Promise<void> =>
  page.evaluate(() => new Promise<void>((resolve) => requestAnimationFrame(() => resolve())));

/** Steps of a drag, and their pace: as a hand moves, not at once. */
const DRAG = { stepPx: 24, leastSteps: 4, everyMs: 22 } as const;

/** Places of a drag by so many px about a middle. */
export function dragPlaces({ x, y }: Px, dx: number, dy: number): Px[] {
  const steps = Math.max(DRAG.leastSteps, Math.ceil(Math.hypot(dx, dy) / DRAG.stepPx));
  return Array.from({ length: steps + 1 }, (_, i) => ({
    x: x + dx * (i / steps - 0.5),
    y: y + dy * (i / steps - 0.5),
  }));
}
export const dragPause = (): Promise<void> => sleep(DRAG.everyMs);

/** The longest drag that stays within the field, px; longer ones are made of several. */
export function partsOf(right: number, up: number, radiusPx: number): { dx: number; dy: number; count: number } {
  const [dx, dy] = [2 * radiusPx * right, -2 * radiusPx * up];
  const count = Math.max(1, Math.ceil(Math.hypot(dx, dy) / (1.5 * radiusPx)));
  return { dx: dx / count, dy: dy / count, count };
}

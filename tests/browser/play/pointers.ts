/** Mouse and finger: drags on the field, presses on what is drawn, taps on the sheet. */
import type { CDPSession, Page } from "@playwright/test";
import {
  claimPlace,
  dragPause,
  dragPlaces,
  drawn,
  fieldBox,
  type Hand,
  notSeenPlace,
  type Press,
  type Px,
  partsOf,
  ringPlace,
} from "./hands.ts";

/** What a pointer does, whatever it is. */
interface Pointer {
  tap(at: Px): Promise<void>;
  drag(places: readonly Px[]): Promise<void>;
}

function createMouse({ mouse }: Page): Pointer {
  return {
    tap: ({ x, y }) => mouse.click(x, y),
    async drag(places) {
      await mouse.move(places[0]!.x, places[0]!.y);
      await mouse.down();
      for (const { x, y } of places.slice(1)) {
        await mouse.move(x, y);
        await dragPause();
      }
      await mouse.up();
    },
  };
}

/** Browsers take a finger that moves less than this for one that is held still. */
const SLOP_PX = 18;
/** A short drag goes out of that first, and comes back, as one learns to do with a finger. */
function outOfTheSlop(places: readonly Px[]): Px[] {
  const [from, to] = [places[0]!, places.at(-1)!];
  if (Math.hypot(to.x - from.x, to.y - from.y) > SLOP_PX) return [];
  return [0.5, 1, 1.5, 1].map((far) => ({ x: from.x, y: from.y + far * SLOP_PX }));
}

function createFinger(session: CDPSession, page: Page): Pointer {
  const send = (type: "touchStart" | "touchMove" | "touchEnd", at?: Px) =>
    session.send("Input.dispatchTouchEvent", { type, touchPoints: at ? [{ x: at.x, y: at.y }] : [] });
  return {
    async tap(at) {
      await send("touchStart", at);
      await send("touchEnd");
    },
    async drag(places) {
      await send("touchStart", places[0]);
      for (const place of [...outOfTheSlop(places), ...places.slice(1)]) {
        await send("touchMove", place);
        // A busy page takes the moves of one frame for one: a finger that went out and came back would not have moved.
        await drawn(page);
        await dragPause();
      }
      await send("touchEnd");
    },
  };
}

function createPointerHand(page: Page, pointer: Pointer): Hand {
  const named = (name: string | RegExp) => page.getByRole("button", { name });
  const tapOn = async (name: string | RegExp) => {
    const box = await named(name).boundingBox();
    if (!box) throw new Error(`no button ${name}`);
    await pointer.tap({ x: box.x + box.width / 2, y: box.y + box.height / 2 });
  };
  const push = async (right: number, up: number) => {
    const { middle, radiusPx } = await fieldBox(page);
    const { dx, dy, count } = partsOf(right, up, radiusPx);
    for (let i = 0; i < count; i++) await pointer.drag(dragPlaces(middle, dx, dy));
  };
  const press: Readonly<Record<Press, () => Promise<void>>> = {
    begin: () => tapOn("Begin"),
    confirm: async () => pointer.tap(await claimPlace(page)),
    claim: async () => pointer.tap(await claimPlace(page)),
    notSeen: async () => pointer.tap(await notSeenPlace(page)),
    home: () => tapOn(/Back to the anchor/),
  };
  return {
    push,
    // The sky follows the hand: it goes the other way.
    lookRound: (right, up) => push(-right, -up),
    take: async (name) => pointer.tap(await ringPlace(page, name)),
    press: (what) => press[what](),
    async toField() {
      if ((await page.locator("#field").count()) === 0) await tapOn(/^To the field/);
      await page.locator("#field").waitFor();
    },
    async pin(placeNow) {
      if ((await page.locator(".sheet-paper").count()) === 0) await tapOn("Sheet");
      await page.locator(".sheet-paper").waitFor();
      await pointer.tap(await placeNow());
    },
  };
}

export const createMouseHand = (page: Page): Hand => createPointerHand(page, createMouse(page));
export async function createTouchHand(page: Page): Promise<Hand> {
  return createPointerHand(page, createFinger(await page.context().newCDPSession(page), page));
}

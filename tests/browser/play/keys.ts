/** Keys alone: arrows held for a while, letters, Enter, and the cross of the sheet. */
import type { Page } from "@playwright/test";
import { type Hand, type Press, type Px, sleep } from "./hands.ts";

/** How fast held arrows push, fields a second: as anyone learns who plays a while. */
const SPEED = { first: 0.1, full: 0.55, rampS: 0.9, fine: 0.07 } as const;
const EYE_SHARE = 0.6;
/** Less than this is pushed finely. */
const FINE_FIELDS = 0.05;

const KEY_OF: Readonly<Record<Exclude<Press, "begin">, string>> = {
  confirm: "c",
  claim: "Enter",
  notSeen: "Shift+Enter",
  home: "b",
};
const GEAR_ORDER = ["Naked eye", "Reflex sight", "Binoculars", "Finder", "Eyepiece"];
const MOST_STEPS = 120;

/** How long an arrow is held to push so far, s. */
function heldS(fields: number, share: number): number {
  const { first, full, rampS } = SPEED;
  const far = fields / share;
  const rampFields = ((first + full) / 2) * rampS;
  if (far > rampFields) return rampS + (far - rampFields) / full;
  const growth = (full - first) / rampS;
  return (Math.sqrt(first * first + 2 * growth * far) - first) / growth;
}

const arrowsOf = (right: number, up: number) => ({
  across: right > 0 ? "ArrowRight" : "ArrowLeft",
  along: up > 0 ? "ArrowUp" : "ArrowDown",
});

export function createKeyHand(page: Page): Hand {
  const { keyboard } = page;
  const hold = async (keys: readonly string[], seconds: number, fine: boolean) => {
    const all = fine ? ["Shift", ...keys] : keys;
    // Keys go down and come up by the clock, however late the page comes to them: it takes them as of when they did.
    const down = all.map((key) => keyboard.down(key));
    await sleep(seconds * 1000);
    const up = all.toReversed().map((key) => keyboard.up(key));
    await Promise.all([...down, ...up]);
  };
  const one = async (key: string, fields: number, share: number) => {
    if (fields < 0.002) return;
    if (fields < FINE_FIELDS * share) await hold([key], fields / share / SPEED.fine, true);
    else await hold([key], heldS(fields, share), false);
  };
  /** Both arrows first, for a way aslant, then the longer one alone. */
  const move = async (right: number, up: number, share: number) => {
    const { across, along } = arrowsOf(right, up);
    const both = Math.min(Math.abs(right), Math.abs(up));
    const aslant = both > FINE_FIELDS * share ? both : 0;
    if (aslant > 0) await hold([across, along], heldS(aslant * Math.SQRT2, share), false);
    await one(across, Math.abs(right) - aslant, share);
    await one(along, Math.abs(up) - aslant, share);
  };
  return {
    push: (right, up) => move(right, up, 1),
    lookRound: (right, up) => move(right, up, EYE_SHARE),
    async take(name) {
      const wanted = GEAR_ORDER.findIndex((one) => name.test(one));
      for (let i = 0; i < GEAR_ORDER.length; i++) {
        const shown = await page.locator("nav [aria-pressed=true]").getAttribute("aria-label");
        const now = GEAR_ORDER.findIndex((one) => shown?.startsWith(one));
        if (now === wanted) return;
        await keyboard.press(now < wanted ? "n" : "w");
        await sleep(50);
      }
      throw new Error(`no instrument ${name}`);
    },
    async press(what) {
      if (what !== "begin") return keyboard.press(KEY_OF[what]);
      const begin = page.getByRole("button", { name: "Begin" });
      for (let i = 0; i < 20; i++) {
        if (await begin.evaluate((element) => element === document.activeElement)) return keyboard.press("Enter");
        await keyboard.press("Tab");
      }
      throw new Error("Tab does not come to Begin");
    },
    async toField() {
      if ((await page.locator("#field").count()) === 0) await keyboard.press("s");
    },
    async pin(placeNow) {
      await keyboard.press("s");
      await page.locator(".sheet-paper:focus").waitFor();
      await keyboard.press("ArrowLeft");
      await moveCross(page, await placeNow());
      await keyboard.press("Enter");
      await keyboard.press("s");
      await page.locator("#field:focus").waitFor();
    },
  };
}

/** Where the cross stands on the window. */
async function crossPlace(page: Page): Promise<Px> {
  const box = await page.locator(".sheet-hand .hand-cross").last().boundingBox();
  if (!box) throw new Error("no cross on the sheet");
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** Arrows until no step brings the cross nearer. */
async function moveCross(page: Page, to: Px): Promise<void> {
  let at = await crossPlace(page);
  let [stepX, stepY] = [1, 1];
  for (let i = 0; i < MOST_STEPS; i++) {
    const [dx, dy] = [to.x - at.x, to.y - at.y];
    const [byX, byY] = [Math.abs(dx) > 0.55 * stepX, Math.abs(dy) > 0.55 * stepY];
    if (!byX && !byY) return;
    const across = byX && (Math.abs(dx) >= Math.abs(dy) || !byY);
    await page.keyboard.press(across ? (dx > 0 ? "ArrowRight" : "ArrowLeft") : dy > 0 ? "ArrowDown" : "ArrowUp");
    const next = await crossPlace(page);
    if (across) stepX = Math.max(1, Math.abs(next.x - at.x));
    else stepY = Math.max(1, Math.abs(next.y - at.y));
    at = next;
  }
  throw new Error("the cross does not come to its place");
}

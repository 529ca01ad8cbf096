/** What a player sees and hears of the page: the picture of the field, the rim's figures, the words of the field. */
import type { Page } from "@playwright/test";
import type { Look } from "#core/rehearsal/types.ts";
import { findGlows, findHandfuls, findStars } from "./blobs.ts";
import { fieldBox, type Hand } from "./hands.ts";
import type { HopSheet } from "./hopSheet.ts";
import { type Pixels, readPng } from "./png.ts";

export interface Player {
  readonly page: Page;
  readonly hand: Hand;
  readonly sheet: HopSheet;
  /** How large the page draws stars: px of the picture to a CSS px, times the page's own scale of stars. */
  readonly starPx: number;
}

/** The words of the field follow what happens within so long: they are written four times a second. */
export const WORDS_MS = 350;
/** A handful: so many stars within so many radii. */
const HANDFUL = { within: 0.06, atLeast: 5 } as const;

export async function picture(page: Page): Promise<Pixels> {
  const { middle, radiusPx } = await fieldBox(page);
  const clip = { x: middle.x - radiusPx, y: middle.y - radiusPx, width: 2 * radiusPx, height: 2 * radiusPx };
  return readPng(await page.screenshot({ clip }));
}

/** Faintest star to be seen, as the rim tells it. */
async function limitMag(page: Page): Promise<number> {
  const said = await page.locator("p.hidden-words", { hasText: "Faintest star" }).textContent();
  return Number(/magnitude ([\d.]+)/.exec(said ?? "")?.[1]);
}

export const isPinAsked = (page: Page): Promise<boolean> => page.locator(".sheet-asks").isVisible();

/** One look through the instrument in use. */
export async function look({ page, hand, starPx }: Player): Promise<Look> {
  const pinAsked = await isPinAsked(page);
  await hand.toField();
  const [pixels, limit] = [await picture(page), await limitMag(page)];
  const stars = findStars(pixels, starPx);
  const glows = findGlows(pixels, stars);
  const patches = glows.length > 0 ? glows : findHandfuls(stars, HANDFUL.within, HANDFUL.atLeast);
  return {
    stars: {
      count: stars.length,
      x: Float32Array.from(stars, ({ x }) => x),
      y: Float32Array.from(stars, ({ y }) => y),
      milliMag: Int16Array.from(stars, ({ overLimitMag }) => Math.round(1000 * (limit - overLimitMag))),
      colourBV: new Float32Array(stars.length),
    },
    patches: patches.map(({ x, y }) => ({ x, y, band: "seen" })),
    pinAsked,
  };
}

/** Name and true field of the instrument in use, as the ladder has them. */
export const inUse = async (page: Page): Promise<string> =>
  (await page.locator("nav [aria-pressed=true]").getAttribute("aria-label")) ?? "";

export async function fieldRadOf(page: Page): Promise<number> {
  const deg = Number(/([\d.]+)°/.exec(await inUse(page))?.[1]);
  return (deg * Math.PI) / 180;
}

/** Where the words say that the anchor stands: from the middle in radii, clockwise from the top in hours. */
export interface Told {
  readonly out: number;
  /** What the words can mean, radii. */
  readonly least: number;
  readonly most: number;
  readonly clock: number;
}
const OUTS: readonly (readonly [words: string, out: number, least: number, most: number])[] = [
  ["in the middle", 0, 0, 0.02],
  ["just off the middle", 0.07, 0.018, 0.12],
  ["near the middle", 0.3, 0.12, 0.45],
  ["half way out", 0.62, 0.45, 0.8],
  ["near the edge", 0.9, 0.8, 1],
];

/** The words of the field once they have not changed for a while: the tube has come to rest, and the page has told it. */
const settledWords = (page: Page): Promise<string> =>
  page.locator("#field").evaluate(
    (field, ms) =>
      new Promise<string>((resolve) => {
        const done = () => {
          changes.disconnect();
          resolve(field.getAttribute("aria-label") ?? "");
        };
        let timer = setTimeout(done, ms);
        const changes = new MutationObserver(() => {
          clearTimeout(timer);
          timer = setTimeout(done, ms);
        });
        changes.observe(field, { attributeFilter: ["aria-label"] });
      }),
    WORDS_MS,
  );

/** Null where the anchor is not in view. */
export async function anchorTold(page: Page): Promise<Told | null> {
  const label = await settledWords(page);
  const words = /(?:up|overhead|horizon)\. [^.]*? stands ([^.]*)\./.exec(label)?.[1];
  if (!words) return null;
  const meant = OUTS.find(([start]) => words.startsWith(start));
  if (!meant) throw new Error(`words of the field: ${words}`);
  const [, out, least, most] = meant;
  return { out, least, most, clock: Number(/at (\d+) o'clock/.exec(words)?.[1] ?? 12) };
}

/** Ids of the lessons that are made from a seed word, and their titles: no sky is grown for them. */
import { InputError } from "#core/seams/errors.ts";
import { dailySeed } from "#core/sky/practice/daily.ts";
import { EN_SEED } from "../words/en.seed.ts";
import { sayLater } from "../words/sayLater.ts";

/** Words of the hops that are made from a seed word. */
export const saySeed = sayLater(EN_SEED);
const DAILY = "daily-";
const FREE = "free-";
/** As a lesson's `sky.practice` may be, no longer than an id has room for. */
const WORD = /^[a-z0-9]+(-[a-z0-9]+)*$/;
const LONGEST = 32;

/** The lesson of the sky of the day at an instant: days change at midnight UTC. */
export const dailyId = (nowMs: number): string => `${DAILY}${dailySeed(new Date(nowMs).toISOString().slice(0, 10))}`;

/** The lesson of a word that somebody typed, in any capitals, with blanks or hyphens; null where it is no seed word. */
export function freeId(typed: string): string | null {
  const word = typed.trim().toLowerCase().replaceAll(/\s+/g, "-");
  return WORD.test(word) && word.length <= LONGEST ? `${FREE}${word}` : null;
}

/** The seed word that an id holds. @throws InputError where there is none */
export function seedOfId(id: string): string {
  if (id.startsWith(DAILY)) return dailySeed(id.slice(DAILY.length));
  const word = id.slice(FREE.length);
  if (!id.startsWith(FREE) || freeId(word) !== id)
    throw new InputError(`"${id}" holds no seed word`, "A seed word has small letters, figures and hyphens.");
  return word;
}

/** What such a lesson is called. @throws InputError where the id holds no seed word */
export function seedTitle(id: string): string {
  const seed = seedOfId(id);
  if (id.startsWith(FREE)) return saySeed("free", { seed });
  const how = { day: "numeric", month: "short", year: "numeric", timeZone: "UTC" } as const;
  const date = new Intl.DateTimeFormat("en-GB", how).format(Date.parse(seed));
  // The date stays on one line.
  return saySeed("daily", { date: date.replaceAll(" ", "\u00a0") });
}

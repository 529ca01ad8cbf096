/** Ids of the lessons that are made from a seed word, and their titles: no sky is grown for them. */

import { SITE_SKIES, SITE_SKY_MU, type SiteSky } from "#core/lesson/siteSkies.ts";
import { InputError } from "#core/seams/errors.ts";
import { dailySeed } from "#core/sky/practice/daily.ts";
import { EN_SEED } from "../words/en.seed.ts";
import { dateFormat } from "../words/say.ts";
import { sayLater, wordsLater } from "../words/sayLater.ts";

/** Words of the hops that are made from a seed word. */
export const saySeed = sayLater("seed", EN_SEED);
/** The same with their braces, which the report fills. */
export const seedWords = wordsLater("seed", EN_SEED);
const DAILY = "daily-";
/** Free practice under the hill's own sky, or under one of so many tenths of mag/arcsec². */
const FREE = /^free(\d{3})?-(.+)$/;
/** The sky under which an id says nothing of it. */
export const USUAL_SKY: SiteSky = "village";
const SITE_KEY = {
  city: "siteCity",
  suburb: "siteSuburb",
  village: "siteVillage",
  country: "siteCountry",
  mountain: "siteMountain",
} as const satisfies Record<SiteSky, string>;
/** A site's sky in plain words. */
export const siteWords = (sky: SiteSky): string => saySeed(SITE_KEY[sky]);

/** As a lesson's `sky.practice` may be, no longer than an id has room for. */
const WORD = /^[a-z0-9]+(-[a-z0-9]+)*$/;
const LONGEST = 32;

/** The lesson of the sky of the day at an instant: days change at midnight UTC. */
export const dailyId = (nowMs: number): string => `${DAILY}${dailySeed(new Date(nowMs).toISOString().slice(0, 10))}`;

const tenthsOf = (sky: SiteSky) => String(Math.round(10 * SITE_SKY_MU[sky]));

/** The lesson of a word that somebody typed, in any capitals, with blanks or hyphens; null where it is no seed word. */
export function freeId(typed: string, sky: SiteSky = USUAL_SKY): string | null {
  const word = typed.trim().toLowerCase().replaceAll(/\s+/g, "-");
  if (!WORD.test(word) || word.length > LONGEST) return null;
  return `free${sky === USUAL_SKY ? "" : tenthsOf(sky)}-${word}`;
}

/** What the id of a lesson made from a seed word holds. */
export interface SeedOfId {
  readonly word: string;
  readonly sky: SiteSky;
}

/** The seed word that an id holds, and the sky. @throws InputError where there is none */
export function seedOfId(id: string): SeedOfId {
  if (id.startsWith(DAILY)) return { word: dailySeed(id.slice(DAILY.length)), sky: USUAL_SKY };
  const [, tenths, word = ""] = FREE.exec(id) ?? [];
  const sky = tenths === undefined ? USUAL_SKY : SITE_SKIES.find((one) => tenthsOf(one) === tenths);
  if (!sky || freeId(word, sky) !== id)
    throw new InputError(`"${id}" holds no seed word`, "A seed word has small letters, figures and hyphens.");
  return { word, sky };
}

/** What such a lesson is called. @throws InputError where the id holds no seed word */
export function seedTitle(id: string): string {
  const { word, sky } = seedOfId(id);
  if (!id.startsWith(DAILY)) {
    // Short enough for the corner of the play screen: what tells it from others is the word and the sky.
    return sky === USUAL_SKY
      ? saySeed("free", { seed: word })
      : saySeed("freeUnder", { seed: word, sky: siteWords(sky) });
  }
  const how = { day: "numeric", month: "short", year: "numeric", timeZone: "UTC" } as const;
  const date = dateFormat(how).format(Date.parse(word));
  // The date stays on one line.
  return saySeed("daily", { date: date.replaceAll(" ", "\u00a0") });
}

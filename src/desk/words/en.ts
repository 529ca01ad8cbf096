/** Words that the page loads first in English, a section a screen. What comes later brings its own. */
import { EN_BENCH } from "./en.bench.ts";
import { EN_GEAR } from "./en.gear.ts";
import { EN_HOP } from "./en.hop.ts";
import { EN_KEYS } from "./en.keys.ts";
import { EN_LANGUAGE } from "./en.language.ts";
import { EN_PLAY } from "./en.play.ts";
import { EN_SEARCH } from "./en.search.ts";
import { EN_SHEET } from "./en.sheet.ts";
import { EN_START } from "./en.start.ts";

export const EN = {
  bench: EN_BENCH,
  gear: EN_GEAR,
  hop: EN_HOP,
  keys: EN_KEYS,
  language: EN_LANGUAGE,
  play: EN_PLAY,
  search: EN_SEARCH,
  sheet: EN_SHEET,
  start: EN_START,
} as const;

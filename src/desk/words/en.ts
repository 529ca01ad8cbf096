/** All words of the page in English, a section a screen. */
import { EN_BENCH } from "./en.bench.ts";
import { EN_GEAR } from "./en.gear.ts";
import { EN_HOP } from "./en.hop.ts";
import { EN_KEYS } from "./en.keys.ts";
import { EN_PLAY } from "./en.play.ts";
import { EN_PRINT } from "./en.print.ts";
import { EN_REPORT } from "./en.report.ts";
import { EN_SEARCH } from "./en.search.ts";
import { EN_SHEET } from "./en.sheet.ts";
import { EN_START } from "./en.start.ts";

export const EN = {
  bench: EN_BENCH,
  gear: EN_GEAR,
  hop: EN_HOP,
  keys: EN_KEYS,
  play: EN_PLAY,
  print: EN_PRINT,
  report: EN_REPORT,
  search: EN_SEARCH,
  sheet: EN_SHEET,
  start: EN_START,
} as const;

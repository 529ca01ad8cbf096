/** All words of the page in German, those of the screens that come later too: one piece, fetched where German is spoken. */
import { DE_BENCH } from "./de.bench.ts";
import { DE_GAZE } from "./de.gaze.ts";
import { DE_GEAR } from "./de.gear.ts";
import { DE_HOP } from "./de.hop.ts";
import { DE_HOURS } from "./de.hours.ts";
import { DE_IMPORT } from "./de.import.ts";
import { DE_KEYS } from "./de.keys.ts";
import { DE_LANGUAGE } from "./de.language.ts";
import { DE_MARKS } from "./de.marks.ts";
import { DE_PLAY } from "./de.play.ts";
import { DE_PRINT } from "./de.print.ts";
import { DE_REPORT } from "./de.report.ts";
import { DE_SCREEN } from "./de.screen.ts";
import { DE_SEARCH } from "./de.search.ts";
import { DE_SEED } from "./de.seed.ts";
import { DE_SHEET } from "./de.sheet.ts";
import { DE_START } from "./de.start.ts";
import type { Section, Translation } from "./say.ts";

export const DE = {
  bench: DE_BENCH,
  gaze: DE_GAZE,
  gear: DE_GEAR,
  hop: DE_HOP,
  hours: DE_HOURS,
  import: DE_IMPORT,
  keys: DE_KEYS,
  language: DE_LANGUAGE,
  marks: DE_MARKS,
  play: DE_PLAY,
  print: DE_PRINT,
  report: DE_REPORT,
  screen: DE_SCREEN,
  search: DE_SEARCH,
  seed: DE_SEED,
  sheet: DE_SHEET,
  start: DE_START,
} satisfies Translation & Record<Section, unknown>;

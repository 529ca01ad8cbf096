/** All words of the page in English, a section a screen. */
import { EN_GEAR } from "./en.gear.ts";
import { EN_HOP } from "./en.hop.ts";
import { EN_KEYS } from "./en.keys.ts";
import { EN_PLAY } from "./en.play.ts";
import { EN_SHEET } from "./en.sheet.ts";

export const EN = {
  gear: EN_GEAR,
  hop: EN_HOP,
  keys: EN_KEYS,
  play: EN_PLAY,
  sheet: EN_SHEET,
} as const;

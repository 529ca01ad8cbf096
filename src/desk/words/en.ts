/** Words that the page loads first in English, a section a screen. What comes later brings its own. */
import { EN_GEAR } from "./en.gear.ts";
import { EN_HOP } from "./en.hop.ts";
import { EN_LANGUAGE } from "./en.language.ts";
import { EN_PLAY } from "./en.play.ts";

export const EN = {
  gear: EN_GEAR,
  hop: EN_HOP,
  language: EN_LANGUAGE,
  play: EN_PLAY,
} as const;

/** See en.language.ts. */

import type { EN_LANGUAGE } from "./en.language.ts";
import type { InWords } from "./say.ts";

export const DE_LANGUAGE = {
  code: "de",
  dates: "de-DE",
  decimal: ",",
  other: "English",
} satisfies InWords<typeof EN_LANGUAGE>;

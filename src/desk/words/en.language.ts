/** The language itself: what a machine calls it, how its dates and figures are written, and the way to the other one. */
export const EN_LANGUAGE = {
  code: "en",
  dates: "en-GB",
  decimal: ".",
  other: "Deutsch",
} as const;

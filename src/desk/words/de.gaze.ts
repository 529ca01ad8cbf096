/** See en.gaze.ts. */
import type { EN_GAZE } from "./en.gaze.ts";
import type { InWords } from "./say.ts";

export const DE_GAZE = {
  beside: "Daneben",
  besideSaid: "Daneben schauen: halten, oder einmal drücken, dann bleibt es so",
  nowBeside: "Du schaust knapp vorbei: Schwaches kommt hervor.",
  nowStares: "Du starrst: Schwaches verschwindet, wo du gerade hinschaust.",
} satisfies InWords<typeof EN_GAZE>;

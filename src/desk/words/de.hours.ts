/** See en.hours.ts. */
import type { EN_HOURS } from "./en.hours.ts";
import type { InWords } from "./say.ts";

export const DE_HOURS = {
  down: "Um {time} Uhr ist {name} unter dem Horizont. So kann der Weg nicht beginnen.",
  unseen: "Um {time} Uhr wäre {name} nicht zu sehen: zu hell oder zu tief.",
  written: "Was hier steht, gilt für {time} Uhr.",
  back: "Zurück zu {time} Uhr",
  missing: "Die Nacht um {time} Uhr kam nicht: {why}",
} satisfies InWords<typeof EN_HOURS>;

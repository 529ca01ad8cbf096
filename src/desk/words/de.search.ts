/** See en.search.ts. */
import type { EN_SEARCH } from "./en.search.ts";
import type { InWords } from "./say.ts";

export const DE_SEARCH = {
  title: "Namenssuche",
  label: "Name von Stern, Objekt, Sternbild, Planet",
  example: "M 57, beta Cyg, Lyra, Saturn",
  note: "an jedem Himmel",
  one: "1 Treffer heißt so oder ähnlich",
  count: "{count} Treffer heißen so oder ähnlich",
  atLeast: "{count} oder mehr; schreib mehr vom Namen",
  none: "Nichts heißt so.",
  results: "Was so heißt",
  star: "Stern",
  constellation: "Sternbild",
  body: "Wandelstern",
  inConstellation: "{what} in {where}",
  ofMagnitude: "{what}, Größe {magV}",
  alsoCalled: "auch {names}",
  place: "{hours}h {minutes}m, {sign}{degrees}° {arcmin}′ (J2000)",
  meaning: "Der Name bedeutet: {meaning}.",
  ofOwn: "Aus deinem eigenen Katalog.",
  ofSky: "Am Übungshimmel {seed}.",
  marked: "Auf der Karte liegt ein Ring darum.",
  beyond: "Es liegt außerhalb dieser Karte.",
  toolWords: "Suchen",
  close: "Zurück",
} satisfies InWords<typeof EN_SEARCH>;

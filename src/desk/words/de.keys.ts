/** See en.keys.ts. */
import type { EN_KEYS } from "./en.keys.ts";
import type { InWords } from "./say.ts";

export const DE_KEYS = {
  title: "Tasten",
  close: "Zurück zum Himmel",
  push: "das Rohr schieben oder sich umsehen",
  fine: "fein schieben",
  wider: "ein Instrument weiter",
  narrower: "ein Instrument enger",
  confirm: "der Ankerstern ist in der Mitte",
  claim: "das ist es",
  notSeen: "richtiger Ort, nichts zu sehen",
  home: "zurück zum Anker",
  flip: "die Karte wenden",
  turnLeft: "die Karte gegen den Uhrzeigersinn drehen",
  turnRight: "die Karte im Uhrzeigersinn drehen",
  closer: "die Karte näher",
  further: "die Karte weiter weg",
  avert: "gehalten: knapp am Schwachen vorbeischauen",
  stare: "gehalten: in die Mitte starren",
  pin: "eine Nadel stecken: hier bin ich",
  hint: "der nächste Hinweis",
  later: "zehn Minuten später, bis der Weg beginnt",
  earlier: "zehn Minuten früher",
  skyTurns: "den Himmel anhalten oder weiterdrehen lassen",
  screws: "die Hand an die Sucherschrauben und zurück",
  sheet: "zur Karte und zurück",
  find: "nach Namen suchen",
  lamp: "Rotlicht",
  sound: "Ton",
  help: "diese Tabelle",
} satisfies InWords<typeof EN_KEYS>;

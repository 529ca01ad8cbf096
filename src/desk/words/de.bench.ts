/** See en.bench.ts. */
import type { EN_BENCH } from "./en.bench.ts";
import type { InWords } from "./say.ts";

export const DE_BENCH = {
  title: "Werkbank",
  tagline: "Für Lektionen: schreib eine, sieh, was daran nicht stimmt, probier sie aus.",
  toStart: "Startseite",

  files: "Der Text als Datei",
  startFrom: "Mit einer Lektion von uns beginnen",
  startNote: "{minutes} Minuten",
  close: "Schließen",
  openFile: "Datei öffnen",
  saveFile: "Als Datei sichern",
  bringBack: "Den Text davor zurückholen",

  text: "Text der Lektion",
  unnamed: "eine neue Lektion",
  place: "Zeile {line}, Spalte {column}",
  size: "{kB} von {most} kB",
  dropHere: "Loslassen, um sie hier zu öffnen.",

  emptyTitle: "Die Werkbank ist noch leer",
  empty1: "Eine Lektion ist eine Textdatei: ein Weg, sein Himmel, seine Instrumente und die Worte dazu.",
  empty2: "Nimm eine Lektion von uns und ändere sie, öffne eine Datei, leg eine hier ab, oder schreib.",
  empty3: "Was du schreibst, bleibt hier. Es wird beim Schreiben geprüft und verlässt diese Seite nie.",

  checking: "Wird geprüft.",
  findings: "Was zu beheben ist",
  none: "Nichts zu beheben.",
  noneNote: "Die Lektion lässt sich ausprobieren.",
  findingsNote: "Auf Englisch; jeder führt an seine Stelle im Text.",
  oneError: "1 Fehler",
  errors: "{count} Fehler",
  oneWarning: "1 Warnung",
  warnings: "{count} Warnungen",
  both: "{errors}, {warnings}",
  error: "Fehler",
  warning: "Warnung",
  at: "{line}:{column}",
  atSaid: "Zeile {line}, Spalte {column}",
  tooLong: "Die Prüfung wurde abgebrochen.",
  tooLongNote:
    "Sie dauerte zu lange: keine Lektion braucht so viel Zeit. Nimm die letzte Änderung zurück, oder such etwas, das sich ohne Ende wiederholt.",
  failed: "Die Prüfung läuft nicht.",
  failedNote: "{why}. Der Text ist gesichert: lade die Seite neu.",

  tryIt: "Ausprobieren",
  tryNote: "Nichts kommt ins Logbuch.",
  tryLater: "Behebe erst die Fehler.",

  large: "Nicht geöffnet: die Datei hat {kB} kB. Eine Lektion passt in {most} kB.",
  largePaste: "Nicht übernommen: das wären {kB} kB. Eine Lektion passt in {most} kB.",
  unreadable: "Diese Datei lässt sich nicht lesen.",
  opened: "{name} liegt auf der Werkbank.",
  saved: "Gesichert als {name}.",
  broughtBack: "Der Text davor ist zurück.",
  kept: "Der Text davor ist aufgehoben.",
  notKept: "Dieser Browser behält nichts: sichere den Text als Datei, bevor du die Seite schließt.",
} satisfies InWords<typeof EN_BENCH>;

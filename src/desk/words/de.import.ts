/** See en.import.ts. */
import type { EN_IMPORT } from "./en.import.ts";
import type { InWords } from "./say.ts";

export const DE_IMPORT = {
  title: "Dein eigener Katalog",
  tagline: "Sterne aus deiner Datei, für Wege am Kataloghimmel.",
  toStart: "Startseite",

  files: "Die Datei",
  choose: "Datei wählen",
  another: "Andere Datei wählen",
  cancel: "Abbrechen",
  dropHere: "Loslassen, um sie aufzunehmen.",

  nothingTitle: "Was eine Datei enthält",
  nothing1: "Eine CSV-Datei mit Kopfzeile oder eine VOTable (TABLEDATA, BINARY oder BINARY2); bis 1.000.000 Zeilen.",
  nothing2: "Jede Zeile ist ein Stern: Rektaszension, Deklination und V-Helligkeit bis 12,5.",
  nothing3:
    "Örter in Grad oder als 18:53:35 und -33:30:00; J2000. B-V, Eigenbewegung, Epoche und Name werden gelesen, wo es sie gibt.",
  nothing4: "Wähl eine Datei oder leg eine hier ab. Sie wird auf diesem Gerät gelesen und nirgendwohin gesendet.",

  progress: "Wie weit es ist",
  reading: "{name} wird gelesen: {rows} Zeilen, {percent} % der Datei.",
  sorting: "{rows} Zeilen gelesen. Die Sterne werden in Kacheln gelegt.",
  keeping: "{rows} Zeilen gelesen. Die Kacheln werden aufgeschrieben.",
  staying:
    "Du kannst inzwischen anderswo hinschauen: es geht weiter, solange diese Seite offen bleibt. Was vorher da war, bleibt, bis alles da ist.",
  began: "{name} wird aufgenommen.",

  taken: "{name} ist aufgenommen. Sterne: {stars}.",
  cancelled: "Abgebrochen. Was vorher da war, ist unverändert.",
  cancelledNone: "Abgebrochen. Nichts wurde behalten.",
  removed: "Dein Katalog ist entfernt.",
  badFile: "Nicht aufgenommen. {what}. {hint}",
  unreadable:
    "Nicht aufgenommen: die Datei lässt sich nicht mehr lesen. Vielleicht wurde sie verschoben oder geändert: wähl sie noch einmal.",
  full: "Nicht aufgenommen: im Browser ist kein Platz mehr. Entferne andere Daten dieser Seite, oder lass schwache Sterne weg.",
  other: "Nicht aufgenommen: der Browser brach ab ({what}). Lade die Seite neu.",
  unchanged: "Was vorher da war, ist unverändert.",
  noBase:
    "Dieser Browser behält nichts, darum lässt sich kein Katalog aufnehmen. Vielleicht liegt es an einem privaten Fenster.",

  sheet: "Was gelesen wurde",
  rows: "Zeilen gelesen",
  stars: "Sterne aufgenommen",
  left: "Zeilen ausgelassen",
  ofThem: "davon: {why}",
  namesAll: "{of} Namen sind behalten. Du findest sie mit der Suche.",
  names: "{kept} von {of} Namen sind behalten, die der hellsten Sterne zuerst. Du findest sie mit der Suche.",
  takenOn: "aufgenommen am {date}",

  badTitle: "Zeilen mit Fehlern",
  badNone: "Keine fehlerhaften Zeilen.",
  badAll: "{count} fehlerhafte Zeilen. Die anderen sind aufgenommen.",
  badOne: "1 fehlerhafte Zeile. Die anderen sind aufgenommen.",
  badFirst: "{count} fehlerhafte Zeilen; die ersten {shown} stehen hier. Die anderen sind aufgenommen.",
  line: "Zeile {line}",
  row: "Reihe {line}",

  use: "Seine Sterne am Kataloghimmel verwenden",
  on: "an",
  off: "aus",
  useNote:
    "Feld, Karte und Bericht haben dann deine Sterne. Namen, Objekte und Milchstraße des Himmels bleiben. Jenseits deiner Sterne wird nichts erfunden.",
  notKept:
    "Solche Wege kommen nicht ins Logbuch und zählen nicht im Kurs: Wegmarken sind für unseren Katalog gewählt und fehlen in deinem vielleicht. Übungshimmel, gedruckte Blätter und Werkbank bleiben, wie sie sind.",
  remove: "Entfernen",

  lookTitle: "Umsehen",
  lookNote: "Unter deinen eigenen Sternen, mit jedem Instrument. Nichts wird gesucht, nichts gezählt.",
  lookBrightest: "Von seinem hellsten Stern",
  lookBrightestName: "Der hellste Stern",
  lookLabel: "Von einem Namen",
  lookThere: "Von dort",
  lookNone: "Nichts heißt {name}.",
  lookEmpty: "Kein Stern deines Katalogs kam.",
  lookBriefing: "{name} steht in der Mitte des Feldes, unter deinen eigenen Sternen.",
  lookNothing: "Nichts wird gesucht, nichts gezählt oder behalten.",
  lookNow: "Sieh dich um.",
  lookSay: "{name} steht in der Mitte. Jedes Instrument liegt bereit.",

  thinTitle: "Wenige Sterne für den Weg",
  thin: "Das leerste Feld dieses Weges zeigt {count} Sterne deines Katalogs. Mit weniger als fünf sieht ein Feld aus wie jedes andere.",
  thinOne:
    "Das leerste Feld dieses Weges zeigt 1 Stern deines Katalogs. Mit weniger als fünf sieht ein Feld aus wie jedes andere.",
  thinNone: "In einem der Felder dieses Weges hat dein Katalog keinen Stern: das Feld wäre leer.",
  thinCatalogue: "Mit den Sternen der Seite gehen",
  thinHop: "Trotzdem losgehen",
} satisfies InWords<typeof EN_IMPORT>;

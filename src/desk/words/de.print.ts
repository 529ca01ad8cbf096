/** See en.print.ts. */
import type { EN_PRINT } from "./en.print.ts";
import type { InWords } from "./say.ts";

export const DE_PRINT = {
  print: "Drucken",
  night: "Für Rotlicht",
  comes: "Das Blatt wird gesetzt.",
  failed: "Das Blatt konnte nicht gesetzt werden: {why}",

  headline: "Wegblatt für den {date}, {time} Uhr, {place}, {lat}",
  north: "{deg}° nördl. Breite",
  south: "{deg}° südl. Breite",
  compass: "Norden, Nordosten, Osten, Südosten, Süden, Südwesten, Westen, Nordwesten",
  gear: "{name}, {aperture} mm, {power}-fach, {field}°",
  sky: "{words}; {mu} mag/arcsec²",

  wide: "Bloßes Auge.",
  wideSight: "Bloßes Auge und Leuchtpunktsucher.",
  wideAbout: "Sterne bis {limit}. Ring: {ring}°. Balken: {bar}°.",
  hopAbout: "Sterne bis {limit}. Große Ringe {field}°. Balken: {bar}°. Norden oben, Osten links.",
  hopAboutSmall:
    "Sterne bis {limit}. Große Ringe {field}°, kleiner Ring {small}°. Balken: {bar}°. Norden oben, Osten links.",

  views: "So zeigt jedes Instrument dieses Blatt",
  theTarget: "Das Ziel",
  coordinates: "Ort, J2000",
  brightness: "Helligkeit, Größe",
  magV: "V {magV}, {size}",
  size: "Größe",
  sizeRound: "{major}′",
  sizeOval: "{major}′ × {minor}′",
  inEach: "In jedem Instrument",
  starsTo: "Sterne bis {limit}",
  seen: "Ziel zu sehen",
  edge: "Ziel an der Grenze",
  not: "Ziel nicht zu sehen",
  dots: "Punktgrößen auf Karte 2",

  way: "Der Weg: {deg}°, {legs} Etappen",
  wayOne: "Der Weg: {deg}°, eine Etappe",
  wayOwn: "Den Weg findest du selbst",
  noWay: "Von {anchor} zu {target}. Der Weg wird gedruckt, sobald du ihn gegangen bist.",
  first: "{gear}: {anchor} in die Mitte.",
  leg: "{gear}: {deg}° nach {compass}, {fields} Felder, zu {mark}.",
  last: "{gear}: {looks}",
  signs: "Ring: das Feld. Pfeil: der Schub, wie das Bild ihn zeigt.",
  start: "hier geht es los",
  look: "hier schauen",

  height: "Höhe des Ziels in dieser Nacht",
  bestDark: "am besten um {time} Uhr: dunkel und {deg}° hoch",
  best: "am höchsten um {time} Uhr: {deg}°, nicht ganz dunkel",
  neverUp: "Es geht in dieser Nacht nicht auf.",
  lines: "Linien: Tageslicht und Dämmerung, je enger, desto heller.",
  noMoon: "Kein Mond in dieser Nacht.",
  moon: "Gestrichelt: der Mond, zu {percent} % beleuchtet.",
  seenOn: "Gesehen am",
  seenAt: "um",
  seenSky: "Himmel",
  credit: "Sternörter: Tycho-2 (Høg et al. 2000), Epoche 2025,0. Gedruckt mit Faintward.",
  creditPractice: "Ein erfundener Himmel aus dem Wort „{seed}“. Gedruckt mit Faintward.",
} satisfies InWords<typeof EN_PRINT>;

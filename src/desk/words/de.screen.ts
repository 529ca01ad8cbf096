/** See en.screen.ts. */
import type { EN_SCREEN } from "./en.screen.ts";
import type { InWords } from "./say.ts";

export const DE_SCREEN = {
  title: "Dein Bildschirm",
  tagline: "Auch er ist ein Instrument. Zwei Schritte sagen, was er zeigen kann.",
  toStart: "Startseite",

  dotsTitle: "Was zu sehen ist",
  dots: "Mach den Raum so dunkel wie beim Üben. Tipp den schwächsten dieser Punkte an, den du siehst.",
  dot: "Punkt {place} von {of}",
  dotsUntold: "Nicht gesagt: Sterne sind gezeichnet wie auf einem guten Bildschirm.",
  dotsAsDrawn: "Ein Stern an der Grenze ist auf diesem Bildschirm zu sehen, wie er gezeichnet ist.",
  dotsLifted: "Die schwächsten Sterne sind heller gezeichnet, damit ein Stern an der Grenze eben zu sehen ist.",
  hides:
    "Dieser Bildschirm verbirgt die schwächsten {mag} Größenklassen. Ein dunklerer Raum oder ein hellerer Bildschirm bringt sie zurück.",

  cardTitle: "Wie groß",
  card: "Halte eine Bankkarte hierher. Zieh den rechten Rand, bis beide gleich breit sind.",
  cardWidth: "Breite der Karte",
  distance: "Wie weit dein Auge davon weg ist",
  hand: "Hand, 35 cm",
  desk: "Tisch, 60 cm",
  hall: "Saal, 5 m",
  fist: "Eine Faust am gestreckten Arm deckt 10 Grad: hier {px} px.",
  field: "Das runde Feld beim Üben ist von dort {deg} Grad breit. In den meisten Okularen sind es etwa 50.",
  cardUntold: "Nicht gesagt: über Größen auf diesem Bildschirm ist nichts bekannt.",

  projector: "Auf Projektor stellen",
  projectorNote: "Ein graues Schwarz, größere Sterne, vom Saal aus gesehen. Es braucht keine Karte.",
  undo: "Wie zuvor",
  noted: "Auf Projektor gestellt.",
} satisfies InWords<typeof EN_SCREEN>;

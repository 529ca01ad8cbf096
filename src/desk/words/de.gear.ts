/** See en.gear.ts. */
import type { EN_GEAR } from "./en.gear.ts";
import type { InWords } from "./say.ts";

export const DE_GEAR = {
  eye: "Bloßes Auge",
  sight: "Leuchtpunktsucher",
  binocular: "Fernglas",
  finder: "Sucher",
  eyepiece: "Okular",
  direct: "Aufrechtes Bild",
  halfTurn: "Umgekehrtes Bild",
  mirrorDiagonal: "Gespiegeltes Bild",
  erectingDiagonal: "Aufrechtes Bild",
  newtonian: "Gedrehtes Bild",
  trueField: "Wahres Feld {fieldDeg}°",
  window: "{fieldDeg}° Himmel",
  rings: "Ringe 1° 3°",
  aperture: "{apertureMm} mm",
  power: "{magnification}×",
} satisfies InWords<typeof EN_GEAR>;

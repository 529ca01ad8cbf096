/** Instruments: in the nouns of the rim, and in sentences. */
export const EN_GEAR = {
  eye: "Naked eye",
  sight: "Reflex sight",
  binocular: "Binoculars",
  finder: "Finder",
  eyepiece: "Eyepiece",
  direct: "Correct image",
  halfTurn: "Turned by half",
  mirrorDiagonal: "Mirrored image",
  erectingDiagonal: "Correct image",
  newtonian: "Turned image",
  trueField: "True field {fieldDeg}°",
  window: "{fieldDeg}° of the sky",
  rings: "Rings 1° 3°",
  aperture: "{apertureMm} mm",
  power: "{magnification}×",
} as const;

/** Words of the screen page. They come with it. */
export const EN_SCREEN = {
  title: "Your screen",
  tagline: "It is an instrument too. Two steps tell what it can show.",
  toStart: "Start page",

  dotsTitle: "What shows",
  dots: "Make the room as dark as when you play. Tap the faintest of these dots that you can see.",
  dot: "Dot {place} of {of}",
  dotsUntold: "Not told: stars are drawn as on a good screen.",
  dotsAsDrawn: "A star at the limit shows on this screen as it is drawn.",
  dotsLifted: "The faintest stars are drawn brighter, so that a star at the limit just shows.",
  hides: "This screen hides the faintest {mag} magnitudes. A darker room or a brighter screen brings them back.",

  cardTitle: "How large",
  card: "Hold a bank card here. Draw the right edge until both are equally wide.",
  cardWidth: "Width of the card",
  distance: "How far your eye is from it",
  hand: "hand, 35 cm",
  desk: "desk, 60 cm",
  hall: "hall, 5 m",
  fist: "A fist at arm's length covers 10 degrees: {px} px here.",
  field: "The round field in a hop looks {deg} degrees wide from there. In most eyepieces it is about 50.",
  cardUntold: "Not told: nothing is known of sizes on this screen.",

  projector: "Set for a projector",
  projectorNote: "A grey black, larger stars, seen from a hall. No card is needed.",
  undo: "As it was",
  noted: "Set for a projector.",
} as const;

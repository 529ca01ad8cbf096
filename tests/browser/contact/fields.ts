/**
 * Ten fields that every observer knows, and what is noted of them at the eyepiece (common practice, from memory; no source).
 * The notes stand beside the pictures, so that one can be held against the other.
 */
export interface ContactField {
  readonly name: string;
  readonly raDeg: number;
  readonly decDeg: number;
  readonly note: string;
}
/** A body of the solar system at an instant. */
export interface ContactBody {
  readonly name: string;
  readonly body: "moon" | "venus" | "mars" | "jupiter" | "saturn";
  readonly utcMs: number;
  readonly note: string;
}

export const FIELDS: readonly ContactField[] = [
  {
    name: "M 13",
    raDeg: 250.423,
    decDeg: 36.46,
    note: "Finder: a round fuzzy star between two stars of V 7. 150 mm, 30x: a bright ball, mist at its heart, a sparkle at the edge in a dark night. 300 mm, 62x: a heap of stars well into the middle.",
  },
  {
    name: "M 57",
    raDeg: 283.396,
    decDeg: 33.029,
    note: "Finder: not there, or as a star. 30x: a tiny soft disc, just not a star. 62x: a small oval ring with a duskier middle, seen from town too.",
  },
  {
    name: "M 31",
    raDeg: 10.685,
    decDeg: 41.269,
    note: "Finder: a long spindle with a bright middle. 30x: core and haze run out of the field, M 32 a fuzzy star south of it; M 110 a large weak patch, lost in town.",
  },
  {
    name: "M 42",
    raDeg: 83.822,
    decDeg: -5.391,
    note: "Seen under every sky. A bright fan about the Trapezium, open to one side, its wings fading outwards; the darker the night, the wider.",
  },
  {
    name: "M 51",
    raDeg: 202.47,
    decDeg: 47.195,
    note: "Town: nothing, or a breath in 300 mm. Village: two soft spots of unlike size in 150 mm. Mountain, 300 mm: a round haze about a core, a hint of arms.",
  },
  {
    name: "Pleiades",
    raDeg: 56.75,
    decDeg: 24.117,
    note: "A cluster of stars, never a glow: best in the finder, more than the field at 62x. No nebula from town.",
  },
  {
    name: "Double Cluster",
    raDeg: 35.3,
    decDeg: 57.135,
    note: "Finder: two knots of stars side by side. 30x: both in one field, dozens of stars each, dense hearts; rich ground about them.",
  },
  {
    name: "M 27",
    raDeg: 299.901,
    decDeg: 22.721,
    note: "Finder: a small soft patch. 30x: an even, fairly bright disc in a field full of stars. 62x: large, paler, still plain.",
  },
  {
    name: "Omega Centauri",
    raDeg: 201.697,
    decDeg: -47.48,
    note: "Finder: a large round cloud, brighter inwards. 150 mm: grains all over. 300 mm: stars beyond number across more than half the field.",
  },
  {
    name: "Cygnus, near Gamma",
    raDeg: 306.5,
    decDeg: 39.5,
    note: "Nothing but stars: dozens in the finder from town, hundreds in a dark night; at 62x a ground of the faintest. No glow, no frame of dark sky.",
  },
];

/** What the eye alone sees, and what is noted of it. */
export const OPEN_SKIES: readonly ContactField[] = [
  {
    name: "Summer Milky Way",
    raDeg: 295,
    decDeg: 25,
    note: "Dark site: a wide soft band, split from Cygnus down to the south by a dark lane, brightest in Cygnus and Scutum. Suburb: a doubtful lightening overhead at best.",
  },
  {
    name: "Towards the centre",
    raDeg: 272,
    decDeg: -25,
    note: "Dark site: the widest and brightest part, with star clouds and a dark side to the west of it. Suburb: hardly a trace.",
  },
];

/** Discs, and what is noted of them. */
export const BODIES: readonly ContactBody[] = [
  {
    name: "Moon, three days old",
    body: "moon",
    utcMs: Date.UTC(2027, 2, 11, 19),
    note: "A crescent, ragged along the terminator; the dark side in ashen light, the Sea of Crises on the lit limb.",
  },
  {
    name: "Moon, half",
    body: "moon",
    utcMs: Date.UTC(2027, 2, 15, 17),
    note: "Craters in rows along the terminator, most in the south; the plains of the north-east lie smooth and dark.",
  },
  {
    name: "Moon, full",
    body: "moon",
    utcMs: Date.UTC(2027, 2, 22, 11),
    note: "Flat light: dark plains, bright rays out of Tycho in the south. No relief. Dazzling.",
  },
  {
    name: "Venus, a crescent",
    body: "venus",
    utcMs: Date.UTC(2026, 9, 10, 17),
    note: "62x: a thin white crescent. Featureless.",
  },
  {
    name: "Jupiter",
    body: "jupiter",
    utcMs: Date.UTC(2027, 1, 11, 22),
    note: "Finder: a star, its moons hard to part. 62x: a flattened disc, four moons in a row. 200x: two brown belts.",
  },
  {
    name: "Saturn",
    body: "saturn",
    utcMs: Date.UTC(2030, 11, 1, 22),
    note: "62x: small, the ring plain on both sides. 200x: dark between disc and ring, the ring open in 2030.",
  },
];
export const BODY_INSTRUMENTS = ["finder-9x50", "newton300-62x", "newton400-200x"] as const;
/** From where the bodies are seen. */
export const BODY_SITE = { latDeg: 50, lonDeg: 0, heightM: 250 } as const;

export const INSTRUMENTS = ["finder-9x50", "newton150-30x", "newton300-62x"] as const;
/** Sky brightness, mag/arcsec2. */
export const SKIES = { town: 18.5, village: 20.5, mountain: 21.8 } as const;
export const OPEN_SKY_SKIES = { suburb: 19, "dark site": 21.7 } as const;
export const LAMPS = ["normal", "red"] as const;

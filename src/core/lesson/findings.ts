/** What can be wrong with a lesson file: each code once, with how to mend it. A bad example for every code stands in the tests. */

export type Severity = "error" | "warning";
/** `line` and `column` count from 1, columns in UTF-16 units, as editors do. */
export interface Finding {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly severity: Severity;
  readonly code: FindingCode;
  readonly message: string;
  readonly hint: string;
}

type Entry = { readonly severity: Severity; readonly title: string; readonly hint: string };

export const CATALOGUE = {
  FW001: { severity: "error", title: "file too large", hint: "A lesson fits into 64 kB: split it into several." },
  FW002: { severity: "error", title: "not a text file", hint: "Save the lesson as plain UTF-8 text." },
  FW003: {
    severity: "error",
    title: "too deeply nested",
    hint: "Lessons nest a few levels: look for stray brackets, dashes or spaces.",
  },
  FW004: {
    severity: "error",
    title: "too many entries",
    hint: "A lesson has a few hundred entries at most: split it.",
  },
  FW005: {
    severity: "error",
    title: "anchor, alias, tag or directive",
    hint: "Write the words out where they are needed; put text that begins with & * ! or % in quotes.",
  },
  FW006: {
    severity: "error",
    title: "broken YAML",
    hint: "Indent with spaces, and put text that holds ': ' or ' #' in quotes.",
  },
  FW007: { severity: "error", title: "key given twice", hint: "Keep one of the two." },
  FW010: { severity: "error", title: "key missing", hint: "Add it; the lessons that come along show each key." },
  FW011: { severity: "error", title: "unknown key", hint: "Remove it or mend its spelling." },
  FW012: {
    severity: "error",
    title: "wrong kind of value",
    hint: "See the same key in one of the lessons that come along.",
  },
  FW013: { severity: "error", title: "out of range", hint: "Bring the value within the bounds named." },
  FW014: { severity: "error", title: "unknown word", hint: "Use one of the words listed." },
  FW015: { severity: "error", title: "another format", hint: "This program reads format 1." },
  FW020: { severity: "error", title: "unknown instrument", hint: "Use an id of shared/gear.json." },
  FW021: {
    severity: "error",
    title: "instrument not at hand",
    hint: "Add it to gear.use, or choose one that stands there.",
  },
  FW022: { severity: "error", title: "unknown name", hint: "Use a name of this sky, or give name, raDeg and decDeg." },
  FW023: {
    severity: "error",
    title: "target is no object",
    hint: "The target must be an object of this sky: only those can be claimed.",
  },
  FW024: {
    severity: "error",
    title: "way does not start at the anchor",
    hint: "The first mark of every way is the anchor.",
  },
  FW025: {
    severity: "error",
    title: "way does not end at the target",
    hint: "The last mark of every way is the target.",
  },
  FW026: {
    severity: "error",
    title: "leg too long",
    hint: "Put a mark in between, or hop with a wider field: a leg is at most three quarters of it.",
  },
  FW027: { severity: "error", title: "weights do not add up", hint: "directness, pins and care make 100 together." },
  FW028: {
    severity: "error",
    title: "not dark",
    hint: "Choose an hour with the Sun more than 12 degrees below the horizon.",
  },
  FW029: {
    severity: "warning",
    title: "twilight",
    hint: "Better an hour with the Sun more than 15 degrees below the horizon.",
  },
  FW030: {
    severity: "error",
    title: "too low or too high",
    hint: "Choose another hour or place: 20 to 85 degrees up is workable.",
  },
  FW031: {
    severity: "error",
    title: "anchor not visible",
    hint: "Choose a brighter anchor, or another instrument to start with.",
  },
  FW032: {
    severity: "error",
    title: "target not visible",
    hint: "Choose a larger instrument to claim in, or a brighter target.",
  },
  FW033: {
    severity: "error",
    title: "mark not visible",
    hint: "Choose a brighter mark, or a larger instrument to hop with.",
  },
  FW034: { severity: "warning", title: "long sentence", hint: "22 words at most: one idea a sentence." },
  FW035: {
    severity: "error",
    title: "hints do not fit the legs",
    hint: "Give one row of three hints for each leg of the first way.",
  },
  FW036: {
    severity: "error",
    title: "marks for stars out of order",
    hint: "Points rise from one star to three; claims fall.",
  },
  FW037: {
    severity: "error",
    title: "help that the level forbids",
    hint: "At levels P and M steps may hang on start, moved, anchorConfirmed and gear only.",
  },
  FW038: { severity: "error", title: "nothing said at the start", hint: "Let the first step stand at `when: start`." },
  FW039: {
    severity: "error",
    title: "moment that never comes",
    hint: "Name a mark of the first way, and a kind of instrument in gear.use.",
  },
  FW040: {
    severity: "error",
    title: "unknown placeholder",
    hint: "Use one of the values listed, or write the braces out of the text.",
  },
  FW041: {
    severity: "warning",
    title: "not the voice of the course",
    hint: "Say what happened and what to do; no exclamation marks, no belittling words.",
  },
  FW042: {
    severity: "warning",
    title: "the Moon is up",
    hint: "Choose a moonless hour: faint things drown in moonlight.",
  },
  FW043: {
    severity: "error",
    title: "orbit not whole",
    hint: "Give perihelionAu or semiMajorAu, and perihelion or meanAnomalyDeg; an open orbit takes the first of each.",
  },
  FW044: {
    severity: "error",
    title: "brightness of another kind",
    hint: "A comet has totalMag and perhaps slope and comaArcmin; a minor planet absoluteMag and perhaps slope.",
  },
  FW045: {
    severity: "error",
    title: "name taken",
    hint: "Give it a name that nothing else has in this sky and lesson.",
  },
  FW046: {
    severity: "error",
    title: "elements of another time",
    hint: "Take elements whose epoch is near the lesson's night: the planets have changed the orbit since.",
  },
  FW047: {
    severity: "warning",
    title: "old elements",
    hint: "Within 200 days of the epoch the place is good to a few minutes of arc; later it drifts.",
  },
  FW048: {
    severity: "error",
    title: "anchor that moves",
    hint: "Choose a star: comets and minor planets are targets and marks.",
  },
  FW049: {
    severity: "warning",
    title: "body that nobody sees",
    hint: "Mend its magnitude, choose a larger instrument to claim in, or leave it out.",
  },
  FW050: {
    severity: "error",
    title: "named twice",
    hint: "Keep one of the two.",
  },
  FW051: {
    severity: "warning",
    title: "star that a straight look loses",
    hint: "Choose a brighter star to step by, or a larger instrument: beginners look straight at things.",
  },
  FW052: {
    severity: "error",
    title: "nothing to hop with",
    hint: "Hop with the sight, binoculars, a finder or an eyepiece: the naked eye moves no tube.",
  },
  FW053: {
    severity: "warning",
    title: "anchor without a known star",
    hint: "The learner puts a star in the middle: give the anchor by its name, or be sure that a star stands there.",
  },
} as const satisfies Record<`FW${number}`, Entry>;

export type FindingCode = keyof typeof CATALOGUE;

/** Where in a file: both count from 1. */
export type At = { readonly line: number; readonly column: number };

export function finding(file: string, code: FindingCode, at: At, message: string, hint?: string): Finding {
  const { severity, hint: usual } = CATALOGUE[code];
  return { file, line: at.line, column: at.column, severity, code, message, hint: hint ?? usual };
}

/** Findings in the order of the file. */
export const inFileOrder = (findings: readonly Finding[]): Finding[] =>
  [...findings].sort((a, b) => a.line - b.line || a.column - b.column || (a.code < b.code ? -1 : 1));

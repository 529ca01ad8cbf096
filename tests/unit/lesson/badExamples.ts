/** For every code of the catalogue a lesson that shows it: the sound lesson with one thing put wrong, and the line it is on. */
import type { FindingCode } from "#core/lesson/findings.ts";
import { SOUND } from "./sound.ts";

type Bad = { readonly text: string; readonly says: RegExp };

const edit = (from: string, to: string, says: RegExp): Bad => {
  if (!SOUND.includes(from)) throw new Error(`the sound lesson has no "${from}"`);
  return { text: SOUND.replace(from, to), says };
};

export const BAD: Readonly<Record<FindingCode, Bad>> = {
  FW001: { text: `${SOUND}#${" ".repeat(66_000)}`, says: /larger than 65536/ },
  FW002: edit("title: Four", "title: \u0000Four", /character/),
  FW003: edit("skills: [step, turn]", `skills: ${"[".repeat(13)}step${"]".repeat(13)}`, /nest deeper/),
  FW004: edit("skills: [step, turn]", `skills: [${"step, ".repeat(2200)}turn]`, /more than 2000/),
  FW005: edit("title: Four degrees north", "title: &t Four degrees north", /anchor/),
  FW006: edit("title: Four degrees north", 'title: "Four degrees north', /quote/i),
  FW007: edit("minutes: 5", "minutes: 5\nminutes: 6", /unique/i),
  FW010: edit("minutes: 5\n", "", /minutes is missing/),
  FW011: edit("minutes: 5", "minuts: 5", /no key "minuts"/),
  FW012: edit("minutes: 5", "minutes: soon", /minutes is "soon"; it should be a number/),
  FW013: edit("minutes: 5", "minutes: 500", /at most 60/),
  FW014: edit("skills: [step, turn]", "skills: [step, trun]", /skills\[2\] is "trun"/),
  FW015: edit("format: 1", "format: 2", /format 2/),
  FW020: edit("use: [eye,", "use: [eyes,", /no instrument "eyes"/),
  FW021: edit("hopping: finder-9x50", "hopping: finder-6x30", /finder-6x30 is not in gear.use/),
  FW022: edit("anchor: Bright", "anchor: Brigt", /no "Brigt"/),
  FW023: edit("target: Cluster", "target: Mark", /place or a star/),
  FW024: edit("marks: [Bright, Mark", "marks: [Mark, Mark", /starts at Mark/),
  FW025: edit("Mark, Cluster]", "Mark, Neighbour]", /ends at Neighbour/),
  FW026: edit("[Bright, Mark, Cluster]", "[Bright, Cluster]", /4\.0 degrees from Bright/),
  FW027: edit("pins: 45", "pins: 40", /make 95/),
  FW028: edit("T21:00:00Z", "T19:00:00Z", /the Sun stands/),
  FW029: edit("2027-08-31T21:00:00Z", "2027-08-31T20:20:00Z", /the Sun stands/),
  FW030: edit("anchor: Bright", "anchor: Low", /Low stands/),
  FW031: edit("anchor: Bright", "anchor: Faint", /does not show Faint/),
  FW032: edit("target: Cluster", "target: Ghost", /does not show Ghost/),
  FW033: edit("[Bright, Mark,", "[Bright, Faint,", /does not show Faint/),
  FW034: edit("say: As far again.", `say: As far again${" and again".repeat(12)}.`, /27 words/),
  FW035: edit(
    "        - [Look north again., Two stars point at it., Follow the line.]\n",
    "",
    /1 rows of hints for 2 legs/,
  ),
  FW036: edit("[70, 82, 92]", "[70, 92, 82]", /70, 92, 82/),
  FW037: edit("level: C", "level: P", /markReached:1 at level P/),
  FW038: edit("when: start", "when: moved", /waits for moved/),
  FW039: edit("markReached:1", "markReached:2", /1 marks/),
  FW040: edit("{shortFields}", "{shortField}", /nothing fills \{shortField\}/),
  FW041: edit("say: As far again.", "say: As far again!", /"!"/),
  FW042: edit("2027-08-31T21:00:00Z", "2027-08-20T23:00:00Z", /the Moon stands/),
  FW043: edit("    perihelionAu: 0.92\n", "", /Whin has neither of perihelionAu and semiMajorAu/),
  FW044: edit("    totalMag: 6.5", "    absoluteMag: 6.5", /Whin is no minor planet: it has totalMag/),
  FW045: edit("name: Heather", "name: Cluster", /"Cluster" is there already/),
  FW046: edit("    epoch: 2027", "    epoch: 1999", /10227 days away/),
  FW047: edit("    epoch: 2027-09-01", "    epoch: 2026-09-01", /365 days away/),
  FW048: edit("anchor: Bright", "anchor: Whin", /Whin moves among the stars/),
  FW049: edit(
    "bodies:\n",
    "bodies:\n  - { name: One, kind: comet, epoch: 2027-09-01T00:00:00Z, perihelionAu: 2, eccentricity: 1, inclinationDeg: 45, nodeDeg: 300, argumentDeg: 90, perihelion: 2027-10-20T21:00:00Z, totalMag: 20 }\n",
    /does not show Heather/,
  ),
  FW050: edit("use: [eye,", "use: [eye, eye,", /eye stands there already/),
  FW051: edit("[Bright, Mark,", "[Bright, Dim,", /shows Dim only to one who looks beside it/),
  FW052: edit("hopping: finder-9x50", "hopping: eye", /eye cannot be pushed/),
  FW053: edit(
    "anchor: Bright",
    "anchor: { name: Gap, raDeg: 300, decDeg: 20.2 }",
    /nothing that has a name stands at Gap/,
  ),
};

/**
 * Lesson format 1: the one definition of a lesson file. The type, the check and the JSON Schema for editors come from it.
 * Keys without a default must stand in the file; unknown keys are errors.
 */
import * as z from "zod/mini";

// Compiled checks would need eval, which the page's policy forbids.
z.config({ jitless: true });

const text = (least: number, most: number) => z.string().check(z.minLength(least), z.maxLength(most));
const within = (low: number, high: number) => z.number().check(z.gte(low), z.lte(high));
const whole = (low: number, high: number) => z.int().check(z.gte(low), z.lte(high));
const list = <T extends z.ZodMiniType>(of: T, least: number, most: number) =>
  z.array(of).check(z.minLength(least), z.maxLength(most));
/** With words for editors, which show them beside the key. */
const said = <T extends z.ZodMiniType>(schema: T, words: string): T => schema.check(z.describe(words));
/** A sentence or a few: what is said to the learner. */
const line = text(1, 400);
const gearId = z.string().check(z.regex(/^[a-z0-9-]{1,40}$/));

export const SKILLS = [
  "scale",
  "depth",
  "anchor",
  "aim",
  "turn",
  "mirror",
  "push",
  "step",
  "figure",
  "recover",
  "faint",
  "page",
  "mount",
  "plan",
] as const;

/** Habits that a report can name; some belong to kinds of lesson that are still to come. */
export const HABIT_CODES = [
  "SCL-DEG",
  "SCL-FIELD",
  "DEP-CHART",
  "DEP-SWAP",
  "ANC-WRONG",
  "ANC-NOCHECK",
  "AIM-OFF",
  "AIM-HUNT",
  "ALN-SKIP",
  "ALN-WRONGEND",
  "TRN-NORTHUP",
  "TRN-SENSE",
  "INV-KEEP",
  "INV-HALF",
  "MIR-ROT",
  "MIR-OVER",
  "CLK-SENSE",
  "CLK-HEMI",
  "PSH-FLIP",
  "PSH-LEAP",
  "STP-LONG",
  "STP-LOOSE",
  "DST-SHORT",
  "DST-AGAIN",
  "FIG-TWIN",
  "FIG-POOR",
  "LST-LATE",
  "LST-SPIRAL",
  "LST-POWER",
  "LST-CLAIM",
  "FNT-HURRY",
  "FNT-GHOST",
  "PWR-HIGH",
  "PWR-LOW",
  "PAG-EDGE",
  "PAG-POLE",
  "MNT-AXES",
  "MNT-ZENITH",
  "DRF-EAST",
  "DRF-LOSE",
  "PLN-LOW",
  "PLN-GEAR",
  "MEM-PEEK",
  "MEM-ORDER",
  "CAL-OVER",
  "CAL-UNDER",
  "OFF-WAY",
  "TO-AND-FRO",
  "PIN-OFF",
  "HINTS",
  "FIRST-SHORT",
] as const;

/** Moments at which a step's words come up. */
export const MOMENTS = [
  "start",
  "moved",
  "anchorNear",
  "anchorConfirmed",
  "gear:eye",
  "gear:sight",
  "gear:binocular",
  "gear:finder",
  "gear:eyepiece",
  "markReached:1",
  "markReached:2",
  "markReached:3",
  "markReached:4",
  "markReached:5",
  "markReached:6",
  "nearTarget",
  "lost",
] as const;

/** A place of the sky: a star's or object's name, or coordinates (ICRS, degrees) with a name of the lesson's own. */
const Spot = z.union([
  text(1, 60),
  z.strictObject({ name: text(1, 60), raDeg: within(0, 360), decDeg: within(-90, 90) }),
]);

/** UTC, or TT where elements are published so, within the centuries for which the sky's motions hold. */
const instant = z.iso.datetime().check(z.regex(/^(19|20|21)/));
const maybe = (low: number, high: number, words: string) => z.optional(said(within(low, high), words));

/** A comet or minor planet of the lesson's own; which keys go together is checked apart. */
const Body = z.strictObject({
  name: text(1, 60),
  kind: z.enum(["comet", "minorPlanet"]),
  epoch: said(instant, "The day for which the elements hold, TT as published."),
  perihelionAu: maybe(0.001, 100, "Least distance from the Sun, au; or semiMajorAu."),
  semiMajorAu: maybe(0.01, 1000, "Half the ellipse's long axis, au; or perihelionAu."),
  eccentricity: within(0, 10),
  inclinationDeg: said(within(0, 180), "To the ecliptic of J2000."),
  nodeDeg: said(within(0, 360), "Longitude of the ascending node, equinox J2000."),
  argumentDeg: said(within(0, 360), "Argument of perihelion, from the node."),
  perihelion: z.optional(said(instant, "When it is nearest the Sun, TT as published; or meanAnomalyDeg.")),
  meanAnomalyDeg: maybe(-360, 360, "At the epoch; or perihelion."),
  totalMag: maybe(-10, 30, "A comet's total magnitude at 1 au from Sun and Earth."),
  absoluteMag: maybe(-5, 30, "A minor planet's H."),
  slope: maybe(
    -0.5,
    40,
    "A comet's growth with the logarithm of its distance from the Sun (10), a minor planet's G (0.15).",
  ),
  comaArcmin: maybe(0.1, 120, "A comet's coma as it is seen; left out: 200,000 km across."),
});

/** A named way: its marks from the anchor to the target. */
const Way = z.strictObject({ name: text(1, 60), marks: list(Spot, 2, 12) });

const Step = z.strictObject({
  when: said(z.enum(MOMENTS), "From this moment on, until a later step's moment comes."),
  now: said(text(1, 60), "The headline: what to do now."),
  say: said(line, "The words below it."),
});

const After = z.strictObject({
  found: line,
  wrong: line,
  shown: line,
  notSeen: line,
  missed: line,
  outside: said(line, "The claim was outside the page's map of the hop."),
  codes: z._default(z.partialRecord(z.enum(HABIT_CODES), line), {}),
});

const Hop = z.strictObject({
  anchor: said(Spot, "The star that the hop starts from; a place of the sky as marks are."),
  target: said(Spot, "The object sought."),
  ways: said(list(Way, 1, 6), "Named ways, each from the anchor to the target; the first one is spoken of."),
  steps: list(Step, 1, 20),
  hints: said(
    list(list(line, 3, 3), 1, 11),
    "A row for each leg of the first way: where to look, what it looks like, the line itself.",
  ),
  after: said(After, "Said after the claim, by how the hop ended; codes by the habit that cost most."),
});

const aid = z._default(z.enum(["free", "priced", "off"]), "off");
const Aids = z.strictObject({
  ring: aid,
  compass: aid,
  limits: aid,
  asInInstrument: aid,
  carry: aid,
  trail: aid,
  hints: aid,
});

const Pass = z.union([
  z.strictObject({ points: z.tuple([whole(1, 100), whole(1, 100), whole(1, 100)]) }),
  z.strictObject({ claims: z.tuple([whole(1, 3), whole(1, 3), whole(1, 3)]) }),
]);

export const LessonSchema = z.strictObject({
  format: z.literal(1),
  id: z.string().check(z.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/), z.maxLength(40)),
  title: text(1, 60),
  part: said(whole(1, 9), "The part of the course, and the lesson's place in it."),
  number: whole(1, 99),
  of: whole(1, 99),
  minutes: said(whole(1, 60), "How long it takes."),
  skills: list(z.enum(SKILLS), 1, 5),
  sky: said(
    z.union([
      z.literal("catalogue"),
      z.strictObject({ practice: z.string().check(z.regex(/^[a-z0-9][a-z0-9-]{0,31}$/)) }),
    ]),
    "The real sky, or an invented one from a seed word.",
  ),
  bodies: said(
    z._default(list(Body, 0, 6), []),
    "Comets and minor planets of the lesson's own, where they stand on its night.",
  ),
  place: z.strictObject({
    name: text(1, 60),
    latDeg: within(-90, 90),
    lonDeg: within(-180, 180),
    heightM: within(-500, 9000),
    skyMagPerArcsec2: within(15, 22.2),
  }),
  time: said(instant, "UTC, such as 2027-08-31T21:00:00Z; within the centuries for which the sky's motions hold."),
  level: said(z.enum(["G", "C", "P", "M"]), "Guided, completion, problem, memory."),
  gear: z.strictObject({
    mount: z.enum(["altazimuth", "equatorial"]),
    stance: z.enum(["upright", "withEyepiece"]),
    use: said(list(gearId, 1, 8), "Every instrument at hand, by growing power."),
    hopping: said(gearId, "The one to hop with: all lengths are counted in its field."),
    claim: said(gearId, "The one to claim in."),
    finderOffDeg: said(
      z._default(z.tuple([within(-3, 3), within(-3, 3)]), [0, 0]),
      "Finder against telescope, degrees on the two axes.",
    ),
  }),
  aids: said(Aids, "What may help, free or at its price; what is not named is off."),
  weights: said(
    z.strictObject({ directness: whole(0, 100), pins: whole(0, 100), care: whole(0, 100) }),
    "Points for each line of the score; 100 together.",
  ),
  drift: said(z._default(z.boolean(), false), "Whether the sky moves on while the learner hops."),
  briefing: said(list(text(1, 120), 1, 3), "Up to three short lines: what is sought, what is new, one warning."),
  stages: list(z.strictObject({ hop: Hop }), 1, 6),
  pass: said(Pass, "Points for one, two and three stars, or the most claims that still earn one, two and three."),
  afterwards: said(list(line, 0, 6), "Said in the report; a line whose {value} is missing is left out."),
});

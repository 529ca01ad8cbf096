/** Checks of the comets and minor planets that a lesson brings along. */
import type { Seeing } from "#core/seams/index.ts";
import { bodiesOf } from "./bodies.ts";
import { type Finding, finding } from "./findings.ts";
import type { Path, Places } from "./locate.ts";
import type { FoundSpot, SkyLookup } from "./lookups.ts";
import type { Report } from "./report.ts";
import type { Lesson, LessonBody } from "./types.ts";

const DAY_MS = 86_400_000;
/** Two-body places drift by minutes of arc within so many days of the epoch, and by degrees in the end (common practice, no source). */
const OLD_DAYS = { worth: 200, useless: 2000 } as const;
const SLOPE = { comet: [0, 40], minorPlanet: [-0.5, 1] } as const;
/** What only the other kind has. */
const FOREIGN = { comet: ["absoluteMag"], minorPlanet: ["totalMag", "comaArcmin"] } as const;
const NEEDED = { comet: "totalMag", minorPlanet: "absoluteMag" } as const;

type At = (...path: PropertyKey[]) => Path;

/** Exactly one of two keys says a thing. */
function checkChoice(body: LessonBody, keys: readonly [keyof LessonBody, keyof LessonBody], at: At, report: Report) {
  const given = keys.filter((key) => body[key] !== undefined);
  if (given.length === 1) return;
  const how = given.length === 0 ? "neither" : "both";
  report("FW043", given.length === 0 ? at() : at(given[1]!), `${body.name} has ${how} of ${keys.join(" and ")}`);
}

function checkOrbit(body: LessonBody, at: At, report: Report): void {
  checkChoice(body, ["perihelionAu", "semiMajorAu"], at, report);
  checkChoice(body, ["perihelion", "meanAnomalyDeg"], at, report);
  if (body.eccentricity < 1) return;
  for (const key of ["semiMajorAu", "meanAnomalyDeg"] as const)
    if (body[key] !== undefined)
      report("FW043", at(key), `an open orbit (eccentricity ${body.eccentricity}) has no ${key}`);
}

function checkBrightness(body: LessonBody, at: At, report: Report): void {
  const { kind, name, slope } = body;
  const foreign = FOREIGN[kind].filter((key) => body[key] !== undefined);
  const what = kind === "comet" ? "minor planet" : "comet";
  for (const key of foreign) report("FW044", at(key), `${name} is no ${what}: it has ${NEEDED[kind]}, not ${key}`);
  if (foreign.length === 0 && body[NEEDED[kind]] === undefined) report("FW044", at(), `${name} has no ${NEEDED[kind]}`);
  const [low, high] = SLOPE[kind];
  if (slope !== undefined && !(slope >= low && slope <= high))
    report("FW044", at("slope"), `a slope of ${slope} is not within ${low} to ${high}`);
}

function checkEpoch({ epoch, name }: LessonBody, time: string, at: At, report: Report): void {
  const days = Math.round(Math.abs(Date.parse(time) - Date.parse(epoch)) / DAY_MS);
  const away = `the elements of ${name} hold for a day ${days} days away`;
  if (days > OLD_DAYS.useless) report("FW046", at("epoch"), away);
  else if (days > OLD_DAYS.worth) report("FW047", at("epoch"), away);
}

/** What is wrong with the bodies alone. Where anything of it is an error, no place can be worked out. */
export function checkBodies(file: string, { bodies, time }: Lesson, places: Places): Finding[] {
  const findings: Finding[] = [];
  const report: Report = (code, path, message, hint) => {
    findings.push(finding(file, code, places.value(path), message, hint));
  };
  bodies.forEach((body, i) => {
    const at: At = (...path) => ["bodies", i, ...path];
    checkOrbit(body, at, report);
    checkBrightness(body, at, report);
    checkEpoch(body, time, at, report);
  });
  return findings;
}

/** Whether it moves among the stars. */
export const isMoving = ({ object }: FoundSpot): boolean => object?.kind === "comet" || object?.kind === "minorPlanet";

/** The bodies in their sky: names that are free, and light enough for the instrument to claim in. */
export function checkBodiesInSky(lesson: Lesson, sky: SkyLookup, seeing: Seeing, report: Report): void {
  const { claim } = lesson.gear;
  bodiesOf(lesson).forEach(({ id, magV }, i) => {
    const { name } = lesson.bodies[i]!;
    if (sky.find(name)?.object?.id !== id) report("FW045", ["bodies", i, "name"], `"${name}" is there already`);
    else if (seeing.object(id, claim).band === "not")
      report("FW049", ["bodies", i], `${claim} does not show ${name} of magnitude ${magV.toFixed(1)}`);
  });
}

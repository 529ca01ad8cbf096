/** Checks of a lesson's plan that need no sky: instruments, weights, marks for stars, steps and hints. */
import { GEAR } from "#core/optics/gear.ts";
import type { GearKind } from "#core/seams/index.ts";
import { type Finding, finding } from "./findings.ts";
import type { Path, Places } from "./locate.ts";
import { nearestWord } from "./nearestWord.ts";
import type { Report } from "./report.ts";
import type { Lesson, LessonHop, Moment } from "./types.ts";

/** Moments that tell no more than an observer would know. */
const PLAIN_MOMENT = /^(start|moved|anchorConfirmed|gear:)/;

function checkGear({ gear }: Lesson, report: Report): void {
  gear.use.forEach((id, i) => {
    if (GEAR.has(id)) return;
    const near = nearestWord(id, GEAR.keys());
    report("FW020", ["gear", "use", i], `no instrument "${id}"`, near && `Did you mean "${near}"?`);
  });
  for (const role of ["hopping", "claim"] as const) {
    const id = gear[role];
    if (!GEAR.has(id)) report("FW020", ["gear", role], `no instrument "${id}"`);
    else if (!gear.use.includes(id)) report("FW021", ["gear", role], `${id} is not in gear.use`);
  }
  if (GEAR.get(gear.hopping)?.kind === "eye")
    report("FW052", ["gear", "hopping"], `${gear.hopping} cannot be pushed from star to star`);
}

function checkPass({ pass }: Lesson, report: Report): void {
  const [one, two, three] = "points" in pass ? pass.points : pass.claims.map((claims) => -claims);
  if (!(one! <= two! && two! <= three!)) {
    const [key, values] = "points" in pass ? ["points", pass.points] : ["claims", pass.claims];
    report("FW036", ["pass", key], `${values.join(", ")} for one, two and three stars`);
  }
}

function whyNever(when: Moment, hop: LessonHop, kinds: ReadonlySet<GearKind | undefined>): string | null {
  const [moment, detail] = when.split(":");
  if (moment === "gear" && !kinds.has(detail as GearKind)) return `no instrument of kind ${detail} is at hand`;
  const marks = hop.ways[0]!.marks.length - 2;
  if (moment === "markReached" && Number(detail) > marks)
    return `the first way has ${marks} marks between anchor and target`;
  return null;
}

function checkHop(lesson: Lesson, hop: LessonHop, at: (...path: PropertyKey[]) => Path, report: Report): void {
  const kinds = new Set(lesson.gear.use.map((id) => GEAR.get(id)?.kind));
  const guided = lesson.level === "G" || lesson.level === "C";
  if (hop.steps[0]!.when !== "start")
    report("FW038", at("steps", 0, "when"), `the first step waits for ${hop.steps[0]!.when}`);
  hop.steps.forEach(({ when }, i) => {
    const path = at("steps", i, "when");
    const never = whyNever(when, hop, kinds);
    if (never) report("FW039", path, `${when}: ${never}`);
    if (!guided && !PLAIN_MOMENT.test(when)) report("FW037", path, `${when} at level ${lesson.level}`);
  });
  const legs = hop.ways[0]!.marks.length - 1;
  if (hop.hints.length !== legs) report("FW035", at("hints"), `${hop.hints.length} rows of hints for ${legs} legs`);
}

/** Words of a list that stand in it before. */
function checkTwice(words: readonly string[], at: (i: number) => Path, report: Report): void {
  words.forEach((word, i) => {
    if (words.indexOf(word) < i) report("FW050", at(i), `${word} stands there already`);
  });
}

export function checkPlan(file: string, lesson: Lesson, places: Places): Finding[] {
  const findings: Finding[] = [];
  const report: Report = (code, path, message, hint) => {
    findings.push(finding(file, code, places.value(path), message, hint));
  };
  checkGear(lesson, report);
  checkTwice(lesson.gear.use, (i) => ["gear", "use", i], report);
  checkTwice(lesson.skills, (i) => ["skills", i], report);
  if (lesson.number > lesson.of) report("FW013", ["number"], `number ${lesson.number} of ${lesson.of}`);
  const { directness, pins, care } = lesson.weights;
  const sum = directness + pins + care;
  if (sum !== 100) report("FW027", ["weights"], `the weights make ${sum}`);
  checkPass(lesson, report);
  lesson.stages.forEach(({ hop }, s) => {
    checkHop(lesson, hop, (...path) => ["stages", s, "hop", ...path], report);
  });
  return findings;
}

/** A lesson file, checked: everything that is wrong with it in one go, or the lesson. */
import { checkBodies } from "./checkBodies.ts";
import { checkPlan } from "./checkPlan.ts";
import { checkSky } from "./checkSky.ts";
import { checkWords } from "./checkWords.ts";
import { type Finding, inFileOrder } from "./findings.ts";
import { placesIn } from "./locate.ts";
import type { Lookups } from "./lookups.ts";
import { readYaml } from "./read.ts";
import { checkShape } from "./shape.ts";
import type { Lesson } from "./types.ts";

const MOST_FINDINGS = 100;

export interface Checked {
  /** Absent where any finding is an error. */
  readonly lesson?: Lesson;
  readonly findings: readonly Finding[];
}

/**
 * Checks one lesson file (YAML 1.2). Never throws on account of the text, however hostile.
 * @param file the name that findings bear
 */
export function checkLesson(file: string, text: string, lookups: Lookups): Checked {
  const { doc, lines, findings: unread } = readYaml(file, text);
  if (!doc) return { findings: unread };
  const places = placesIn(doc, lines);
  const { lesson, findings: misshapen } = checkShape(file, doc.toJS(), places);
  if (!lesson) return { findings: inFileOrder(misshapen).slice(0, MOST_FINDINGS) };
  const plan = checkPlan(file, lesson, places);
  const bodies = checkBodies(file, lesson, places);
  const isKnown = !plan.some(({ code }) => code === "FW020") && !bodies.some(({ severity }) => severity === "error");
  const sky = isKnown ? checkSky(file, lesson, places, lookups) : [];
  const findings = inFileOrder([...plan, ...bodies, ...sky, ...checkWords(file, lesson, places)]).slice(
    0,
    MOST_FINDINGS,
  );
  return findings.some(({ severity }) => severity === "error") ? { findings } : { lesson, findings };
}

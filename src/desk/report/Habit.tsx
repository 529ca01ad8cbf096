/** One thing to do better: the habit that cost most, where it shows on bar and sheet, and where it is trained. */
import type { Lesson } from "#core/lesson/types.ts";
import { fillLine } from "#core/lesson/words.ts";
import { EN_REPORT } from "../words/en.report.ts";
import { fixed } from "../words/say.ts";
import { type Facts, figuresFor } from "./facts.ts";
import { sayReport } from "./words.ts";

type HabitKey = Extract<keyof typeof EN_REPORT, `${string} line`> extends `${infer Code} line` ? Code : never;
const isKnown = (code: string): code is HabitKey => `${code} line` in EN_REPORT;

/** Habits that do not show in the way: A and B are no part of what is said of them. */
const NOT_OF_THE_WAY: ReadonlySet<string> = new Set(["LST-CLAIM", "PIN-OFF", "HINTS"]);

/** A and B in words, where a part of the way was dear. */
function whereWords({ dear, record, report }: Facts): string {
  if (!dear || NOT_OF_THE_WAY.has(report.habit?.code ?? "")) return "";
  const fields = fixed((dear.toDas - dear.fromDas) / record.compiled.hoppingFieldDas, 1);
  return sayReport(dear.outside ? "aToB" : "aToBWithin", { fields });
}

/** The lesson's own lines on this attempt; those whose figures are not known are left out. */
const ownLines = (lesson: Lesson, facts: Facts): string =>
  lesson.afterwards
    .map((line) => fillLine(line, figuresFor(lesson, facts)))
    .filter((line) => line !== null)
    .join(" ");

interface Props {
  readonly facts: Facts;
  readonly lesson: Lesson;
  /** The lesson that trains the habit, where there is one. */
  readonly trainedIn: Lesson | null;
}

export function Habit({ facts, lesson, trainedIn }: Props) {
  const { report } = facts;
  const { habit } = report;
  const own = ownLines(lesson, facts);
  if (!habit || !isKnown(habit.code) || facts.byClaims)
    return own || facts.dear ? (
      <section class="habit">
        <p>{[facts.byClaims ? "" : whereWords(facts), own].filter(Boolean).join(" ")}</p>
      </section>
    ) : null;
  const { codes } = lesson.stages[0]!.hop.after;
  const lessonLine = codes[habit.code as keyof typeof codes];
  const line = (lessonLine && fillLine(lessonLine, figuresFor(lesson, facts))) ?? sayReport(`${habit.code} line`);
  const found = report.word === "found" || report.word === "notSeen";
  const saysCost = !found || (lessonLine?.includes("{cost}") ?? false);
  const cost = habit.costPoints === 1 ? sayReport("costOne") : sayReport("cost", { points: habit.costPoints });
  return (
    <section class="habit">
      <h2>{sayReport("habit", { name: sayReport(habit.code) })}</h2>
      <p>
        {whereWords(facts)} {line} {!saysCost && cost} {own}{" "}
        {trainedIn && <em>{sayReport("trains", { title: trainedIn.title })}</em>}
      </p>
    </section>
  );
}

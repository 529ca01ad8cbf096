/** What happened, and what it counted. */

import type { RefObject } from "preact";
import type { Lesson } from "#core/lesson/types.ts";
import { fillLine } from "#core/lesson/words.ts";
import { passes } from "#core/score/pass.ts";
import { langOf } from "../app/langOf.ts";
import { isSeeded } from "../app/lessonOf.ts";
import { markName, written } from "../words/say.ts";
import { Dots } from "./Dots.tsx";
import { type Facts, figuresFor, nightTime } from "./facts.ts";
import { sayReport } from "./words.ts";

interface Props {
  readonly facts: Facts;
  readonly lesson: Lesson;
}

export function Headline({ facts, lesson, heading }: Props & { heading: RefObject<HTMLHeadingElement | null> }) {
  const { record, report } = facts;
  const { id, number, of, title } = lesson;
  const when = nightTime(record, 0);
  const { after } = lesson.stages[0]!.hop;
  const line = report.word === "givenUp" ? null : fillLine(after[report.word], figuresFor(lesson, facts));
  return (
    <header>
      <p class="aside">
        {isSeeded(id) ? sayReport("seededAt", when) : sayReport("lessonAt", { number, of, ...when })}{" "}
        {record.compiled.spec.sky.kind === "imported" && sayReport("ownStars")}
      </p>
      <h1 tabIndex={-1} ref={heading}>
        {sayReport(report.word, { title })}
      </h1>
      {line && (
        <p class="after-line" lang={langOf(lesson)}>
          {line}
        </p>
      )}
    </header>
  );
}

/** Where the tube stood at the end, against the target. */
function whereWords({ report, figures, passed, stood }: Facts): string[] {
  if (!stood) return [sayReport("notBegun")];
  const fields = figures.shortFields ?? "0.0";
  const short =
    fields === "0.0"
      ? sayReport("hereOn")
      : sayReport(Number(fields) > 1 ? "hereShortMany" : "hereShort", { fields: written(fields) });
  return report.word === "found" ? [] : [short, ...(passed ? [sayReport("past", { mark: markName(passed) })] : [])];
}

function pointsWords({ report }: Facts, markPoints: number): string {
  if (passes(report, markPoints)) return sayReport("pointsPassed", { mark: markPoints });
  const enough = report.points !== null && report.points >= markPoints;
  return sayReport(enough ? "pointsNoPin" : "pointsUnder", { mark: markPoints });
}

/** @param bestBefore points of the best attempt before this one, as the logbook noted them; null where there was none */
export function ScoreLine({ facts, lesson, bestBefore }: Props & { bestBefore: number | null }) {
  const { report, stars, claims, byClaims } = facts;
  const found = report.word === "found" || report.word === "notSeen";
  const where = found ? [] : whereWords(facts);
  if (byClaims)
    return (
      <div class="score by-claims">
        <Dots stars={stars} />
        <p>
          {found && sayReport(claims.length === 1 ? "claimsSaid" : "claimsSaidMany", { count: claims.length })}
          {where.join(" ")}
        </p>
      </div>
    );
  if (report.points === null) return <p class="score no-points">{sayReport("noPoints")}</p>;
  const mark = "points" in lesson.pass ? lesson.pass.points[0] : 0;
  return (
    <div class="score">
      <p class="points">{report.points}</p>
      <div class="score-words">
        {stars > 0 && <Dots stars={stars} />}
        <p>{pointsWords(facts, mark)}</p>
        <p class="score-aside">
          {where.length > 0
            ? where.join(" ")
            : bestBefore === null
              ? sayReport("firstTry")
              : sayReport("bestBefore", { points: bestBefore })}
        </p>
      </div>
    </div>
  );
}

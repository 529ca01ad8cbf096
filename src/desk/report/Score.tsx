/** What happened, and what it counted. */
import type { RefObject } from "preact";
import type { Lesson } from "#core/lesson/types.ts";
import { fillLine } from "#core/lesson/words.ts";
import { passes } from "#core/score/pass.ts";
import { isSeeded } from "../app/lessonOf.ts";
import { say } from "../words/say.ts";
import { Dots } from "./Dots.tsx";
import { type Facts, nightTime } from "./facts.ts";

interface Props {
  readonly facts: Facts;
  readonly lesson: Lesson;
}

export function Headline({ facts, lesson, heading }: Props & { heading: RefObject<HTMLHeadingElement | null> }) {
  const { record, report, figures } = facts;
  const { id, number, of, title } = lesson;
  const when = nightTime(record, 0);
  const { after } = lesson.stages[0]!.hop;
  const line = report.word === "givenUp" ? null : fillLine(after[report.word], figures);
  return (
    <header>
      <p class="aside">
        {isSeeded(id) ? say("report.seededAt", when) : say("report.lessonAt", { number, of, ...when })}{" "}
        {record.compiled.spec.sky.kind === "imported" && say("report.ownStars")}
      </p>
      <h1 tabIndex={-1} ref={heading}>
        {say(`report.${report.word}`, { title })}
      </h1>
      {line && <p class="after-line">{line}</p>}
    </header>
  );
}

/** Where the tube stood at the end, against the target. */
function whereWords({ report, figures, passed, stood }: Facts): string[] {
  if (!stood) return [say("report.notBegun")];
  const fields = figures.shortFields ?? "0.0";
  const short =
    fields === "0.0"
      ? say("report.hereOn")
      : say(Number(fields) > 1 ? "report.hereShortMany" : "report.hereShort", { fields });
  return report.word === "found" ? [] : [short, ...(passed ? [say("report.past", { mark: passed })] : [])];
}

function pointsWords({ report }: Facts, markPoints: number): string {
  if (passes(report, markPoints)) return say("report.pointsPassed", { mark: markPoints });
  const enough = report.points !== null && report.points >= markPoints;
  return say(enough ? "report.pointsNoPin" : "report.pointsUnder", { mark: markPoints });
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
          {found && say(claims.length === 1 ? "report.claimsSaid" : "report.claimsSaidMany", { count: claims.length })}
          {where.join(" ")}
        </p>
      </div>
    );
  if (report.points === null) return <p class="score no-points">{say("report.noPoints")}</p>;
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
              ? say("report.firstTry")
              : say("report.bestBefore", { points: bestBefore })}
        </p>
      </div>
    </div>
  );
}

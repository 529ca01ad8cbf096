/** The report: what happened, the score, both ways, the sum, one habit, what next; then the night's notes. */
import "../styles/report.css";
import { useEffect, useMemo, useRef } from "preact/hooks";
import type { Lesson } from "#core/lesson/types.ts";
import type { FinishedAttempt } from "../app/ports.ts";
import { hashOf, isTry, windowSize } from "../app/state.ts";
import type { OpenSky } from "../play/skies.ts";
import { say } from "../words/say.ts";
import { type Facts, factsOf } from "./facts.ts";
import { Habit } from "./Habit.tsx";
import { reportLayout } from "./layout.ts";
import { Notes } from "./Notes.tsx";
import { nextLesson, nextStep, trainingFor } from "./nextStep.ts";
import { ReportSheet, sheetSize } from "./ReportSheet.tsx";
import { Headline, ScoreLine } from "./Score.tsx";
import { Sum } from "./Sum.tsx";
import { useReportSky } from "./useReportSky.ts";
import { WayList } from "./WayList.tsx";
import { Ways } from "./Ways.tsx";
import { sayReport } from "./words.ts";

interface Props {
  readonly attempt: FinishedAttempt;
  readonly lesson: Lesson;
  /** The sky that was hopped in, where it is not the lesson's. */
  readonly sky?: OpenSky | undefined;
  readonly lessons: readonly Lesson[];
  readonly finished: readonly FinishedAttempt[];
  /** Opens a lesson; the report's own one for another try. */
  readonly onOpen: (lessonId: string) => void;
  readonly onStart: () => void;
}

/** Points of the best attempt at this lesson before this one. */
function bestBefore({ id, lessonId, endedAtMs }: FinishedAttempt, finished: readonly FinishedAttempt[]): number | null {
  const before = finished.filter((one) => one.lessonId === lessonId && one.id !== id && one.endedAtMs <= endedAtMs);
  const points = before.flatMap((one) => (one.points === null ? [] : [one.points]));
  return points.length === 0 ? null : Math.max(...points);
}

function Steps({ facts, lesson, lessons, finished, onOpen, onStart }: Omit<Props, "attempt"> & { facts: Facts }) {
  const trainedIn = trainingFor(facts.report, lesson, lessons);
  const main = nextStep(facts.stars > 0, trainedIn, lesson, lessons, finished);
  const other = main.kind === "again" ? nextLesson(lesson, lessons, finished) : lesson;
  const { title } = main.lesson;
  const words = {
    train: sayReport("train", { title }),
    next: sayReport("next", { title }),
    again: sayReport("again"),
  };
  return (
    <nav class="steps">
      <button type="button" class="main-button" onClick={() => onOpen(main.lesson.id)}>
        {words[main.kind]}
      </button>
      {other && (
        <button type="button" class="second-button" onClick={() => onOpen(other.id)}>
          {other === lesson ? sayReport("again") : sayReport("next", { title: other.title })}
        </button>
      )}
      {!isTry() && (
        <a class="second-button" href={hashOf({ kind: "print", lessonId: lesson.id })}>
          {sayReport("printLink")}
        </a>
      )}
      <button type="button" class="second-button" onClick={onStart}>
        {isTry() ? say("play.toBench") : sayReport("course")}
      </button>
    </nav>
  );
}

function Chart({
  facts,
  lesson,
  scale,
  chart,
}: { facts: Facts; lesson: Lesson; scale: number } & Pick<ReturnType<typeof useReportSky>, "chart">) {
  const { width, height } = sheetSize(scale);
  return (
    <section
      class="report-sheet"
      aria-label={sayReport("showSheet")}
      style={{ width: `${width}px`, height: `${height}px` }}
    >
      {chart ? (
        <ReportSheet facts={facts} title={lesson.title} chart={chart} scale={scale} />
      ) : (
        <p class="aside">{sayReport("sheetComes")}</p>
      )}
      {chart?.bare && <p class="aside">{sayReport("sheetFailed")}</p>}
    </section>
  );
}

function Whole(props: Props & { facts: Facts }) {
  const { facts, lesson, lessons, attempt, finished } = props;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    scrollTo(0, 0);
    heading.current?.focus({ preventScroll: true });
  }, []);
  const { width, height } = windowSize.value;
  const layout = reportLayout(width, height);
  const { chart, sketch } = useReportSky(lesson, facts, props.sky);
  const sheet = <Chart facts={facts} lesson={lesson} scale={layout.sheetScale} chart={chart} />;
  return (
    <main
      class={`report ${layout.kind}`}
      style={{
        "--words-width": `${layout.wordsPx}px`,
        "--edge-left": `${layout.leftPx}px`,
        "--gap": `${layout.gapPx}px`,
      }}
    >
      <div class="report-words">
        <Headline facts={facts} lesson={lesson} heading={heading} />
        <ScoreLine facts={facts} lesson={lesson} bestBefore={bestBefore(attempt, finished)} />
        <Ways facts={facts} lesson={lesson} widthPx={layout.wordsPx} />
        {facts.report.trailDas > 0 && <WayList facts={facts} />}
        {layout.kind === "stacked" && sheet}
        <Sum facts={facts} />
        <Habit facts={facts} lesson={lesson} trainedIn={trainingFor(facts.report, lesson, lessons)} />
        <Steps {...props} />
        <Notes facts={facts} sketch={sketch} />
      </div>
      {layout.kind === "beside" && <div class="sheet-beside">{sheet}</div>}
    </main>
  );
}

/** An attempt that cannot be read any more says so; the rest of the logbook works. */
function Unreadable({ why, onStart }: { why: string; onStart: () => void }) {
  return (
    <main class="report stacked">
      <div class="report-words">
        <h1>{sayReport("unreadable")}</h1>
        <p>{why}</p>
        <nav class="steps">
          <button type="button" class="main-button" onClick={onStart}>
            {sayReport("course")}
          </button>
        </nav>
      </div>
    </main>
  );
}

export function ReportScreen(props: Props) {
  const { attempt, lesson, onStart } = props;
  const read = useMemo(() => {
    try {
      return { facts: factsOf(attempt, lesson) };
    } catch (error) {
      return { why: error instanceof Error ? error.message : String(error) };
    }
  }, [attempt, lesson]);
  return read.facts ? <Whole {...props} facts={read.facts} /> : <Unreadable why={read.why ?? ""} onStart={onStart} />;
}

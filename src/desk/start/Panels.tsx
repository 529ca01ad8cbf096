/** What the contents open: all lessons, and the logbook. */
import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import type { Lesson } from "#core/lesson/types.ts";
import { langOf } from "../app/langOf.ts";
import { isSeeded } from "../app/lessonOf.ts";
import type { FinishedAttempt } from "../app/ports.ts";
import { Icon } from "../icons.tsx";
import { Dots } from "../report/Dots.tsx";
import { bestStars } from "../report/nextStep.ts";
import { seedTitle } from "../seed/seedIds.ts";
import { clockWords, dayWords } from "./when.ts";
import { sayStart } from "./words.ts";

export function Panel({ title, onBack, children }: { title: string; onBack: () => void; children: ComponentChildren }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <section class="panel">
      <header>
        <h2 tabIndex={-1} ref={heading}>
          {title}
        </h2>
        <button type="button" class="tool" onClick={onBack}>
          <Icon name="back" />
          <span>{sayStart("back")}</span>
        </button>
      </header>
      {children}
    </section>
  );
}

interface LessonsProps {
  readonly lessons: readonly Lesson[];
  readonly finished: readonly FinishedAttempt[];
  readonly onOpen: (lessonId: string) => void;
  readonly onBack: () => void;
}
export function LessonsPanel({ lessons, finished, onOpen, onBack }: LessonsProps) {
  const parts = [...new Set(lessons.map(({ part }) => part))];
  return (
    <Panel title={sayStart("lessons")} onBack={onBack}>
      {parts.map((part) => (
        <section key={part}>
          <h3 class="aside">{sayStart("partTitle", { part })}</h3>
          {lessons
            .filter((lesson) => lesson.part === part)
            .map(({ id, number, title, minutes }) => (
              <button key={id} type="button" class="row" onClick={() => onOpen(id)}>
                <span lang={langOf({ id })}>{sayStart("lessonRow", { number, title })}</span>
                <span class="price">
                  {sayStart("lessonMinutes", { minutes })} <Dots stars={bestStars(id, finished) ?? 0} />
                </span>
              </button>
            ))}
        </section>
      ))}
    </Panel>
  );
}

/** What an attempt was of; null where that lesson is here no more. */
const titleOf = ({ lessonId }: FinishedAttempt, lessons: readonly Lesson[]): string | null =>
  isSeeded(lessonId) ? seedTitle(lessonId) : (lessons.find(({ id }) => id === lessonId)?.title ?? null);

export const resultOf = ({ word, points }: FinishedAttempt): string =>
  points === null || word === "shown" || word === "givenUp" || word === "missed"
    ? sayStart(`${word}`)
    : sayStart("points", { points });

interface LogbookProps {
  readonly lessons: readonly Lesson[];
  readonly finished: readonly FinishedAttempt[];
  /** Why nothing can be kept, or null. */
  readonly trouble: string | null;
  readonly nowMs: number;
  readonly onBack: () => void;
}
/** Every hop that ended, the latest first; each opens its report. */
export function LogbookPanel({ lessons, finished, trouble, nowMs, onBack }: LogbookProps) {
  const known = finished.filter((attempt) => titleOf(attempt, lessons) !== null).toReversed();
  return (
    <Panel title={sayStart("logbook")} onBack={onBack}>
      {trouble && <p class="aside">{trouble}</p>}
      {known.length === 0 && <p>{sayStart("emptyLog")}</p>}
      {known.map((attempt) => {
        const lesson = lessons.find(({ id }) => id === attempt.lessonId);
        const byClaims = lesson !== undefined && "claims" in lesson.pass && attempt.word === "found";
        return (
          <a key={attempt.id} class="row log-row" href={`#/report/${attempt.id}`}>
            <span>
              {titleOf(attempt, lessons)}{" "}
              <span class="aside">
                {dayWords(attempt.endedAtMs, nowMs)}, {clockWords(attempt.endedAtMs)}
              </span>
            </span>
            <span class="price">
              {byClaims ? sayStart("found") : resultOf(attempt)} <Dots stars={attempt.stars} />
            </span>
          </a>
        );
      })}
    </Panel>
  );
}

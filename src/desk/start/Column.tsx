/** The start page's words: the name, the next lesson, what else there is now. */
import type { ComponentChildren } from "preact";
import type { Lesson } from "#core/lesson/types.ts";
import { langOf } from "../app/langOf.ts";
import type { FinishedAttempt } from "../app/ports.ts";
import { goTo } from "../app/state.ts";
import { Icon } from "../icons.tsx";
import { ownInUse } from "../import/inUse.ts";
import { searchShown } from "../search/found.ts";
import { saySearch } from "../search/words.ts";
import { dailyId, saySeed } from "../seed/seedIds.ts";
import type { Course } from "./course.ts";
import { resultOf } from "./Panels.tsx";
import { RowIcon } from "./RowIcon.tsx";
import { dayWords } from "./when.ts";
import { sayStart } from "./words.ts";

/** What stands below the name. */
export type Open = "contents" | "free" | "lessons" | "logbook";

/** The name, its letters fading as the stars do. */
export function Name() {
  const letters = [...sayStart("name")];
  return (
    <header class="name">
      <h1 aria-label={sayStart("name")} tabIndex={-1}>
        {letters.map((letter, i) => (
          <span key={i} aria-hidden="true" style={{ opacity: (1 - (0.56 * i) / (letters.length - 1)).toFixed(2) }}>
            {letter}
          </span>
        ))}
      </h1>
      <p>{sayStart("tagline")}</p>
    </header>
  );
}

interface NextProps {
  readonly course: Course;
  readonly lesson: Lesson;
  readonly onOpen: (lessonId: string) => void;
}
/** The lesson that comes next, or, where all are passed, the last one again. */
export function Next({ course, lesson, onOpen }: NextProps) {
  const { part, number, of, title, briefing, minutes } = lesson;
  const begun = course.done > 0;
  const words = course.next ? sayStart(begun ? "goOn" : "begin") : sayStart("again");
  return (
    <section class="next">
      <p class="aside">{sayStart("courseAt", { part, number, of })}</p>
      <h2 lang={langOf(lesson)}>{title}</h2>
      <p>
        {course.next ? <span lang={langOf(lesson)}>{briefing.join(" ")}</span> : sayStart("allDone")}{" "}
        {course.next && sayStart("minutes", { minutes })}
      </p>
      <button type="button" class="main-button" onClick={() => onOpen(lesson.id)}>
        {words}
      </button>
    </section>
  );
}

interface RowProps {
  readonly id?: string;
  readonly icon: ComponentChildren;
  readonly name: string;
  readonly note: string;
  readonly onPress: () => void;
}
function Row(props: RowProps) {
  return (
    <button type="button" id={props.id} class="row" onClick={props.onPress}>
      {props.icon}
      <span class="row-name">{props.name}</span>
      <span class="row-note">{props.note}</span>
    </button>
  );
}

function logNote(finished: readonly FinishedAttempt[], nowMs: number): string {
  const last = finished.at(-1);
  if (!last) return sayStart("logbookEmpty");
  const when = dayWords(last.endedAtMs, nowMs);
  return finished.length === 1
    ? sayStart("logbookOne", { when })
    : sayStart("logbookNote", { count: finished.length, when });
}

function dailyNote(id: string, finished: readonly FinishedAttempt[]): string {
  const last = finished.findLast(({ lessonId }) => lessonId === id);
  return last ? saySeed("dailyDone", { result: resultOf(last) }) : saySeed("dailyNote");
}

interface ContentsProps {
  /** The lesson that the page proposes. */
  readonly next: Lesson;
  readonly lessons: readonly Lesson[];
  readonly finished: readonly FinishedAttempt[];
  readonly nowMs: number;
  readonly onShow: (what: Open) => void;
  readonly onOpen: (lessonId: string) => void;
}
/** What there is now, and how much of it. */
export function Contents({ next, lessons, finished, nowMs, onShow, onOpen }: ContentsProps) {
  const today = dailyId(nowMs);
  return (
    <section class="contents">
      <Row
        id="row-free"
        icon={<RowIcon name="free" />}
        name={saySeed("freeRow")}
        note={saySeed("freeNote")}
        onPress={() => onShow("free")}
      />
      <Row
        icon={<RowIcon name="daily" />}
        name={saySeed("dailyRow")}
        note={dailyNote(today, finished)}
        onPress={() => onOpen(today)}
      />
      <Row
        icon={<Icon name="sheet" />}
        name={sayStart("printRow")}
        note={sayStart("printNote")}
        onPress={() => goTo({ kind: "print", lessonId: next.id })}
      />
      <Row
        id="row-lessons"
        icon={<RowIcon name="lessons" />}
        name={sayStart("lessons")}
        note={sayStart("lessonsNote", { count: lessons.length })}
        onPress={() => onShow("lessons")}
      />
      <Row
        id="row-logbook"
        icon={<RowIcon name="logbook" />}
        name={sayStart("logbook")}
        note={logNote(finished, nowMs)}
        onPress={() => onShow("logbook")}
      />
      <Row
        icon={<RowIcon name="bench" />}
        name={sayStart("bench")}
        note={sayStart("benchNote")}
        onPress={() => goTo({ kind: "bench", trying: false })}
      />
      <Row
        id="row-find"
        icon={<Icon name="find" />}
        name={saySearch("title")}
        note={saySearch("note")}
        onPress={() => {
          searchShown.value = true;
        }}
      />
      <Row
        icon={<RowIcon name="own" />}
        name={sayStart("own")}
        note={sayStart(ownInUse.value ? "ownInUse" : "ownNote")}
        onPress={() => goTo({ kind: "catalogue" })}
      />
    </section>
  );
}

/** Beside the lamp, which is the screen's too. */
export function ScreenTool() {
  return (
    <button type="button" class="tool" title={sayStart("screenNote")} onClick={() => goTo({ kind: "screen" })}>
      <RowIcon name="screen" />
      <span>{sayStart("screen")}</span>
    </button>
  );
}

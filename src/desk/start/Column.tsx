/** The start page's words: the name, the next lesson, what else there is now. */
import type { ComponentChildren } from "preact";
import type { Lesson } from "#core/lesson/types.ts";
import { langOf } from "../app/langOf.ts";
import type { FinishedAttempt } from "../app/ports.ts";
import { goTo } from "../app/state.ts";
import { Icon } from "../icons.tsx";
import { ownInUse } from "../import/inUse.ts";
import { searchShown } from "../search/found.ts";
import { dailyId, saySeed } from "../seed/seedIds.ts";
import { say } from "../words/say.ts";
import type { Course } from "./course.ts";
import { resultOf } from "./Panels.tsx";
import { RowIcon } from "./RowIcon.tsx";
import { dayWords } from "./when.ts";

/** What stands below the name. */
export type Open = "contents" | "free" | "lessons" | "logbook";

/** The name, its letters fading as the stars do. */
export function Name() {
  const letters = [...say("start.name")];
  return (
    <header class="name">
      <h1 aria-label={say("start.name")} tabIndex={-1}>
        {letters.map((letter, i) => (
          <span key={i} aria-hidden="true" style={{ opacity: (1 - (0.56 * i) / (letters.length - 1)).toFixed(2) }}>
            {letter}
          </span>
        ))}
      </h1>
      <p>{say("start.tagline")}</p>
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
  const words = course.next ? say(begun ? "start.goOn" : "start.begin") : say("start.again");
  return (
    <section class="next">
      <p class="aside">{say("start.courseAt", { part, number, of })}</p>
      <h2 lang={langOf(lesson)}>{title}</h2>
      <p>
        {course.next ? <span lang={langOf(lesson)}>{briefing.join(" ")}</span> : say("start.allDone")}{" "}
        {course.next && say("start.minutes", { minutes })}
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
  if (!last) return say("start.logbookEmpty");
  const when = dayWords(last.endedAtMs, nowMs);
  return finished.length === 1
    ? say("start.logbookOne", { when })
    : say("start.logbookNote", { count: finished.length, when });
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
        name={say("start.printRow")}
        note={say("start.printNote")}
        onPress={() => goTo({ kind: "print", lessonId: next.id })}
      />
      <Row
        id="row-lessons"
        icon={<RowIcon name="lessons" />}
        name={say("start.lessons")}
        note={say("start.lessonsNote", { count: lessons.length })}
        onPress={() => onShow("lessons")}
      />
      <Row
        id="row-logbook"
        icon={<RowIcon name="logbook" />}
        name={say("start.logbook")}
        note={logNote(finished, nowMs)}
        onPress={() => onShow("logbook")}
      />
      <Row
        icon={<RowIcon name="bench" />}
        name={say("start.bench")}
        note={say("start.benchNote")}
        onPress={() => goTo({ kind: "bench", trying: false })}
      />
      <Row
        id="row-find"
        icon={<Icon name="find" />}
        name={say("search.title")}
        note={say("search.note")}
        onPress={() => {
          searchShown.value = true;
        }}
      />
      <Row
        icon={<RowIcon name="own" />}
        name={say("start.own")}
        note={say(ownInUse.value ? "start.ownInUse" : "start.ownNote")}
        onPress={() => goTo({ kind: "catalogue" })}
      />
    </section>
  );
}

/** Beside the lamp, which is the screen's too. */
export function ScreenTool() {
  return (
    <button type="button" class="tool" title={say("start.screenNote")} onClick={() => goTo({ kind: "screen" })}>
      <RowIcon name="screen" />
      <span>{say("start.screen")}</span>
    </button>
  );
}

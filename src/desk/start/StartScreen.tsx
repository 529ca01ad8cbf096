/** The start page: the course as a constellation in the barrel, what comes next, and what else there is now. */
import "../styles/play.css";
import "../styles/start.css";
import type { ComponentChildren } from "preact";
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { Lesson } from "#core/lesson/types.ts";
import type { FinishedAttempt, Store } from "../app/ports.ts";
import { keysShown, windowSize } from "../app/state.ts";
import { Icon } from "../icons.tsx";
import { Tools } from "../play/Corners.tsx";
import { KeysPanel } from "../play/KeysPanel.tsx";
import { say } from "../words/say.ts";
import { CourseField } from "./CourseField.tsx";
import { CourseRim } from "./CourseRim.tsx";
import { type Course, courseOf } from "./course.ts";
import { startLayout } from "./layout.ts";
import { LessonsPanel, LogbookPanel } from "./Panels.tsx";
import { RowIcon } from "./RowIcon.tsx";
import { SheetBelow } from "./SheetBelow.tsx";
import { dayWords } from "./when.ts";

interface Props {
  readonly lessons: readonly Lesson[];
  readonly finished: readonly FinishedAttempt[];
  readonly onOpen: (lessonId: string) => void;
  /** Why nothing can be kept. */
  readonly trouble?: Store["trouble"];
}
type Open = "contents" | "lessons" | "logbook";

const TROUBLES = {
  unavailable: "start.troubleUnavailable",
  full: "start.troubleFull",
  newer: "start.troubleNewer",
} as const;
const troubleWords = (trouble: Store["trouble"] = "none"): string | null =>
  trouble === "none" ? null : say(TROUBLES[trouble]);

/** The name, its letters fading as the stars do. */
function Name() {
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

/** The lesson that comes next, or, where all are passed, the last one again. */
function Next({ course, lesson, onOpen }: { course: Course; lesson: Lesson; onOpen: Props["onOpen"] }) {
  const { part, number, of, title, briefing, minutes } = lesson;
  const begun = course.done > 0;
  const words = course.next ? say(begun ? "start.goOn" : "start.begin") : say("start.again");
  return (
    <section class="next">
      <p class="aside">{say("start.courseAt", { part, number, of })}</p>
      <h2>{title}</h2>
      <p>
        {course.next ? briefing.join(" ") : say("start.allDone")} {course.next && say("start.minutes", { minutes })}
      </p>
      <button type="button" class="main-button" onClick={() => onOpen(lesson.id)}>
        {words}
      </button>
    </section>
  );
}

function Row(props: { icon: ComponentChildren; name: string; note: string; onPress: () => void }) {
  return (
    <button type="button" class="row" onClick={props.onPress}>
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

function Contents({
  lessons,
  finished,
  nowMs,
  onShow,
}: Pick<Props, "lessons" | "finished"> & { nowMs: number; onShow: (what: Open) => void }) {
  return (
    <section class="contents">
      <Row
        icon={<RowIcon name="lessons" />}
        name={say("start.lessons")}
        note={say("start.lessonsNote", { count: lessons.length })}
        onPress={() => onShow("lessons")}
      />
      <Row
        icon={<RowIcon name="logbook" />}
        name={say("start.logbook")}
        note={logNote(finished, nowMs)}
        onPress={() => onShow("logbook")}
      />
      <Row
        icon={<Icon name="keys" />}
        name={say("start.keys")}
        note={say("start.keysNote")}
        onPress={() => {
          keysShown.value = true;
        }}
      />
    </section>
  );
}

export function StartScreen({ lessons, finished, onOpen, trouble }: Props) {
  const [open, setOpen] = useState<Open>("contents");
  const page = useRef<HTMLElement>(null);
  const nowMs = useMemo(() => Date.now(), []);
  const course = useMemo(() => courseOf(lessons, finished), [lessons, finished]);
  const { width, height } = windowSize.value;
  const { kind, barrel, type, column, sheet } = startLayout(width, height);
  const last = finished.findLast(({ lessonId }) => lessons.some(({ id }) => id === lessonId)) ?? null;
  const lastLesson = lessons.find(({ id }) => id === last?.lessonId);
  const shown = course.next ?? lastLesson ?? lessons[0];
  useEffect(() => {
    scrollTo(0, 0);
    page.current?.querySelector("h1")?.focus({ preventScroll: true });
  }, []);
  useEscape(open !== "contents", () => setOpen("contents"));
  if (!shown) return null;
  const { x, y, fieldPx, rimPx } = barrel;
  const back = () => setOpen("contents");
  const columnStyle = { "--left": `${column.left}px`, "--top": `${column.top}px`, "--width": `${column.width}px` };
  return (
    <main ref={page} class={`start ${kind}`} style={{ "--type": type, "--barrel-bottom": `${y + fieldPx + rimPx}px` }}>
      {kind === "stacked" && <Name />}
      {sheet && <SheetBelow lesson={lastLesson ?? shown} last={last} at={sheet} onOpen={onOpen} />}
      <div class="barrel" style={{ transform: `translate(${x}px, ${y}px)` }}>
        <CourseRim course={course} barrel={barrel} onOpen={onOpen} />
        <CourseField course={course} radius={fieldPx} />
      </div>
      <div class="column" style={columnStyle}>
        {kind === "wide" && <Name />}
        {open === "contents" && <Next course={course} lesson={shown} onOpen={onOpen} />}
        {open === "contents" && <Contents lessons={lessons} finished={finished} nowMs={nowMs} onShow={setOpen} />}
        {open === "lessons" && <LessonsPanel lessons={lessons} finished={finished} onOpen={onOpen} onBack={back} />}
        {open === "logbook" && (
          <LogbookPanel
            lessons={lessons}
            finished={finished}
            trouble={troubleWords(trouble)}
            nowMs={nowMs}
            onBack={back}
          />
        )}
        {kind === "stacked" && <Tools withKeys={false} />}
      </div>
      {kind === "wide" && (
        <>
          <p class="key-words aside">
            {say("start.eachOne")} <span>{say("start.brighter")}</span> {say("start.later")}
          </p>
          <div class="corner">
            <Tools withKeys={false} />
          </div>
        </>
      )}
      {keysShown.value && <KeysPanel />}
    </main>
  );
}

/** Escape closes what is open, the keys first. */
function useEscape(isOpen: boolean, close: () => void): void {
  const latest = useRef({ isOpen, close });
  latest.current = { isOpen, close };
  useEffect(() => {
    const onKey = ({ key }: KeyboardEvent) => {
      if (key !== "Escape") return;
      if (keysShown.value) keysShown.value = false;
      else if (latest.current.isOpen) latest.current.close();
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  }, []);
}

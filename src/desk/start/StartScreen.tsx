/** The start page: the course as a constellation in the barrel, what comes next, and what else there is now. */
import "../styles/play.css";
import "../styles/start.css";
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { Lesson } from "#core/lesson/types.ts";
import type { FinishedAttempt, Store } from "../app/ports.ts";
import { keysShown, windowSize } from "../app/state.ts";
import { Tools } from "../play/Corners.tsx";
import { Contents, Name, Next, type Open, ScreenTool } from "./Column.tsx";
import { CourseField } from "./CourseField.tsx";
import { CourseRim } from "./CourseRim.tsx";
import { courseOf } from "./course.ts";
import { FreePanel } from "./FreePanel.tsx";
import { LanguageTool } from "./LanguageTool.tsx";
import { startLayout } from "./layout.ts";
import { LessonsPanel, LogbookPanel } from "./Panels.tsx";
import { SheetBelow } from "./SheetBelow.tsx";
import { sayStart } from "./words.ts";

interface Props {
  readonly lessons: readonly Lesson[];
  readonly finished: readonly FinishedAttempt[];
  readonly onOpen: (lessonId: string) => void;
  /** Why nothing can be kept. */
  readonly trouble?: Store["trouble"];
}

const TROUBLES = {
  unavailable: "troubleUnavailable",
  full: "troubleFull",
  newer: "troubleNewer",
} as const;
const troubleWords = (trouble: Store["trouble"] = "none"): string | null =>
  trouble === "none" ? null : sayStart(TROUBLES[trouble]);

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
  const back = () => {
    setOpen("contents");
    // The row that opened the panel has the focus again.
    requestAnimationFrame(() => document.getElementById(`row-${open}`)?.focus());
  };
  useEscape(open !== "contents", back);
  if (!shown) return null;
  const { x, y, fieldPx, rimPx } = barrel;
  const columnStyle = { "--left": `${column.left}px`, "--top": `${column.top}px`, "--width": `${column.width}px` };
  return (
    <main ref={page} class={`start ${kind}`} style={{ "--type": type, "--barrel-bottom": `${y + fieldPx + rimPx}px` }}>
      {kind === "stacked" && <Name />}
      <div class="barrel" style={{ transform: `translate(${x}px, ${y}px)` }}>
        <CourseRim course={course} barrel={barrel} onOpen={onOpen} />
        <CourseField course={course} radius={fieldPx} />
      </div>
      <div class="column" style={columnStyle}>
        {kind === "wide" && <Name />}
        {open === "contents" && <Next course={course} lesson={shown} onOpen={onOpen} />}
        {open === "contents" && (
          <Contents next={shown} lessons={lessons} finished={finished} nowMs={nowMs} onShow={setOpen} onOpen={onOpen} />
        )}
        {open === "free" && <FreePanel onOpen={onOpen} onBack={back} />}
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
        {kind === "stacked" && (
          <Tools>
            <ScreenTool />
            <LanguageTool />
          </Tools>
        )}
      </div>
      {kind === "wide" && (
        <>
          <p class="key-words aside">
            {sayStart("eachOne")} <span>{sayStart("brighter")}</span> {sayStart("later")}
          </p>
          <div class="corner">
            <Tools>
              <ScreenTool />
              <LanguageTool />
            </Tools>
          </div>
        </>
      )}
      {sheet && <SheetBelow lesson={lastLesson ?? shown} last={last} at={sheet} onOpen={onOpen} />}
    </main>
  );
}

/** Escape closes what is open, but the table of keys first. */
function useEscape(isOpen: boolean, close: () => void): void {
  const latest = useRef({ isOpen, close });
  latest.current = { isOpen, close };
  useEffect(() => {
    const onKey = ({ key, defaultPrevented }: KeyboardEvent) => {
      const isOurs = key === "Escape" && !defaultPrevented && !keysShown.value;
      if (isOurs && latest.current.isOpen) latest.current.close();
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  }, []);
}

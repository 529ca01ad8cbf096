/** The lessons that come along, to begin with one. */
import { useEffect, useRef } from "preact/hooks";
import type { Lesson } from "#core/lesson/types.ts";
import { Icon } from "../icons.tsx";
import { sayBench } from "./words.ts";

interface Props {
  readonly lessons: readonly Lesson[];
  readonly onTake: (lesson: Lesson) => void;
  readonly onClose: () => void;
}
export function StartFrom({ lessons, onTake, onClose }: Props) {
  const first = useRef<HTMLButtonElement>(null);
  useEffect(() => first.current?.focus(), []);
  return (
    <section
      class="start-from"
      aria-label={sayBench("startFrom")}
      onKeyDown={({ key }) => {
        if (key === "Escape") onClose();
      }}
    >
      {lessons.map((lesson, i) => (
        <button key={lesson.id} ref={i === 0 ? first : null} type="button" class="row" onClick={() => onTake(lesson)}>
          <span>
            <span class="figures">{lesson.id}</span> {lesson.title}
          </span>
          <span class="price">{sayBench("startNote", { minutes: lesson.minutes })}</span>
        </button>
      ))}
      <button type="button" class="tool" onClick={onClose}>
        <Icon name="close" />
        <span>{sayBench("close")}</span>
      </button>
    </section>
  );
}

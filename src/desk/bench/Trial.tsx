/** A lesson tried from the bench, or in another sky: hopped and reported on as any other, kept nowhere. */
import { useEffect, useMemo, useState } from "preact/hooks";
import type { Lesson } from "#core/lesson/types.ts";
import type { Dir } from "#core/seams/index.ts";
import type { Desk } from "../app/begin.ts";
import { finish } from "../app/finish.ts";
import type { FinishedAttempt } from "../app/ports.ts";
import { createPlay } from "../play/controller.ts";
import { PlayScreen } from "../play/PlayScreen.tsx";
import type { OpenSky } from "../play/skies.ts";
import { ReportScreen } from "../report/ReportScreen.tsx";
import { createMemoryStore } from "../store/memoryStore.ts";

/** A desk of its own, so that neither logbook nor a left attempt hears of the try. */
const deskFor = (lesson: Lesson, sound: Desk["sound"]): Desk => ({
  store: createMemoryStore(),
  sound,
  lessons: [lesson],
  finished: [],
});

interface HopProps {
  readonly desk: Desk;
  readonly lesson: Lesson;
  readonly sky: OpenSky | undefined;
  readonly lookFrom: Dir | undefined;
  readonly onEnded: (attempt: FinishedAttempt) => void;
}
function Hop({ desk, lesson, sky, lookFrom, onEnded }: HopProps) {
  const model = useMemo(
    () =>
      createPlay({
        lesson,
        ports: desk,
        sky,
        lookFrom,
        onEnded: (attempt) => void finish(desk, lesson, attempt).then(onEnded),
      }),
    [desk, lesson, sky, lookFrom],
  );
  useEffect(() => () => model.unmount(), [model]);
  return <PlayScreen model={model} />;
}

interface Props {
  readonly lesson: Lesson;
  readonly sound: Desk["sound"];
  /** Instead of the lesson's own. */
  readonly sky?: OpenSky;
  /** The lesson is but looked at, from here. */
  readonly lookFrom?: Dir;
  readonly onBack: () => void;
}
export function Trial({ lesson, sound, sky, lookFrom, onBack }: Props) {
  const desk = useMemo(() => deskFor(lesson, sound), [lesson, sound]);
  const [tries, setTries] = useState(1);
  const [ended, setEnded] = useState<FinishedAttempt | null>(null);
  if (!ended) return <Hop key={tries} desk={desk} lesson={lesson} sky={sky} lookFrom={lookFrom} onEnded={setEnded} />;
  const again = () => {
    setEnded(null);
    setTries(tries + 1);
  };
  return (
    <ReportScreen
      key={ended.id}
      attempt={ended}
      lesson={lesson}
      sky={sky}
      lessons={desk.lessons}
      finished={desk.finished}
      onOpen={again}
      onStart={onBack}
    />
  );
}

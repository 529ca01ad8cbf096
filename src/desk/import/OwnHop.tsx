/** A catalogue lesson hopped among the reader's own stars. Nothing of it is kept: it says nothing about the catalogue sky. */
import "../styles/play.css";
import "../styles/import.css";
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { Lesson } from "#core/lesson/types.ts";
import type { Sound } from "../app/ports.ts";
import { Trial } from "../bench/Trial.tsx";
import { openSkyOf } from "../play/skies.ts";
import { ownInUse } from "./inUse.ts";
import { ENOUGH_STARS, fewestStars } from "./thinWay.ts";
import { useOwnSky } from "./useOwnSky.ts";
import { say } from "./words.ts";

interface Props {
  readonly lesson: Lesson;
  readonly sound: Sound;
  readonly onBack: () => void;
}

/** Said before a hop whose fields would be all but empty, with a way on and two others. */
function ThinWay({ count, onHop, onBack }: { count: number; onHop: () => void; onBack: () => void }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <main class="own-thin">
      <h1 tabIndex={-1} ref={heading}>
        {say("thinTitle")}
      </h1>
      <p>{count === 0 ? say("thinNone") : say(count === 1 ? "thinOne" : "thin", { count })}</p>
      <div class="own-thin-acts">
        <button
          type="button"
          class="main-button"
          onClick={() => {
            ownInUse.value = false;
          }}
        >
          {say("thinCatalogue")}
        </button>
        <button type="button" class="second-button" onClick={onHop}>
          {say("thinHop")}
        </button>
        <button type="button" class="second-button" onClick={onBack}>
          {say("toStart")}
        </button>
      </div>
    </main>
  );
}

/** Where the catalogue has gone, the lesson's own sky is used again. */
export function OwnHop({ lesson, sound, onBack }: Props) {
  const own = useOwnSky();
  const sky = useMemo(() => own && openSkyOf(lesson, own), [lesson, own]);
  const [fewest, setFewest] = useState<number | null>(null);
  const [isTold, setTold] = useState(false);
  useEffect(() => {
    let isHere = true;
    if (sky)
      void fewestStars(lesson, sky).then(
        (count) => isHere && setFewest(count),
        // What is wrong with the stars the hop itself says.
        () => isHere && setFewest(ENOUGH_STARS),
      );
    return () => {
      isHere = false;
    };
  }, [lesson, sky]);
  if (!sky || fewest === null) return <main class="waiting" aria-busy="true" />;
  if (fewest < ENOUGH_STARS && !isTold) return <ThinWay count={fewest} onHop={() => setTold(true)} onBack={onBack} />;
  return <Trial lesson={lesson} sound={sound} sky={sky} onBack={onBack} />;
}

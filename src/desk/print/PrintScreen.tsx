/** A lesson's hop sheet, set for one page of A4, and the tools that print it. */
import "../styles/print.css";
import { useEffect, useRef, useState } from "preact/hooks";
import type { Lesson } from "#core/lesson/types.ts";
import type { FinishedAttempt } from "../app/ports.ts";
import { skyWords } from "../play/conditions.ts";
import { nightTime } from "../report/facts.ts";
import { sayReport } from "../report/words.ts";
import { fixed } from "../words/say.ts";
import { gearWords, short } from "./figures.ts";
import { NightPlot } from "./NightPlot.tsx";
import { HopChart, Legend, Target, Views, Way, WideChart } from "./parts.tsx";
import { type HopSheet, setSheet } from "./setSheet.ts";
import { sayPrint } from "./words.ts";

interface Props {
  readonly lesson: Lesson;
  readonly finished: readonly FinishedAttempt[];
}

/** Lessons that guide tell their way; the others once they have been hopped. */
const tellsWay = ({ level, id }: Lesson, finished: readonly FinishedAttempt[]): boolean =>
  level === "G" || level === "C" || finished.some(({ lessonId }) => lessonId === id);

const latitude = (latDeg: number): string =>
  sayPrint(latDeg < 0 ? "south" : "north", { deg: fixed(Math.abs(latDeg), 1) });

function Head({ sheet }: { sheet: HopSheet }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus({ preventScroll: true }), []);
  const { lesson, rows, compiled } = sheet;
  const { place } = lesson;
  const gear = rows.map((row) => row.gear).filter(({ kind }) => kind !== "eye");
  const when = nightTime({ compiled }, 0);
  return (
    <header>
      <h1 tabIndex={-1} ref={heading}>
        {lesson.title}
      </h1>
      <div>
        <p>{sayPrint("headline", { ...when, place: place.name, lat: latitude(place.latDeg) })}</p>
        <p>{gear.map(gearWords).join("; ")}</p>
        <p>{sayPrint("sky", { words: skyWords(place.skyMagPerArcsec2), mu: short(place.skyMagPerArcsec2, 2) })}</p>
      </div>
    </header>
  );
}

function Foot({ lesson: { sky } }: { lesson: Lesson }) {
  return (
    <>
      <p class="seen">
        <span>{sayPrint("seenOn")}</span>
        <i />
        <span>{sayPrint("seenAt")}</span>
        <i />
        <span>{sayPrint("seenSky")}</span>
        <i />
      </p>
      <footer>{sky === "catalogue" ? sayPrint("credit") : sayPrint("creditPractice", { seed: sky.practice })}</footer>
    </>
  );
}

function Page({ sheet, night, printed }: { sheet: HopSheet; night: boolean; printed: boolean }) {
  return (
    <article class={night ? "hop-sheet for-night" : "hop-sheet"}>
      <Head sheet={sheet} />
      <div class="columns">
        <div>
          <WideChart sheet={sheet} />
          <Views sheet={sheet} />
          <Target sheet={sheet} />
          <Legend sheet={sheet} />
        </div>
        <div>
          <HopChart sheet={sheet} />
          <Way sheet={sheet} printed={printed} />
        </div>
      </div>
      <NightPlot night={sheet.night} lonDeg={sheet.lesson.place.lonDeg} practice={sheet.lesson.sky !== "catalogue"} />
      <Foot lesson={sheet.lesson} />
    </article>
  );
}

export function PrintScreen({ lesson, finished }: Props) {
  const [sheet, setSet] = useState<HopSheet | null>(null);
  const [why, setWhy] = useState("");
  const [night, setNight] = useState(false);
  const printed = tellsWay(lesson, finished);
  useEffect(() => {
    let here = true;
    scrollTo(0, 0);
    setSheet(lesson, printed).then(
      (set) => here && setSet(set),
      (error: unknown) => here && setWhy(error instanceof Error ? error.message : String(error)),
    );
    return () => {
      here = false;
    };
  }, [lesson, printed]);
  return (
    <main class="printing" aria-busy={!sheet && !why}>
      <nav class="print-tools">
        <a class="second-button" href="#/">
          {sayReport("course")}
        </a>
        <button type="button" class="second-button" aria-pressed={night} onClick={() => setNight(!night)}>
          {sayPrint("night")}
        </button>
        <button type="button" class="main-button" disabled={!sheet} onClick={() => print()}>
          {sayPrint("print")}
        </button>
      </nav>
      {sheet ? (
        <Page sheet={sheet} night={night} printed={printed} />
      ) : (
        <p role="status">{why ? sayPrint("failed", { why }) : sayPrint("comes")}</p>
      )}
    </main>
  );
}

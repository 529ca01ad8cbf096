/** The words beside the field: what to do now, what it may cost to ask, and the way back to the anchor. */
import type { Ref } from "preact";
import { useEffect, useState } from "preact/hooks";
import { langOf } from "../app/langOf.ts";
import { homeHash, isTry } from "../app/state.ts";
import { WayRows } from "../steps/WayRows.tsx";
import { fixed, say } from "../words/say.ts";
import { HelpRows } from "./HelpRows.tsx";
import type { PlayModel } from "./model.ts";

interface WordsProps {
  readonly model: PlayModel;
  readonly headline: Ref<HTMLHeadingElement>;
  /** Why a press did nothing, until the next thing happens. */
  readonly why: string | null;
  /** Where room is short, words and rows take turns. */
  readonly show: "all" | "words" | "rows";
  readonly onBegin: () => void;
}

function Headline({ words, at, lang }: { words: string; at: Ref<HTMLHeadingElement>; lang?: string | undefined }) {
  return (
    <h2 class="headline" tabIndex={-1} ref={at} lang={lang}>
      {words}
    </h2>
  );
}

const degrees = (deg: number) => say("play.degree", { deg: fixed(deg, 1) });

function Lengths({ model }: { model: PlayModel }) {
  const lengths = model.lengths.value;
  if (!lengths) return null;
  return (
    <p class="aside">
      {say("play.trail")} <span class="figures">{degrees(lengths.trailDeg)}</span> · {say("play.way")}{" "}
      <span class="figures">{degrees(lengths.wayDeg)}</span>
    </p>
  );
}

/** The one line that came up last; said aloud, politely. It stands where the lengths do, and gives them their place back. */
function Notice({ model, why }: { model: PlayModel; why: string | null }) {
  const notice = why ?? model.notice.value;
  return (
    <div class="notice">
      <p aria-live="polite">{notice}</p>
      {notice ? null : <Lengths model={model} />}
    </div>
  );
}

/** What an hour that was set does to the words and to the hop, and the way back to the lesson's own. */
function Hour({ model }: { model: PlayModel }) {
  const hour = model.hour.value;
  if (!hour) return null;
  return (
    <p class="aside">
      {hour.words}{" "}
      {model.night.value && (
        <button type="button" class="plain-link" onClick={() => model.resetTime()}>
          {hour.back}
        </button>
      )}
    </p>
  );
}

/** So many steps of a long way stand beside the words. */
const STEPS_IN_SIGHT = 3;

function Way({ model }: { model: PlayModel }) {
  const way = model.way.value;
  return way && <WayRows rows={way.steps} fieldDeg={way.fieldDeg} most={STEPS_IN_SIGHT} />;
}

function Briefing({ model, headline, onBegin }: Pick<WordsProps, "model" | "headline" | "onBegin">) {
  const { lesson } = model;
  const first = lesson.part === 1 && lesson.number === 1;
  return (
    <>
      <Headline words={lesson.title} at={headline} lang={langOf(lesson)} />
      <ul class="briefing" lang={langOf(lesson)}>
        {lesson.briefing.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <button type="button" class="main-button begin" onClick={onBegin}>
        {say("play.begin")}
      </button>
      {first && <p class="aside caution">{say("play.caution")}</p>}
    </>
  );
}

function Failed({ model, headline }: Pick<WordsProps, "model" | "headline">) {
  return (
    <>
      <Headline words={say("play.failed")} at={headline} />
      <p role="alert">{model.trouble.value}</p>
      <p>
        <a class="plain-link" href={homeHash()}>
          {isTry() ? say("play.toBench") : say("play.back")}
        </a>
      </p>
    </>
  );
}

export function Words({ model, headline, why, show, onBegin }: WordsProps) {
  const phase = model.phase.value;
  const [more, setMore] = useState(false);
  useEffect(() => {
    if (show === "words") setMore(false);
  }, [show]);
  const isMore = more && show !== "words";
  if (phase === "briefing") return <Briefing model={model} headline={headline} onBegin={onBegin} />;
  if (phase === "failed") return <Failed model={model} headline={headline} />;
  if (phase === "loading")
    return (
      <>
        <Headline words={say("play.loading")} at={headline} />
        <p>{say("play.loadingText")}</p>
      </>
    );
  const { headline: now, text } = model.now.value;
  const lang = langOf(model.lesson);
  return (
    <>
      <Headline words={now} at={headline} lang={lang} />
      {show !== "rows" && !isMore && (
        <p class="now" lang={lang}>
          {text}
        </p>
      )}
      {show !== "words" && !isMore && <Way model={model} />}
      <Notice model={model} why={why} />
      {model.screws.value && (
        <p class="aside">
          {say("play.screwsOn")}{" "}
          <button type="button" class="plain-link" onClick={() => model.setScrews(false)}>
            {say("play.screwsOff")}
          </button>
        </p>
      )}
      <Hour model={model} />
      {model.trouble.value && (
        <p class="aside" role="alert">
          {model.trouble.value}{" "}
          <button type="button" class="plain-link" onClick={() => model.retry()}>
            {say("play.tryAgain")}
          </button>
        </p>
      )}
      {show !== "words" && <HelpRows model={model} more={isMore} onMore={setMore} />}
    </>
  );
}

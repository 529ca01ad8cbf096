/** A sheet that lies half under the barrel: the last hop's, which opens its report, or tonight's, which begins its lesson. */
import { useEffect, useState } from "preact/hooks";
import { hopPage, pageCone, printPage } from "#core/chart/hopPages.ts";
import { marksToSvg } from "#core/chart/svg.ts";
import type { Lesson } from "#core/lesson/types.ts";
import type { CompiledAttempt } from "#core/seams/index.ts";
import { decodeRecord } from "#core/session/record.ts";
import type { FinishedAttempt } from "../app/ports.ts";
import { startAttempt } from "../play/attempt.ts";
import { createLoading, type Loading } from "../play/loading.ts";
import { type OpenSky, openSkyOf } from "../play/skies.ts";
import { say } from "../words/say.ts";
import { sayStart } from "./words.ts";

/** The barrel and the words come first. */
const AFTER_MS = 120;

async function printed(lesson: Lesson, last: FinishedAttempt | null, sky: OpenSky, loading: Loading): Promise<string> {
  const compiled: CompiledAttempt = last
    ? decodeRecord(last.recordText).compiled
    : (await startAttempt(lesson, sky, loading, true)).compiled;
  const guess = hopPage(compiled, []);
  const { blocks } = await loading.whole(pageCone(guess), guess.limitMag);
  const page = hopPage(compiled, blocks);
  const words = { anchor: say("hop.anchor"), target: say("hop.target") };
  return marksToSvg(page, printPage(page, compiled, sky, blocks, { words, ways: false }), lesson.title);
}

interface Props {
  /** The lesson of the last hop, or the next one where there was no hop yet. */
  readonly lesson: Lesson;
  readonly last: FinishedAttempt | null;
  readonly at: { readonly x: number; readonly y: number; readonly scale: number };
  readonly onOpen: (lessonId: string) => void;
}

/** Nothing where the sky does not come: the page is whole without. */
export function SheetBelow({ lesson, last, at, onOpen }: Props) {
  const [svg, setSvg] = useState("");
  useEffect(() => {
    let here = true;
    const sky = openSkyOf(lesson);
    const loading = createLoading(sky.source, () => undefined);
    const timer = setTimeout(() => {
      printed(lesson, last, sky, loading).then(
        (made) => here && setSvg(made),
        () => undefined,
      );
    }, AFTER_MS);
    return () => {
      here = false;
      clearTimeout(timer);
      loading.stop();
    };
  }, [lesson, last]);
  if (!svg) return null;
  const label = sayStart(last ? "lastSheet" : "nextSheet");
  const open = () => {
    if (last) location.hash = `#/report/${last.id}`;
    else onOpen(lesson.id);
  };
  return (
    <div class="sheet-below" style={{ left: `${at.x}px`, top: `${at.y}px`, "--u": at.scale }}>
      <span class="paper" aria-hidden="true" dangerouslySetInnerHTML={{ __html: svg }} />
      <button type="button" aria-label={label} title={label} onClick={open} />
    </div>
  );
}

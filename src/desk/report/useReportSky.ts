/** The chart and the sketch of a report, when their stars have come. */
import { useEffect, useState } from "preact/hooks";
import { pageCone, printPage } from "#core/chart/hopPages.ts";
import type { ChartPage } from "#core/chart/page.ts";
import type { ChartMark } from "#core/chart/types.ts";
import { seeingAt } from "#core/eye/eyeSeeing.ts";
import type { Lesson } from "#core/lesson/types.ts";
import type { Resident } from "#core/seams/index.ts";
import { createLoading, type Loading } from "../play/loading.ts";
import { type OpenSky, openSkyOf } from "../play/skies.ts";
import { say } from "../words/say.ts";
import type { Facts } from "./facts.ts";
import { reportPage } from "./reportPage.ts";
import { type Sketch, sketchNeeds, sketchOf } from "./sketch.ts";

export interface ReportSky {
  readonly page: ChartPage;
  readonly marks: readonly ChartMark[];
  /** The stars of the chart did not come. */
  readonly bare: boolean;
}

const NOTHING: Resident = { blocks: [], missing: [], complete: false, version: -1 };

async function chartOf(facts: Facts, sky: OpenSky, loading: Loading): Promise<ReportSky> {
  const { compiled } = facts.record;
  const guess = reportPage(compiled, facts.dirs, []);
  let bare = false;
  const { blocks } = await loading.whole(pageCone(guess), guess.limitMag).catch(() => {
    bare = true;
    return NOTHING;
  });
  const page = reportPage(compiled, facts.dirs, blocks);
  const words = { anchor: say("hop.anchor"), target: say("hop.target") };
  return { page, marks: printPage(page, compiled, sky, blocks, { words, ways: false }), bare };
}

async function sketchFrom(lesson: Lesson, facts: Facts, sky: OpenSky, loading: Loading): Promise<Sketch> {
  const seeing = seeingAt(lesson.place, facts.record.compiled.spec.startMs, sky.objects, {
    glowMuAt: await sky.glow(),
  });
  const { cone, limitMag } = sketchNeeds(facts.record, seeing);
  await loading.whole(cone, limitMag);
  return sketchOf(facts.record, { source: sky.source, seeing, objects: sky.objects });
}

/** Null until they are there; a sketch whose stars do not come is left out. `another`: instead of the lesson's own sky. */
export function useReportSky(
  lesson: Lesson,
  facts: Facts,
  another?: OpenSky,
): { chart: ReportSky | null; sketch: Sketch | null } {
  const [chart, setChart] = useState<ReportSky | null>(null);
  const [sketch, setSketch] = useState<Sketch | null>(null);
  useEffect(() => {
    let here = true;
    const sky = another ?? openSkyOf(lesson);
    const loading = createLoading(sky.source, () => undefined);
    void chartOf(facts, sky, loading).then((made) => here && setChart(made));
    if (facts.dirs.length > 0)
      void sketchFrom(lesson, facts, sky, loading).then(
        (made) => here && setSketch(made),
        () => undefined,
      );
    return () => {
      here = false;
      loading.stop();
    };
  }, [lesson, facts, another]);
  return { chart, sketch };
}

/** The trail on the chart beside the shortest way, with A and B where the dear part begins and where it went furthest. */
import { markName } from "../words/say.ts";
import "../styles/sheet.css";
import { signal } from "@preact/signals";
import { useEffect, useMemo, useState } from "preact/hooks";
import { dirFromMas, slerpDir } from "#core/celestial/vector.ts";
import { PLAIN_VIEW } from "#core/chart/sheetView.ts";
import { distanceDas } from "#core/score/places.ts";
import { sampleOfEvent } from "#core/score/rests.ts";
import type { Dir } from "#core/seams/index.ts";
import { reducedMotion } from "../app/state.ts";
import { Sheet } from "../sheet/Sheet.tsx";
import type { SheetHand, SheetMode, SheetNote, SheetProps } from "../sheet/types.ts";
import { degOf, type Facts, hoppingFieldDeg } from "./facts.ts";
import { REPORT_PAGE, trailPieces } from "./reportPage.ts";
import type { ReportSky } from "./useReportSky.ts";
import { sayReport } from "./words.ts";

/** The trail draws itself along its own time, so much faster, and never longer than this. */
const FASTER = 20;
const LONGEST_MS = 4000;
/** The place along a leg at which its words stand, clear of both ends. */
const LEG_WORDS_AT = 0.55;

/** Share of the trail's time that is drawn by now, 0 .. 1. */
function useDrawn(lengthMs: number): number {
  const wholeMs = Math.min(LONGEST_MS, lengthMs / FASTER);
  const [drawn, setDrawn] = useState(reducedMotion.value || wholeMs <= 0 ? 1 : 0);
  useEffect(() => {
    if (drawn === 1) return;
    let frame = 0;
    const startMs = performance.now();
    const next = () => {
      const share = Math.min(1, (performance.now() - startMs) / wholeMs);
      setDrawn(share);
      if (share < 1) frame = requestAnimationFrame(next);
    };
    frame = requestAnimationFrame(next);
    return () => cancelAnimationFrame(frame);
  }, []);
  return drawn;
}

const pinsOf = ({ record, dirs }: Facts): SheetHand["pins"] =>
  record.events.flatMap((event, i) =>
    event.kind === "pin" && dirs.length > 0
      ? [{ at: dirFromMas(event.at), truth: dirs[sampleOfEvent(record, i)] }]
      : [],
  );

function legNotes({ way }: Facts): SheetNote[] {
  const marks = way.marks.map(({ dir, name }) => ({ name: markName(name), dir: dirFromMas(dir) }));
  const [anchor, ...others] = marks;
  const lengths = others.map((mark, i) => distanceDeg(marks[i]!.dir, mark.dir));
  return others.map(({ dir, name: mark }, i) => {
    const at = slerpDir(marks[i]?.dir ?? anchor!.dir, dir, LEG_WORDS_AT);
    const text =
      others.length === 1
        ? sayReport("onlyLeg", { deg: lengths[i]! })
        : sayReport("leg", { number: i + 1, deg: lengths[i]!, mark });
    return { at, text, kind: "leg" };
  });
}
const distanceDeg = (a: Dir, b: Dir): string => degOf(distanceDas(a, b));

function trailNotes({ dear, dirs }: Facts): SheetNote[] {
  const middle = dirs[Math.floor(dirs.length / 3)];
  const named: SheetNote[] = middle ? [{ at: middle, text: sayReport("yourTrail"), kind: "trail" }] : [];
  if (!dear) return named;
  return [{ at: dear.from, text: "A", kind: "stop" }, { at: dear.furthest, text: "B", kind: "stop" }, ...named];
}

interface ReportSheetProps {
  readonly facts: Facts;
  readonly title: string;
  readonly chart: ReportSky;
  readonly scale: number;
}

/** Size of the report's sheet on the screen, CSS px. */
export const sheetSize = (scale: number): SheetProps["sizePx"] => ({
  width: Math.round(REPORT_PAGE.widthPx * scale),
  height: Math.round(REPORT_PAGE.heightPx * scale),
});

export function ReportSheet({ facts, title, chart, scale }: ReportSheetProps) {
  const { record, report, dirs, stood } = facts;
  const view = useMemo(() => signal(PLAIN_VIEW), []);
  const mode = useMemo(() => signal<SheetMode>("turn"), []);
  const { tMs, mark } = record.trail;
  const [fromMs, toMs] = [tMs[0] ?? 0, tMs.at(-1) ?? 0];
  const drawn = useDrawn(toMs - fromMs);
  const shown = drawn === 1 ? dirs.length : dirs.findIndex((_, i) => tMs[i]! > fromMs + drawn * (toMs - fromMs));
  const pieces = trailPieces(dirs.slice(0, shown), mark);
  const notes = useMemo(() => [...trailNotes(facts), ...legNotes(facts)], [facts]);
  const pins = useMemo(() => pinsOf(facts), [facts]);
  const { spec } = record.compiled;
  const target = dirFromMas(spec.targets[0]!.dir);
  const claimField = record.compiled.limits.find(({ gear }) => gear === spec.claimGear);
  const found = report.word === "found" || report.word === "notSeen";
  return (
    <Sheet
      page={chart.page}
      marks={chart.marks}
      view={view}
      mode={mode}
      hand={{
        trail: pieces.at(-1) ?? [],
        pencil: pieces.slice(0, -1),
        pins: drawn === 1 ? pins : [],
        pointing: found || drawn < 1 ? null : stood,
      }}
      ways={record.compiled.ways.map((way) => way.marks.map(({ dir }) => dirFromMas(dir)))}
      rings={[
        { at: target, fieldDeg: hoppingFieldDeg(record), style: "fieldRing" },
        ...(claimField && spec.claimGear !== spec.hoppingGear
          ? [{ at: target, fieldDeg: claimField.fieldDas / 36_000, style: "eyepieceRing" as const }]
          : []),
      ]}
      notes={drawn === 1 ? notes : []}
      lamp="full"
      lettering="level"
      sizePx={sheetSize(scale)}
      fieldDeg={hoppingFieldDeg(record)}
      title={sayReport("sheetTitle", { title })}
      reducedMotion={reducedMotion.value}
    />
  );
}

/** The play screen: barrel and sheet on a dark table, the ladder between them, words beside. */
import "../styles/sheet.css";
import "../styles/play.css";
import "../styles/barrel.css";
import "../styles/ladder.css";
import "../styles/words.css";
import "../styles/corners.css";
import "../styles/sheetPlace.css";
import "../styles/narrow.css";
import { useSignalEffect } from "@preact/signals";
import { useEffect, useRef, useState } from "preact/hooks";
import { windowSize } from "../app/state.ts";
import type { Box } from "./arcs.ts";
import { Barrel } from "./Barrel.tsx";
import { Conditions, LessonTitle, Tools } from "./Corners.tsx";
import { type Page, type PlayLayout, playLayout } from "./geometry.ts";
import { listenToKeys } from "./input.ts";
import { Ladder, LadderRow } from "./Ladder.tsx";
import type { PlayModel } from "./model.ts";
import { OpeningRing } from "./OpeningRing.tsx";
import { PageTools } from "./PageTools.tsx";
import { useLater } from "./useLater.ts";
import { Words } from "./Words.tsx";

const placed = ({ x, y, width, height }: Box) => ({
  left: `${x}px`,
  top: `${y}px`,
  width: `${width}px`,
  height: `${height}px`,
});
/** What the style sheet needs to know of a layout. */
const tokensOf = ({ scale, type, words, sheet, barrel }: PlayLayout, width: number) => ({
  "--u": scale,
  "--type": type,
  "--origin-x": `${barrel.x - 452 * scale}px`,
  "--origin-y": `${barrel.y - 450 * scale}px`,
  "--barrel-bottom": `${barrel.y + barrel.fieldPx + barrel.rimPx}px`,
  "--words-x": `${words.x}px`,
  "--words-right": `${width - words.x - words.width}px`,
  "--side-y": `${sheet.y + sheet.height + 6}px`,
});
const PLACES = { field: "#field", sheet: "#sheet-place .sheet-paper" } as const;
const focusOn = (place: keyof typeof PLACES) => document.querySelector<HTMLElement>(PLACES[place])?.focus();

/** A press that did nothing says why, until something else is said. */
function useWhy(model: PlayModel): [string | null, (why: string) => void] {
  const [why, setWhy] = useState<string | null>(null);
  useSignalEffect(() => {
    model.notice.value;
    model.claim.value;
    setWhy(null);
  });
  return [why, setWhy];
}

export function PlayScreen({ model }: { model: PlayModel }) {
  const [page, setPage] = useState<Page>("field");
  const [rows, setRows] = useState(false);
  const [why, setWhy] = useWhy(model);
  const headline = useRef<HTMLHeadingElement>(null);
  const asked = useRef(false);
  const { width, height } = windowSize.value;
  const phase = model.phase.value;
  const layout = playLayout(width, height, page, phase !== "play" ? "briefing" : rows ? "rows" : "usual");

  useEffect(() => {
    // On arrival, and where a change of phase took the focus away with what had it.
    const { activeElement } = document;
    if (activeElement === null || activeElement === document.body) headline.current?.focus({ preventScroll: true });
  }, [phase]);
  const begin = () => {
    model.begin();
    // The button that had the focus is gone; the field is what comes next.
    requestAnimationFrame(() => focusOn("field"));
  };
  const toSheet = () => {
    const there = page === "sheet" || document.activeElement?.closest(".sheet-place") != null;
    if (layout.turnsPages) setPage(page === "sheet" ? "field" : "sheet");
    requestAnimationFrame(() => focusOn(there ? "field" : "sheet"));
  };
  const latest = useRef({ toSheet });
  latest.current = { toSheet };
  useEffect(
    () =>
      listenToKeys(model, {
        toSheet: () => latest.current.toSheet(),
        setPin: () => {
          model.sheetMode.value = model.sheetMode.value === "pin" ? "turn" : "pin";
          if (model.sheetMode.value === "pin") latest.current.toSheet();
        },
      }),
    [model],
  );
  useEffect(() => {
    if (!layout.turnsPages) return;
    const to = model.asksPin.value ? "sheet" : asked.current ? "field" : null;
    asked.current = model.asksPin.value;
    if (!to) return;
    setPage(to);
    // What had the focus may be gone with the page.
    requestAnimationFrame(() => focusOn(to));
  }, [model.asksPin.value]);

  const onSheet = layout.turnsPages && page === "sheet";
  const late = useLater(model.page.value !== null, () => import("./SheetPlace.tsx"));
  return (
    <main class={`play ${layout.kind}`} data-page={page} style={tokensOf(layout, width)}>
      {!onSheet && <LessonTitle model={model} />}
      <Barrel
        model={model}
        layout={layout}
        page={page}
        toField={() => {
          setPage("field");
          requestAnimationFrame(() => focusOn("field"));
        }}
        onWhy={setWhy}
      />
      <OpeningRing model={model} layout={layout} />
      {!onSheet && <Ladder model={model} layout={layout} />}
      {late && (!layout.turnsPages || onSheet) && <late.SheetPlace model={model} layout={layout} />}
      {!onSheet && (
        <section class="words" style={placed(layout.words)}>
          {!layout.ladder && !rows && phase === "play" && <LadderRow model={model} />}
          <Words
            model={model}
            headline={headline}
            why={why}
            show={layout.turnsPages ? (rows ? "rows" : "words") : "all"}
            onBegin={begin}
          />
          {rows && layout.turnsPages && <Tools />}
        </section>
      )}
      {layout.turnsPages && (
        <PageTools model={model} layout={layout} page={page} rows={rows} onRows={setRows} onSheet={toSheet} />
      )}
      {!layout.turnsPages && (
        <div class="corner">
          <Tools />
          <Conditions model={model} />
        </div>
      )}
      {layout.kind === "phone" && !onSheet && <Conditions model={model} />}
    </main>
  );
}

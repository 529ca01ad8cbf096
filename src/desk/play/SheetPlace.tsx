/** The sheet on the table, with its tools in the free corner beside it. */
import { signal } from "@preact/signals";
import { useEffect, useMemo, useRef } from "preact/hooks";
import { reducedMotion } from "../app/state.ts";
import { Icon } from "../icons.tsx";
import { foundRings, searchShown, sheetPage } from "../search/found.ts";
import { saySearch } from "../search/words.ts";
import { Sheet } from "../sheet/Sheet.tsx";
import { type SheetTool, SheetTools } from "../sheet/SheetTools.tsx";
import { say } from "../words/say.ts";
import type { PlayLayout } from "./geometry.ts";
import type { PlayModel } from "./model.ts";
import { gearName } from "./rimWords.ts";
import { handOf, hoppingFieldDeg, lampOf } from "./sheetHand.ts";
import { useSheetSide } from "./useSheetSide.ts";

const NEAR_AT_HAND: readonly SheetTool[] = ["flip", "turn", "pin"];
const IN_LINES = { 1: "", 2: " in-lines", 3: " in-lines in-three" } as const;
const OTHERS: readonly SheetTool[] = ["closer", "pencil", "ruler", "legend"];

export function SheetPlace({ model, layout }: { model: PlayModel; layout: PlayLayout }) {
  const legend = useMemo(() => signal(false), []);
  const others = useMemo(() => signal(false), []);
  const beside = useRef<HTMLElement>(null);
  const side = useSheetSide(beside, model, layout);
  const page = model.page.value;
  useEffect(() => {
    sheetPage.value = page;
    return () => {
      sheetPage.value = null;
    };
  }, [page]);
  if (!page) return null;
  const { x, y, width, height } = layout.sheet;
  const scale = Math.min(width / page.widthPx, height / page.heightPx);
  const size = { width: Math.round(page.widthPx * scale), height: Math.round(page.heightPx * scale) };
  const instruments = model.ladder.value.map(({ gear, fieldDeg }) => ({ name: gearName(gear), fieldDeg }));
  const agrees = model.agrees.value;
  return (
    <>
      <section
        class="sheet-place"
        id="sheet-place"
        aria-label={say("play.sheet")}
        style={{ transform: `translate(${x + (width - size.width) / 2}px, ${y + (height - size.height) / 2}px)` }}
      >
        <Sheet
          page={page}
          marks={model.marks.value}
          view={model.sheetView}
          mode={model.sheetMode}
          hand={handOf(model)}
          lamp={lampOf(model)}
          lettering="level"
          sizePx={size}
          fieldDeg={hoppingFieldDeg(model)}
          title={model.lesson.title}
          proof={model.proof.value?.stars ?? null}
          rings={foundRings(page)}
          legend={legend}
          instruments={instruments}
          reducedMotion={reducedMotion.value}
          onView={(view) => model.sheetTurned(view)}
          onPin={(dir) => model.pinAt(dir)}
          onPencil={(dirs) => model.drawPencil(dirs)}
          onRubOut={() => model.rubOut()}
        />
      </section>
      {model.phase.value === "play" && (
        <section ref={beside} class={`sheet-side${side.atLeft ? " at-left" : ""}${IN_LINES[side.lines]}`}>
          {agrees && <p class="agrees">{say("play.agreesNow")}</p>}
          <SheetTools
            view={model.sheetView}
            mode={model.sheetMode}
            tools={others.value ? OTHERS : NEAR_AT_HAND}
            legend={legend}
            pencilLines={model.pencil.value.length}
            asks={model.asksPin.value ? say("hop.pinAsked") : undefined}
            onView={(view) => model.sheetTurned(view)}
            onRubOut={() => model.rubOut()}
          />
          {others.value && (
            <button
              type="button"
              class="tool"
              onClick={() => {
                searchShown.value = true;
              }}
            >
              <Icon name="find" />
              <span>{saySearch("toolWords")}</span>
            </button>
          )}
          <button
            type="button"
            class="tool other-tools"
            aria-expanded={others.value}
            onClick={() => {
              others.value = !others.value;
            }}
          >
            <Icon name={others.value ? "back" : "on"} />
            <span class="hidden-words">{say("play.otherTools")}</span>
          </button>
          {model.asksPin.value && (
            <button type="button" class="tool" onClick={() => model.leavePin()}>
              {say("play.leavePin")}
            </button>
          )}
        </section>
      )}
    </>
  );
}

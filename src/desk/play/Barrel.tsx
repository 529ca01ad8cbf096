/** The barrel: one canvas that the controller paints, the rim about it, and the hand's place over it. */
import { useEffect, useLayoutEffect, useRef } from "preact/hooks";
import { windowSize } from "../app/state.ts";
import { say } from "../words/say.ts";
import { Claim } from "./Claim.tsx";
import { openReach } from "./canvasReach.ts";
import { listenToField } from "./fieldHand.ts";
import type { Page, PlayLayout } from "./geometry.ts";
import type { PlayModel } from "./model.ts";
import { ArcPiece } from "./Piece.tsx";
import { FieldFocus, RimGround, RimLettering } from "./Rim.tsx";
import { CompassMarks, HandMark } from "./RimMarks.tsx";
import { useLater } from "./useLater.ts";

interface BarrelProps {
  readonly model: PlayModel;
  readonly layout: PlayLayout;
  /** On a phone the barrel looks in at a corner of the sheet, and leads back to the field. */
  readonly page: Page;
  readonly toField: () => void;
  readonly onWhy: (why: string) => void;
}

export function Barrel({ model, layout, page, toField, onWhy }: BarrelProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const { barrel } = layout;
  useEffect(() => {
    void model.mount(canvas.current!);
    return () => model.unmount();
  }, [model]);
  const asDoor = layout.kind === "phone" && page === "sheet";
  const { width, height } = windowSize.value;
  // Before the page is painted: the field of the page before would stand in the new one's place for a frame.
  useLayoutEffect(
    () => model.resize(barrel.fieldPx, barrel.rimPx, asDoor ? null : openReach(layout, width, height)),
    [model, barrel.fieldPx, barrel.rimPx, width, height, asDoor],
  );
  return (
    <section class="barrel" style={{ transform: `translate(${barrel.x}px, ${barrel.y}px)` }}>
      <RimGround barrel={barrel} />
      <div class={isDark(model) ? "canvas-place is-empty" : "canvas-place"} aria-hidden="true">
        <canvas ref={canvas} />
      </div>
      {asDoor ? <Door layout={layout} toField={toField} /> : <Field model={model} layout={layout} onWhy={onWhy} />}
    </section>
  );
}

/** Nothing is painted yet, or nothing will be. */
const isDark = ({ phase }: PlayModel) => phase.value === "loading" || phase.value === "failed";

const across = (px: number) => ({ left: `${-px}px`, top: `${-px}px`, width: `${2 * px}px`, height: `${2 * px}px` });

function Field({ model, layout, onWhy }: Pick<BarrelProps, "model" | "layout" | "onWhy">) {
  const hand = useRef<HTMLDivElement>(null);
  const { barrel } = layout;
  useEffect(() => listenToField(hand.current!, model), [model]);
  const inPlay = model.phase.value === "play";
  const late = useLater(model.page.value !== null, () => import("./GazeTools.tsx"));
  return (
    <>
      <div
        ref={hand}
        class={model.stare.value ? "field stares" : "field"}
        id="field"
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the field takes arrow keys and drags
        tabIndex={0}
        aria-label={model.fieldWords.value}
        style={across(barrel.fieldPx)}
      />
      <FieldFocus barrel={barrel} />
      <RimLettering model={model} layout={layout} />
      <CompassMarks model={model} barrel={barrel} />
      {inPlay && !model.isLook && <Claim model={model} layout={layout} onWhy={onWhy} />}
      <HandMark model={model} barrel={barrel} />
      {inPlay && late && <late.GazeTools model={model} layout={layout} />}
    </>
  );
}

function Door({ layout, toField }: { layout: PlayLayout; toField: () => void }) {
  const { fieldPx, rimPx } = layout.barrel;
  return (
    <>
      <ArcPiece text={say("play.toField").toUpperCase()} baselinePx={fieldPx + rimPx * 0.36} atDeg={62} sizePx={14.5} />
      <button
        type="button"
        class="door"
        aria-label={say("play.toFieldSaid")}
        style={across(fieldPx + rimPx)}
        onClick={toField}
      />
    </>
  );
}

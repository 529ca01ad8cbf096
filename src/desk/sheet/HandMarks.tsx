/** What the hand does, white over an ink casing; px on the paper from its middle, printed as near as the paper shows it. */
import { type ChartPage, projectionOf, ringRadiusPx } from "#core/chart/page.ts";
import type { SheetView } from "#core/chart/sheetView.ts";
import type { Dir } from "#core/seams/index.ts";
import type { SheetHand, SheetNote } from "./types.ts";

type Point = { readonly x: number; readonly y: number };
export interface HandMarksProps {
  readonly page: ChartPage;
  readonly view: SheetView;
  readonly pxPerPagePx: number;
  readonly hand: SheetHand;
  readonly stops: readonly SheetNote[];
  readonly proof: readonly Dir[] | null;
  /** Rings of the instruments about a place, in ink: part of the legend. */
  readonly fields: { readonly at: Dir; readonly fieldsDeg: readonly number[] } | null;
  /** Being drawn or moved now, px of the page. */
  readonly stroke: readonly Point[] | null;
  readonly cross: Point | null;
}
const px = (value: number) => value.toFixed(1);
const pathOf = (points: readonly Point[], closed = false) =>
  points.length > 1 ? `M${points.map(({ x, y }) => `${px(x)} ${px(y)}`).join("L")}${closed ? "Z" : ""}` : "";
const crossPath = ({ x, y }: Point, r: number) => `M${px(x - r)} ${px(y)}h${2 * r}M${px(x)} ${px(y - r)}v${2 * r}`;

/** A line twice: its casing in ink, and itself. */
function Cased({ d, kind }: { readonly d: string; readonly kind: string }) {
  return d ? (
    <>
      <path class={`casing casing-${kind}`} d={d} />
      <path class={`hand hand-${kind}`} d={d} />
    </>
  ) : null;
}
const circlePath = ({ x, y }: Point, r: number) =>
  `M${px(x - r)} ${px(y)}a${px(r)} ${px(r)} 0 1 0 ${px(2 * r)} 0a${px(r)} ${px(r)} 0 1 0 ${px(-2 * r)} 0Z`;

function Pin({ at, truth }: { readonly at: Point; readonly truth: Point | null }) {
  return (
    <>
      {truth && <Cased d={pathOf([at, truth])} kind="miss" />}
      {truth && <Cased d={crossPath(truth, 5)} kind="cross" />}
      <Cased d={circlePath(at, 5.5)} kind="pin" />
      <circle class="hand-dot" cx={px(at.x)} cy={px(at.y)} r="1.6" />
    </>
  );
}

export function HandMarks(props: HandMarksProps) {
  const { page, view, pxPerPagePx, hand, stops, proof, fields, stroke, cross } = props;
  const { project } = projectionOf(page);
  const grown = view.scale * pxPerPagePx;
  const onPaper = ({ x, y }: Point): Point => ({ x: (x - view.panX) * grown, y: (y - view.panY) * grown });
  const place = (dir: Dir): Point => {
    const out = { x: 0, y: 0 };
    project(dir, out);
    return onPaper(out);
  };
  const ringR = (fieldDeg: number) => ringRadiusPx(page, fieldDeg) * grown;
  const { ring, pointing, trail } = hand;
  return (
    <>
      {fields?.fieldsDeg.map((deg) => (
        <path key={deg} class="ink-ring" d={circlePath(place(fields.at), ringR(deg))} />
      ))}
      {hand.pencil.map((line, i) => (
        <Cased key={i} d={pathOf(line.map(place))} kind="pencil" />
      ))}
      {ring && <Cased d={circlePath(place(ring.dir), ringR(ring.fieldDeg))} kind={proof ? "ring is-proven" : "ring"} />}
      {trail && <Cased d={pathOf(trail.map(place))} kind="trail" />}
      {stops.map(({ at, text }) => (
        <circle key={text} class="stop" cx={px(place(at).x)} cy={px(place(at).y)} r="5.2" />
      ))}
      {pointing && <Cased d={crossPath(place(pointing), 6)} kind="cross" />}
      {hand.pins.map(({ at, truth }) => (
        <Pin key={at.join()} at={place(at)} truth={truth ? place(truth) : null} />
      ))}
      {proof && <path class="proof" d={pathOf(proof.map(place), proof.length > 2)} />}
      {stroke && <Cased d={pathOf(stroke.map(onPaper))} kind="pencil" />}
      {cross && <Cased d={crossPath(onPaper(cross), 11)} kind="cross" />}
    </>
  );
}

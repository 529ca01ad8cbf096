/** Small drawings over the barrel: each in the tightest box, for what lies over the moving field has its price by its size. */
import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import { arcText, type Box } from "./arcs.ts";

interface PieceProps {
  /** About the barrel's middle. */
  readonly box: Box;
  readonly class?: string;
  readonly children: ComponentChildren;
}

/** A drawing in coordinates about the barrel's middle, cut to a box. */
export function Piece({ box, class: name = "", children }: PieceProps) {
  const { x, y, width, height } = box;
  return (
    <svg
      class={`piece ${name}`}
      viewBox={`${x} ${y} ${width} ${height}`}
      width={width}
      height={height}
      style={{ left: `${x}px`, top: `${y}px` }}
      aria-hidden="true"
    >
      {children}
    </svg>
  );
}

interface ArcWordsProps {
  readonly text: string;
  readonly baselinePx: number;
  readonly atDeg: number;
  readonly sizePx: number;
  readonly class?: string;
}

/** Engraved text along an arc, inside a drawing. */
export function ArcWords({ text, baselinePx, atDeg, sizePx, class: name = "" }: ArcWordsProps) {
  const id = useId();
  return (
    <>
      <path id={id} d={arcText(text, baselinePx, atDeg, sizePx).path} fill="none" />
      <text class={`engraved ${name}`} font-size={sizePx} text-anchor="middle">
        <textPath href={`#${id}`} startOffset="50%">
          {text}
        </textPath>
      </text>
    </>
  );
}

/** Engraved text along an arc as a drawing of its own. */
export function ArcPiece(props: ArcWordsProps) {
  return (
    <Piece box={arcText(props.text, props.baselinePx, props.atDeg, props.sizePx).box}>
      <ArcWords {...props} />
    </Piece>
  );
}

/** What moves on the rim: north and east, where the lesson allows them, and the hand that pushes. */

import { say } from "../words/say.ts";
import { onCircle } from "./arcs.ts";
import { type Barrel, SHORT_UNDER_PX } from "./geometry.ts";
import type { PlayModel } from "./model.ts";
import { Piece } from "./Piece.tsx";

/** Marks follow the field in steps of so many degrees: finer ones nobody sees, and each is a new picture. */
const STEP_DEG = 0.5;
const HAND_STEP_DEG = 3;
const stepped = (deg: number, step: number) => Math.round(deg / step) * step;
const LETTER_BOX = { x: -11, y: -11, width: 22, height: 22 } as const;

function CompassMark({ barrel, atDeg, letter }: { barrel: Barrel; atDeg: number; letter: string }) {
  const { fieldPx, rimPx } = barrel;
  const tip = onCircle(fieldPx + 1.5, atDeg);
  const place = onCircle(fieldPx - 15, atDeg);
  const size = Math.min(11, rimPx * 0.22);
  return (
    <>
      <span class="rim-mark" style={{ transform: `translate(${tip.x}px, ${tip.y}px) rotate(${atDeg}deg)` }}>
        <Piece box={{ x: -8, y: -13, width: 16, height: 14 }}>
          <path class="mark" d={`M0 0L${-size / 2} ${-size}L${size / 2} ${-size}Z`} />
        </Piece>
      </span>
      <span class="rim-mark" style={{ transform: `translate(${place.x}px, ${place.y}px)` }}>
        <Piece box={LETTER_BOX}>
          <text class="compass-letter" y="5.2" text-anchor="middle">
            {letter}
          </text>
        </Piece>
      </span>
    </>
  );
}

export function CompassMarks({ model, barrel }: { model: PlayModel; barrel: Barrel }) {
  const compass = model.compass.value;
  if (!compass) return null;
  return (
    <>
      <CompassMark barrel={barrel} atDeg={stepped(compass.northDeg, STEP_DEG)} letter={say("play.north")} />
      <CompassMark barrel={barrel} atDeg={stepped(compass.eastDeg, STEP_DEG)} letter={say("play.east")} />
    </>
  );
}

/**
 * The hand: a palm on the far side of the rim, an arrow the way it pushes; fainter while it only holds. It keeps to the
 * strip inside the lettering.
 */
export function HandMark({ model, barrel }: { model: PlayModel; barrel: Barrel }) {
  const mark = model.handMark.value;
  if (!mark) return null;
  const { fieldPx, rimPx } = barrel;
  const atDeg = stepped(mark.towardDeg + 180, HAND_STEP_DEG);
  // A narrow rim is full of letters: there the arrow reaches a little into the field.
  const [out, length] = fieldPx < SHORT_UNDER_PX ? [0.13, 0.24] : [0.31, 0.27];
  const reach = fieldPx + rimPx * out;
  const half = Math.min(24, reach * 0.065);
  const deep = rimPx * length;
  const head = deep * 0.42;
  const arrow = `M0 ${deep * 0.2}V${deep}M${-head} ${deep - head}L0 ${deep}L${head} ${deep - head}`;
  return (
    <span
      class={mark.pushing ? "rim-mark hand-mark pushing" : "rim-mark hand-mark"}
      style={{ transform: `rotate(${atDeg}deg) translate(0, ${-reach}px)` }}
    >
      <Piece box={{ x: -half - 3, y: -4, width: 2 * half + 6, height: deep + 8 }}>
        <path
          d={`M${-half} ${(half * half) / (2 * reach)}Q0 ${(-half * half) / (2 * reach)} ${half} ${(half * half) / (2 * reach)}`}
        />
        <path d={arrow} />
      </Piece>
    </span>
  );
}

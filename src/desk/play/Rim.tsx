/** The rim: what the instrument is and does, as lettering along the arc. */

import { fixed, say } from "../words/say.ts";
import { arcPath, bandBox, fittedSizePx, onCircle } from "./arcs.ts";
import { DIAL, dialOf } from "./dial.ts";
import { type Barrel, type PlayLayout, SHORT_UNDER_PX } from "./geometry.ts";
import type { PlayModel } from "./model.ts";
import { ArcPiece, ArcWords, Piece } from "./Piece.tsx";
import { imageLine, instrumentLine } from "./rimWords.ts";

/** Sizes of the rim's lettering, px at type 1. */
const SIZE = { instrument: 15.5, small: 14, figure: 12.5 } as const;
const ARC_PX = Math.PI / 180;

/** Ring, hairs and shade, flat, under the canvas: where the canvas ends it goes on. */
export function RimGround({ barrel }: { barrel: Barrel }) {
  const { fieldPx, rimPx } = barrel;
  const outer = fieldPx + rimPx;
  const box = bandBox(fieldPx, outer, 0, 360, 2);
  const at = (px: number) => (fieldPx + px) / outer;
  return (
    <Piece box={box} class="rim-ground">
      <defs>
        <radialGradient id="rim-shade" gradientUnits="userSpaceOnUse" cx="0" cy="0" r={outer}>
          <stop class="stop-lit" offset={at(2)} />
          <stop class="stop-mid" offset={at(0.34 * rimPx)} />
          <stop class="stop-edge" offset="1" />
        </radialGradient>
      </defs>
      <circle r={outer} fill="url(#rim-shade)" />
      <circle r={outer} class="hair" />
      <circle r={fieldPx + 1} class="stop" />
    </Piece>
  );
}

/** Four arcs about the barrel: the field has the keys. */
export function FieldFocus({ barrel }: { barrel: Barrel }) {
  const r = barrel.fieldPx + barrel.rimPx + 5;
  return (
    <span class="field-focus">
      {[0, 90, 180, 270].map((atDeg) => (
        <Piece key={atDeg} box={bandBox(r - 3, r + 3, atDeg - 24, atDeg + 24, 1)}>
          <path d={arcPath(r, atDeg - 24, atDeg + 24)} class="focus-arc" />
        </Piece>
      ))}
    </span>
  );
}

/** The limit in force: less than that of the instrument while the eye grows used to the dark. */
const limitNow = ({ limitMag, lackMag }: PlayModel): number => limitMag.value - lackMag.value;

/** The limit for those who hear it. */
const LimitSaid = ({ model }: { model: PlayModel }) => (
  <>{say("play.limitSaid", { limitMag: fixed(limitNow(model), 1) })}</>
);

function Limit({ model, layout }: { model: PlayModel; layout: PlayLayout }) {
  const { fieldPx, rimPx } = layout.barrel;
  const limitMag = limitNow(model);
  const written = fixed(limitMag, 1);
  const { ticks, limitDeg } = dialOf(limitMag, model.limitMag.value);
  const from = fieldPx + rimPx * 0.27;
  const size = SIZE.figure * layout.type;
  const tip = onCircle(fieldPx + rimPx * 0.25, limitDeg);
  const [left, right] = [-0.95, 0.95].map((by) => onCircle(fieldPx + rimPx * 0.06, limitDeg + (by * 372) / fieldPx));
  return (
    <>
      {fieldPx < SHORT_UNDER_PX || (
        <ArcPiece
          text={say("play.limit", { limitMag: written }).toUpperCase()}
          baselinePx={fieldPx + rimPx * 0.5}
          atDeg={237}
          sizePx={SIZE.small * layout.type}
        />
      )}
      <Piece box={bandBox(fieldPx, fieldPx + rimPx, DIAL.fromDeg - 2, DIAL.toDeg + 2, 2)}>
        {ticks.map(({ atDeg, magV, whole, within }) => (
          <g key={magV} class={within ? "tick" : "tick beyond"}>
            <line {...tickEnds(from, rimPx * (whole ? 0.17 : 0.1), atDeg)} stroke-width={whole ? 1.3 : 0.9} />
            {whole && (
              <ArcWords text={String(Math.round(magV))} baselinePx={from + rimPx * 0.25} atDeg={atDeg} sizePx={size} />
            )}
          </g>
        ))}
        <path class="mark" d={`M${tip.x} ${tip.y}L${left!.x} ${left!.y}L${right!.x} ${right!.y}Z`} />
      </Piece>
    </>
  );
}

function tickEnds(radiusPx: number, lengthPx: number, atDeg: number) {
  const [a, b] = [onCircle(radiusPx, atDeg), onCircle(radiusPx + lengthPx, atDeg)];
  return { x1: a.x, y1: a.y, x2: b.x, y2: b.y };
}

/** Instrument, image, limit and the price of a wrong claim. */
export function RimLettering({ model, layout }: { model: PlayModel; layout: PlayLayout }) {
  const { fieldPx, rimPx } = layout.barrel;
  const gear = model.gear.value;
  const short = fieldPx < SHORT_UNDER_PX;
  const baseline = fieldPx + rimPx * 0.5;
  const roomPx = baseline * ARC_PX * (short ? 100 : 84);
  const line = instrumentLine(gear, short);
  const { can, wrongCost } = model.claim.value;
  return (
    <>
      <p class="hidden-words">
        {say("play.rimSaid", { name: instrumentLine(gear, false), rest: imageLine(gear, false) })}{" "}
        <LimitSaid model={model} />
      </p>
      <ArcPiece
        text={line}
        baselinePx={baseline - 1}
        atDeg={0}
        sizePx={fittedSizePx(line, roomPx, SIZE.instrument * layout.type)}
      />
      <ArcPiece
        text={imageLine(gear, short)}
        baselinePx={baseline}
        atDeg={short ? 78 : 90}
        sizePx={SIZE.small * layout.type}
      />
      <Limit model={model} layout={layout} />
      {can && wrongCost > 0 && !short && (
        <ArcPiece
          text={say("play.wrongCosts", { points: wrongCost }).toUpperCase()}
          baselinePx={fieldPx + rimPx * 0.38}
          atDeg={146}
          sizePx={SIZE.figure * layout.type}
          class="aside-words"
        />
      )}
    </>
  );
}

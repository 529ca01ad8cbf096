/** The ladder of fields: each instrument a ring of the sky about the pointing, to a log scale of distance. */

import { say } from "../words/say.ts";
import { fittedSizePx, onCircle } from "./arcs.ts";
import type { PlayLayout } from "./geometry.ts";
import { type LadderScale, ladderScale } from "./ladderRadii.ts";
import type { LadderRing, PlayModel } from "./model.ts";
import { ArcPiece, ArcWords, Piece } from "./Piece.tsx";
import { fieldFigure, gearName } from "./rimWords.ts";

type Place = NonNullable<PlayLayout["ladder"]>;
const saidOf = ({ gear, fieldDeg }: LadderRing) =>
  say("play.instrument", { name: gearName(gear), fieldDeg: fieldFigure(fieldDeg) });

/** Stars and the horizon: the sky that the rings cut out. */
function Sky({ model, scale, r }: { model: PlayModel; scale: LadderScale; r: number }) {
  if (!scale.toScale) return null;
  const altitudeDeg = model.altitudeDeg.value;
  return (
    <Piece box={{ x: -r, y: -r, width: 2 * r, height: 2 * r }} class="ladder-sky">
      <path class="ladder-horizon" d={horizonPath(altitudeDeg, scale, r)} />
      {model.ladderStars.value.map(({ awayDeg, atDeg, radiusPx }, i) => {
        const at = scale.radiusPx(2 * awayDeg);
        if (at > r - 2) return null;
        const { x, y } = onCircle(at, atDeg);
        return <circle key={i} cx={x.toFixed(1)} cy={y.toFixed(1)} r={radiusPx} />;
      })}
    </Piece>
  );
}

const RAD = Math.PI / 180;

/** The horizon as one line: from the pointing to each place of it, by bearing, zenith up. */
export function horizonPath(altitudeDeg: number, scale: Pick<LadderScale, "radiusPx">, outerPx: number): string {
  const [sinAlt, cosAlt] = [Math.sin(altitudeDeg * RAD), Math.cos(altitudeDeg * RAD)];
  let path = "";
  for (let turnDeg = -90; turnDeg <= 90; turnDeg += 6) {
    const turn = turnDeg * RAD;
    const awayDeg = Math.acos(cosAlt * Math.cos(turn)) / RAD;
    const atDeg = Math.atan2(Math.sin(turn), -sinAlt * Math.cos(turn)) / RAD;
    const { x, y } = onCircle(Math.min(outerPx, scale.radiusPx(2 * awayDeg)), atDeg);
    path += `${path ? "L" : "M"}${x.toFixed(1)} ${y.toFixed(1)}`;
  }
  return path;
}

function RingWords({
  ring,
  r,
  roomPx,
  type,
  half,
}: {
  ring: LadderRing;
  r: number;
  roomPx: number;
  type: number;
  half: boolean;
}) {
  const name = gearName(ring.gear).toUpperCase();
  const text = half ? name : `${name} ${say("play.degrees", { fieldDeg: fieldFigure(ring.fieldDeg) })}`;
  const size = Math.min((half ? 14.5 : 12.5) * type, roomPx * 0.68);
  return (
    <ArcWords
      text={text}
      baselinePx={r - roomPx / 2 - size * 0.36}
      atDeg={0}
      sizePx={size}
      class={ring.inUse ? "in-use" : "aside-words"}
    />
  );
}

function InnerWords({ ring, r, type, half }: { ring: LadderRing; r: number; type: number; half: boolean }) {
  const name = gearName(ring.gear).toUpperCase();
  const size = fittedSizePx(name, 2.1 * r, 13 * type);
  const figure = say("play.degrees", { fieldDeg: fieldFigure(ring.fieldDeg) });
  const names = `engraved close ${ring.inUse ? "in-use" : "aside-words"}`;
  return (
    <>
      <text class={names} font-size={size} text-anchor="middle" y={half ? -r * 0.42 : -size * 0.22}>
        {name}
      </text>
      {half || (
        <text class={names} font-size={size} text-anchor="middle" y={size * 1.05}>
          {figure}
        </text>
      )}
    </>
  );
}

function Rings({ model, place, layout }: { model: PlayModel; place: Place; layout: PlayLayout }) {
  const rings = [...model.ladder.value].sort((a, b) => a.fieldDeg - b.fieldDeg);
  const { r, half } = place;
  const scale = ladderScale(
    rings.map(({ fieldDeg }) => fieldDeg),
    r,
  );
  const caption = say("play.changeInstrument").toUpperCase();
  const size = 12 * layout.type;
  return (
    <>
      {rings.map((ring, i) => {
        const radius = scale.radiiPx[i]!;
        const px = `${2 * radius}px`;
        return (
          <button
            key={ring.gear.id}
            type="button"
            class={`ring${i === rings.length - 1 ? " widest" : ""}${ring.inUse ? " in-use" : ""}`}
            aria-label={saidOf(ring)}
            aria-pressed={ring.inUse}
            onClick={() => model.use(ring.gear.id)}
            style={{ left: `${-radius}px`, top: `${-radius}px`, width: px, height: px, zIndex: rings.length - i }}
          />
        );
      })}
      <Sky model={model} scale={scale} r={r} />
      <Piece box={{ x: -r, y: -r, width: 2 * r, height: half ? r : 2 * r }} class="ladder-words">
        {rings.map((ring, i) => {
          const radius = scale.radiiPx[i]!;
          const words = { ring, r: radius, type: layout.type, half };
          return i === 0 ? (
            <InnerWords key={ring.gear.id} {...words} />
          ) : (
            <RingWords key={ring.gear.id} {...words} roomPx={Math.min(40, radius - scale.radiiPx[i - 1]!)} />
          );
        })}
      </Piece>
      {!half && rings.length > 1 && (
        <ArcPiece text={caption} baselinePx={r + 8} atDeg={26} sizePx={size} class="aside-words" />
      )}
    </>
  );
}

/** Names in a row, each with a circle to scale: for narrow windows and large type. */
export function LadderRow({ model }: { model: PlayModel }) {
  const rings = [...model.ladder.value].sort((a, b) => a.fieldDeg - b.fieldDeg);
  const scale = ladderScale(
    rings.map(({ fieldDeg }) => fieldDeg),
    11,
  );
  return (
    <nav class="ladder-row" aria-label={say("play.changeInstrument")}>
      {rings.map((ring, i) => (
        <button
          key={ring.gear.id}
          type="button"
          class={ring.inUse ? "rung in-use" : "rung"}
          aria-label={saidOf(ring)}
          aria-pressed={ring.inUse}
          onClick={() => model.use(ring.gear.id)}
        >
          <svg viewBox="-13 -13 26 26" width="26" height="26" aria-hidden="true">
            <circle r="11" />
            <circle class="own" r={scale.radiiPx[i]} />
          </svg>
          <span>{gearName(ring.gear)}</span>
        </button>
      ))}
    </nav>
  );
}

export function Ladder({ model, layout }: { model: PlayModel; layout: PlayLayout }) {
  const place = layout.ladder;
  if (!place || model.ladder.value.length === 0) return null;
  return (
    <nav
      class={place.half ? "ladder half" : "ladder"}
      aria-label={say("play.changeInstrument")}
      style={{ transform: `translate(${place.x}px, ${place.y}px)` }}
    >
      <Rings model={model} place={place} layout={layout} />
    </nav>
  );
}

/** The outline of a bank card, drawn until it fits: it tells how large things are on this screen. */
import { CARD_MM, pxPerMmOf, spanDeg, spanPx } from "../../stage/screenLight.ts";
import { windowSize } from "../app/state.ts";
import { playLayout } from "../play/geometry.ts";
import { screenFit } from "./fit.ts";
import { CARD_PX, DISTANCES_MM, type Distance } from "./kept.ts";
import { say } from "./words.ts";

/** Where the edge stands before it is drawn: at 96 px an inch. */
const FIRST_PX = Math.round((CARD_MM.width * 96) / 25.4);
const FIST_DEG = 10;
const NAMES = Object.keys(DISTANCES_MM) as Distance[];

function Sizes() {
  const { cardPx, distance } = screenFit.value;
  if (cardPx === null) return <p>{say("cardUntold")}</p>;
  const [pxPerMm, distanceMm] = [pxPerMmOf(cardPx), DISTANCES_MM[distance]];
  const { width, height } = windowSize.value;
  const fieldPx = 2 * playLayout(width, height).barrel.fieldPx;
  return (
    <div role="status">
      <p>{say("fist", { px: Math.round(spanPx(FIST_DEG, pxPerMm, distanceMm)) })}</p>
      <p>{say("field", { deg: Math.round(spanDeg(fieldPx, pxPerMm, distanceMm)) })}</p>
    </div>
  );
}

export function Card() {
  const { cardPx, distance } = screenFit.value;
  const width = cardPx ?? FIRST_PX;
  const setWidth = (px: number) => {
    const held = Math.round(Math.min(CARD_PX.most, Math.max(CARD_PX.least, px)));
    screenFit.value = { ...screenFit.value, cardPx: held };
  };
  return (
    <section class="screen-step">
      <h2>{say("cardTitle")}</h2>
      <p>{say("card")}</p>
      <div class="screen-room">
        <div
          class="screen-card"
          style={{ width: `${width}px`, height: `${(width * CARD_MM.height) / CARD_MM.width}px` }}
          onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
          onPointerMove={(event) => {
            const { currentTarget: card, clientX } = event;
            if (card.hasPointerCapture(event.pointerId)) setWidth(clientX - card.getBoundingClientRect().left);
          }}
        />
      </div>
      <input
        type="range"
        aria-label={say("cardWidth")}
        aria-valuetext={`${width} px`}
        min={CARD_PX.least}
        max={CARD_PX.most}
        value={width}
        onInput={({ currentTarget }) => setWidth(currentTarget.valueAsNumber)}
      />
      <fieldset class="screen-far">
        <legend>{say("distance")}</legend>
        {NAMES.map((name) => (
          <label key={name}>
            <input
              type="radio"
              name="distance"
              checked={name === distance}
              onChange={() => {
                screenFit.value = { ...screenFit.value, distance: name };
              }}
            />
            {say(name)}
          </label>
        ))}
      </fieldset>
      <Sizes />
    </section>
  );
}

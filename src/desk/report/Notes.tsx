/** The night's notes, and the claimed field as a sketch: black on paper, north marked. */
import { useMemo } from "preact/hooks";
import { fixed, say } from "../words/say.ts";
import { type Facts, nightTime } from "./facts.ts";
import { nightNotes } from "./notes.ts";
import type { Sketch } from "./sketch.ts";
import { sayReport } from "./words.ts";

const RADIUS = 150;
const MARGIN = 26;
const px = (value: number) => (value * RADIUS).toFixed(1);

/** One path for all dots: half circles, twice. */
const dotsPath = (dots: Sketch["stars"]): string =>
  dots
    .map(({ x, y, r }) => {
      const width = (2 * r * RADIUS).toFixed(2);
      const half = (r * RADIUS).toFixed(2);
      return `M${px(x - r)} ${px(y)}a${half} ${half} 0 1 0 ${width} 0a${half} ${half} 0 1 0 -${width} 0`;
    })
    .join("");

function SketchPicture({ sketch }: { sketch: Sketch }) {
  const { stars, stipple, northDeg } = sketch;
  const box = RADIUS + MARGIN;
  const hour = Math.round(northDeg / 30) % 12 || 12;
  return (
    <svg viewBox={`${-box} ${-box} ${2 * box} ${2 * box}`} role="img">
      <title>{sayReport("sketchSaid", { count: stars.length, hour })}</title>
      <circle class="stop" r={RADIUS} />
      <path d={dotsPath(stars)} />
      <path d={dotsPath(stipple)} />
      <g transform={`rotate(${northDeg.toFixed(1)})`}>
        <path class="north" d={`M0 ${-RADIUS}v-9`} />
      </g>
      <text
        x={(Math.sin((northDeg * Math.PI) / 180) * (RADIUS + 17)).toFixed(1)}
        y={(-Math.cos((northDeg * Math.PI) / 180) * (RADIUS + 17) + 5).toFixed(1)}
      >
        {sayReport("north")}
      </text>
    </svg>
  );
}

function caption({ gear }: Sketch, time: string): string {
  const name = say(`gear.${gear.kind}`);
  if (gear.magnification <= 1) return sayReport("sketchGearEye", { gear: name, time });
  return sayReport("sketchGear", { gear: name, power: gear.magnification, deg: fixed(gear.fieldDeg, 1), time });
}

export function Notes({ facts, sketch }: { facts: Facts; sketch: Sketch | null }) {
  const { record, claims } = facts;
  const notes = useMemo(() => nightNotes(facts), [facts]);
  const lastMs = claims.at(-1)?.atMs ?? record.events.at(-1)?.tMs ?? 0;
  const title = claims.length > 0 ? sayReport("sketch") : sayReport("sketchLast");
  return (
    <section class="notes">
      <div>
        <h2>{sayReport("notes")}</h2>
        <ol>
          {notes.map(({ atMs, text }) => (
            <li key={`${atMs} ${text}`}>
              <span class="figures">{nightTime(record, atMs).time}</span> <span>{text}</span>
            </li>
          ))}
        </ol>
      </div>
      {sketch && (
        <figure class="sketch">
          <SketchPicture sketch={sketch} />
          <figcaption>
            <strong>{title}</strong>
            {caption(sketch, nightTime(record, lastMs).time)}
          </figcaption>
        </figure>
      )}
    </section>
  );
}

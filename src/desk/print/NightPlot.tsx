/** Height of the target through the night, over upright lines whose spacing is the tone of the sky; in millimetres. */

import { sayReport } from "../report/words.ts";
import { bestMoment, type Moment, type Night, SUN, toneLines } from "./night.ts";
import { sayPrint } from "./words.ts";

const PLOT = { left: 7, width: 173, top: 2, height: 29, labels: 6 } as const;
const HOUR_MS = 3_600_000;
const MS_PER_DEG = 240_000;
const GRID_DEG = 20;
/** Words beside the best moment stand at its left from here on, share of the width. */
const WORDS_LEFT_FROM = 0.6;
const mm = (value: number) => value.toFixed(2);

interface Scale {
  readonly x: (utcMs: number) => number;
  readonly y: (deg: number) => number;
  readonly topDeg: number;
}

function scaleOf({ moments }: Night): Scale {
  const highest = Math.max(...moments.map(({ targetDeg }) => targetDeg));
  const topDeg = Math.min(90, Math.max(40, GRID_DEG * Math.ceil((highest + 8) / GRID_DEG)));
  const [fromMs, toMs] = [moments[0]!.utcMs, moments.at(-1)!.utcMs];
  return {
    topDeg,
    x: (utcMs) => PLOT.left + (PLOT.width * (utcMs - fromMs)) / (toMs - fromMs),
    y: (deg) => PLOT.top + PLOT.height * (1 - deg / topDeg),
  };
}

/** A curve above the horizon, broken where it sets. */
function curve(moments: readonly Moment[], heightDeg: (moment: Moment) => number, { x, y, topDeg }: Scale): string {
  let pen = "M";
  let path = "";
  for (const moment of moments) {
    const deg = heightDeg(moment);
    if (deg < 0 || deg > topDeg) {
      pen = "M";
      continue;
    }
    path += `${pen}${mm(x(moment.utcMs))} ${mm(y(deg))}`;
    pen = "L";
  }
  return path;
}

/** Local mean time as a clock has it. */
const clock = (utcMs: number, lonDeg: number): string =>
  new Date(utcMs + lonDeg * MS_PER_DEG).toISOString().slice(11, 16).replace(":", ".");

function Hours({ night, lonDeg, scale }: { night: Night; lonDeg: number; scale: Scale }) {
  const { moments } = night;
  const offsetMs = lonDeg * MS_PER_DEG;
  const [fromMs, toMs] = [moments[0]!.utcMs + offsetMs, moments.at(-1)!.utcMs + offsetMs];
  const first = Math.ceil(fromMs / HOUR_MS);
  const hours = Array.from({ length: Math.floor(toMs / HOUR_MS) - first + 1 }, (_, i) => first + i);
  return (
    <g>
      {hours.map((hour) => {
        const at = mm(scale.x(hour * HOUR_MS - offsetMs));
        return (
          <g key={hour}>
            <path class="axis" d={`M${at} ${mm(scale.y(0))}v${hour % 2 === 0 ? 1.4 : 0.8}`} />
            {hour % 2 === 0 && (
              <text class="figure" x={at} y={mm(scale.y(0) + 4.8)} text-anchor="middle">
                {String(((hour % 24) + 24) % 24).padStart(2, "0")}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}

function Best({ night, lonDeg, scale }: { night: Night; lonDeg: number; scale: Scale }) {
  const best = bestMoment(night);
  if (!best)
    return (
      <text class="word" x={PLOT.left + 4} y={scale.y(6)}>
        {sayPrint("neverUp")}
      </text>
    );
  const { utcMs, targetDeg } = best.moment;
  const [x, y] = [scale.x(utcMs), scale.y(Math.min(scale.topDeg, targetDeg))];
  const figures = { time: clock(utcMs, lonDeg), deg: Math.round(targetDeg) };
  const left = (x - PLOT.left) / PLOT.width > WORDS_LEFT_FROM;
  return (
    <g>
      <circle class="best" cx={mm(x)} cy={mm(y)} r="1.1" />
      <text
        class="word"
        x={mm(x + (left ? -2.4 : 2.4))}
        y={mm(Math.max(4, y - 1.8))}
        text-anchor={left ? "end" : "start"}
      >
        {best.dark ? sayPrint("bestDark", figures) : sayPrint("best", figures)}
      </text>
    </g>
  );
}

export function NightPlot({ night, lonDeg, practice }: { night: Night; lonDeg: number; practice: boolean }) {
  const scale = scaleOf(night);
  const { moments, moonLit } = night;
  const { y, topDeg } = scale;
  const moonUp = !practice && moments.some(({ moonDeg, sunDeg }) => moonDeg > 0 && sunDeg < SUN.civilDeg);
  const steps = Array.from({ length: Math.floor(topDeg / GRID_DEG) + 1 }, (_, i) => i * GRID_DEG);
  const moon = moonUp ? sayPrint("moon", { percent: Math.round(100 * moonLit) }) : sayPrint("noMoon");
  return (
    <figure class="night">
      <figcaption>
        <h2>{sayPrint("height")}</h2>
        <span>{practice ? sayPrint("lines") : `${moon} ${sayPrint("lines")}`}</span>
      </figcaption>
      <svg viewBox={`0 0 180 ${PLOT.top + PLOT.height + PLOT.labels}`} role="img">
        <title>{sayPrint("height")}</title>
        <g class="tone">
          {toneLines(night, PLOT.width).map((at) => (
            <path key={at} d={`M${mm(PLOT.left + at)} ${mm(PLOT.top)}V${mm(y(0))}`} />
          ))}
        </g>
        {steps.map((deg) => (
          <g key={deg}>
            <path class={deg === 0 ? "axis" : "level"} d={`M${PLOT.left} ${mm(y(deg))}h${PLOT.width}`} />
            <text class="figure" x={PLOT.left - 1.2} y={mm(y(deg) + 1.1)} text-anchor="end">
              {sayReport("degrees", { deg })}
            </text>
          </g>
        ))}
        {moonUp && <path class="moon" d={curve(moments, ({ moonDeg }) => moonDeg, scale)} />}
        <path class="height" d={curve(moments, ({ targetDeg }) => targetDeg, scale)} />
        <Hours night={night} lonDeg={lonDeg} scale={scale} />
        <Best night={night} lonDeg={lonDeg} scale={scale} />
      </svg>
    </figure>
  );
}

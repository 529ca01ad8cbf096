/** You against par on one line of fields, with the lengths that still earn the dots: help brings them nearer. */
import { dirFromMas } from "#core/celestial/vector.ts";
import type { Lesson } from "#core/lesson/types.ts";
import { distanceDas } from "#core/score/places.ts";
import type { Route } from "#core/seams/index.ts";
import { fixed } from "../words/say.ts";
import type { Facts } from "./facts.ts";
import { type ParMark, parMarks } from "./parMarks.ts";
import { sayReport } from "./words.ts";

/** Places of the drawing, px. */
const LINE = { left: 44, right: 40, top: -4, dots: 8, you: 34, par: 58, axis: 74, height: 108 } as const;
/** The line ends after so many times the longer way, whatever the marks. */
const MOST_TIMES = 2.2;

/** Lengths from the anchor to each mark, das. */
function stopsOf({ marks }: Route): number[] {
  const stops = [0];
  marks.slice(1).forEach(({ dir }, i) => {
    stops.push(stops[i]! + distanceDas(dirFromMas(marks[i]!.dir), dirFromMas(dir)));
  });
  return stops;
}

/** The line's end in fields, a whole half. */
function endOf(facts: Facts, marks: readonly ParMark[]): number {
  const { trailDas, parDas } = facts.report;
  const longer = Math.max(trailDas, parDas);
  const reach = Math.min(MOST_TIMES * longer, Math.max(longer, ...marks.map(({ lengthDas }) => lengthDas)));
  return Math.ceil((2.1 * reach) / facts.record.compiled.hoppingFieldDas) / 2;
}

interface Scale {
  readonly x: (fields: number) => number;
  readonly end: number;
}

function Axis({ x, end }: Scale) {
  const ticks = Array.from({ length: Math.round(end * 2) + 1 }, (_, i) => i / 2);
  return (
    <g class="axis">
      <path d={`M${x(0)} ${LINE.axis}H${x(end)}`} />
      {ticks.map((fields) => (
        <path key={fields} d={`M${x(fields)} ${LINE.axis}v${fields % 1 === 0 ? 7 : 4}`} />
      ))}
      {ticks
        .filter((fields) => fields % 1 === 0)
        .map((fields) => (
          <text key={fields} x={x(fields)} y={LINE.axis + 23} text-anchor="middle">
            {fields}
          </text>
        ))}
    </g>
  );
}

function DotMark({ dots, at }: { readonly dots: number; readonly at: number }) {
  return (
    <g>
      <path class="mark-line" d={`M${at} ${LINE.dots + 8}V${LINE.axis}`} />
      {Array.from({ length: dots }, (_, i) => (
        <circle key={i} cx={at + (i - (dots - 1) / 2) * 9} cy={LINE.dots} r="3" />
      ))}
    </g>
  );
}

function ParRow({ x, stops }: Pick<Scale, "x"> & { readonly stops: readonly number[] }) {
  return (
    <g>
      <path class="par" d={`M${x(0)} ${LINE.par}H${x(stops.at(-1) ?? 0)}`} />
      {stops.map((fields, i) => (
        <circle
          key={fields}
          class={i === stops.length - 1 ? "stop-end" : undefined}
          cx={x(fields)}
          cy={LINE.par}
          r={i === stops.length - 1 ? 5 : 3.4}
        />
      ))}
    </g>
  );
}

export function ParLine({ facts, lesson, widthPx }: { facts: Facts; lesson: Lesson; widthPx: number }) {
  const { report, record, way } = facts;
  const fieldsOf = (das: number) => das / record.compiled.hoppingFieldDas;
  const marks = parMarks(lesson.pass, report, record);
  const end = endOf(facts, marks);
  const x = (fields: number) => LINE.left + (fields / end) * (widthPx - LINE.left - LINE.right);
  const [you, par] = [fieldsOf(report.trailDas), fieldsOf(report.parDas)];
  const said = marks.map(({ dots, lengthDas }) =>
    sayReport("dotMark", { dots, fields: fixed(fieldsOf(lengthDas), 1) }),
  );
  return (
    <figure class="par-line">
      <figcaption>{sayReport("parTitle")}</figcaption>
      <svg viewBox={`0 ${LINE.top} ${widthPx} ${LINE.height}`} width={widthPx} height={LINE.height} role="img">
        <title>{[sayReport("youPar", { you: fixed(you, 1), par: fixed(par, 1) }), ...said].join("; ")}</title>
        {marks
          .filter(({ lengthDas }) => fieldsOf(lengthDas) <= end)
          .map(({ dots, lengthDas }) => (
            <DotMark key={dots} dots={dots} at={x(fieldsOf(lengthDas))} />
          ))}
        <text y={LINE.you + 5}>{sayReport("you")}</text>
        <path class="you" d={`M${x(0)} ${LINE.you}H${x(you)}`} />
        <text class="figures" x={x(you) + 8} y={LINE.you + 5}>
          {fixed(you, 1)}
        </text>
        <text y={LINE.par + 5}>{sayReport("par")}</text>
        <ParRow x={x} stops={stopsOf(way).map(fieldsOf)} />
        <text class="figures" x={x(par) + 11} y={LINE.par + 5}>
          {fixed(par, 1)}
        </text>
        <Axis x={x} end={end} />
      </svg>
    </figure>
  );
}

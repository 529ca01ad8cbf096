/** The legend: a slip laid over the foot of the sheet, level, in the sheet's own print. */
import { legendOf } from "#core/chart/legend.ts";
import type { ChartPage } from "#core/chart/page.ts";
import { signPath } from "#core/chart/signs.ts";
import type { ChartMark, LineStyle, Sign } from "#core/chart/types.ts";
import { signWords } from "./sheetWords.ts";
import { saySheet } from "./words.ts";

const DOT_STEP_PX = 30;
const LINE_WORDS = {
  figure: "figureLine",
  asterism: "asterismLine",
  border: "borderLine",
  way: "wayLine",
} as const;

function Dots({ dots }: { readonly dots: readonly { readonly magV: number; readonly r: number }[] }) {
  return (
    <svg class="legend-dots" width={DOT_STEP_PX * dots.length} height="36" aria-hidden="true">
      {dots.map(({ magV, r }, i) => (
        <g key={magV} transform={`translate(${DOT_STEP_PX * (i + 0.5)} 0)`}>
          <circle cy="10" r={r.toFixed(2)} />
          <text y="33" text-anchor="middle">
            {magV}
          </text>
        </g>
      ))}
    </svg>
  );
}

function SignRow({ sign }: { readonly sign: Sign }) {
  return (
    <li>
      <svg viewBox="-15 -11 30 22" width="30" height="22" aria-hidden="true">
        <path
          class="legend-line"
          d={signPath({ sign, r: sign === "planetaryNebula" ? 5 : 7, axisRad: -1, flat: 0.45 })}
        />
        {(sign === "doubleStar" || sign === "anchor") && <circle r={sign === "anchor" ? 3 : 4} />}
      </svg>
      {signWords(sign)}
    </li>
  );
}

function LineRow({ style }: { readonly style: Exclude<LineStyle, "frame" | "frameInner" | "bar" | "grid"> }) {
  return (
    <li>
      <svg viewBox="-20 -11 40 22" width="40" height="22" aria-hidden="true">
        <path class={`legend-line legend-${style}`} d="M-18 0H18" />
      </svg>
      {saySheet(LINE_WORDS[style])}
    </li>
  );
}

export function Legend({ page, marks }: { readonly page: ChartPage; readonly marks: readonly ChartMark[] }) {
  const { dots, signs, lines, bar } = legendOf(page, marks);
  return (
    <div class="sheet-legend">
      <p class="legend-row">
        <Dots dots={dots} />
        <span>{saySheet("magnitudes")}</span>
      </p>
      <ul class="legend-row">
        {signs.map((sign) => (
          <SignRow key={sign} sign={sign} />
        ))}
        {lines.map((style) =>
          style === "figure" || style === "asterism" || style === "border" || style === "way" ? (
            <LineRow key={style} style={style} />
          ) : null,
        )}
        <li>{saySheet("bar", { deg: bar.deg })}</li>
      </ul>
    </div>
  );
}

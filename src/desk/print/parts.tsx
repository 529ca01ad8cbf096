/** The parts of a hop sheet: charts, the small views, tables, the way. */
import { legendOf } from "#core/chart/legend.ts";
import { signPath } from "#core/chart/signs.ts";
import { marksToSvg } from "#core/chart/svg.ts";
import { signWords } from "../sheet/sheetWords.ts";
import { StepSign } from "../steps/StepSign.tsx";
import { looksOf } from "../words/looks.ts";
import { fixed, say } from "../words/say.ts";
import { hasSight, type PrintedChart, wideRingDeg } from "./charts.ts";
import { compassOf, gearName, placeWords, short } from "./figures.ts";
import { MM_PER_PX } from "./paper.ts";
import type { GearView, HopSheet } from "./setSheet.ts";
import { sayPrint } from "./words.ts";

const STEP_SIGN_PX = 30;

function Chart({ chart, title }: { chart: PrintedChart; title: string }) {
  const html = marksToSvg(chart.page, chart.marks, title);
  return <div class="chart" dangerouslySetInnerHTML={{ __html: html }} />;
}

export function WideChart({ sheet }: { sheet: HopSheet }) {
  const { page, barDeg } = sheet.wide;
  const title = sayPrint(hasSight(sheet.compiled) ? "wideSight" : "wide");
  const ring = short(wideRingDeg(sheet.compiled));
  return (
    <figure>
      <Chart chart={sheet.wide} title={title} />
      <figcaption>
        <strong>1 {title}</strong> {sayPrint("wideAbout", { limit: short(page.limitMag), ring, bar: barDeg })}
      </figcaption>
    </figure>
  );
}

export function HopChart({ sheet }: { sheet: HopSheet }) {
  const { hop, compiled, rows } = sheet;
  const { hoppingGear, claimGear } = compiled.spec;
  const [hopping, claim] = [hoppingGear, claimGear].map((id) => rows.find(({ gear }) => gear.id === id)!.gear);
  const figures = { limit: short(hop.page.limitMag), field: short(hopping!.fieldDeg, 2), bar: hop.barDeg };
  const about =
    hopping === claim
      ? sayPrint("hopAbout", figures)
      : sayPrint("hopAboutSmall", { ...figures, small: short(claim!.fieldDeg, 2) });
  return (
    <figure>
      <Chart chart={hop} title={sheet.lesson.title} />
      <figcaption>
        <strong>2 {gearName(hopping!)}.</strong> {about}
      </figcaption>
    </figure>
  );
}

/** A small field: what the page's stars look like through an instrument, north marked on the rim. */
function View({ view }: { view: GearView }) {
  const { gear, stars, target, north } = view;
  const brightest = stars[0]?.magV ?? 0;
  return (
    <figure>
      <svg viewBox="-21 -21 42 42" role="img">
        <title>{`${gearName(gear)}: ${say(`gear.${gear.path}`)}`}</title>
        <circle class="stop" r="20" />
        {stars.map(({ right, up, magV }, i) => (
          <circle key={i} cx={20 * right} cy={-20 * up} r={Math.max(0.7, 1.7 - 0.35 * (magV - brightest))} />
        ))}
        <path
          class="stop"
          transform={`translate(${20 * target.right} ${-20 * target.up})`}
          d="M-3 0h-2.4M3 0h2.4M0-3v-2.4M0 3v2.4M-2.4 0a2.4 2.4 0 1 0 4.8 0a2.4 2.4 0 1 0-4.8 0"
        />
        <g transform={`rotate(${(Math.atan2(north.right, north.up) * 180) / Math.PI})`}>
          <path class="stop" d="M0-14.5v-5M-1.6-17.2 0-19.6 1.6-17.2" />
        </g>
      </svg>
      <figcaption>
        <strong>{gear.kind === "sight" ? sayPrint("sight") : say(`gear.${gear.kind}`)}</strong> {sayPrint(gear.path)}
      </figcaption>
    </figure>
  );
}

export const Views = ({ sheet }: { sheet: HopSheet }) => (
  <section class="views">
    <h2>{sayPrint("views")}</h2>
    <div>
      {sheet.views.map((view) => (
        <View key={view.gear.id} view={view} />
      ))}
    </div>
  </section>
);

function sizeWords({ object: { majorArcmin, minorArcmin } }: HopSheet): string {
  const [major, minor] = [short(majorArcmin), short(minorArcmin)];
  return major === minor ? sayPrint("sizeRound", { major }) : sayPrint("sizeOval", { major, minor });
}

export function Target({ sheet }: { sheet: HopSheet }) {
  const { object, place, rows, compiled } = sheet;
  const name = compiled.ways[0]!.marks.at(-1)!.name;
  const size = sizeWords(sheet);
  // The eye's own row says the same as the sight's.
  const told = rows.filter(({ gear }) => gear.kind !== "eye" || !hasSight(compiled));
  return (
    <section>
      <h2>{sayPrint("theTarget")}</h2>
      <dl>
        <dt class="whole">
          {name}, {signWords(object.kind)}
        </dt>
        <dt>{sayPrint("coordinates")}</dt>
        <dd>{placeWords(place.raDeg, place.decDeg)}</dd>
        <dt>{sayPrint(object.magV < 90 ? "brightness" : "size")}</dt>
        <dd>{object.magV < 90 ? sayPrint("magV", { magV: short(object.magV), size }) : size}</dd>
      </dl>
      <h2>{sayPrint("inEach")}</h2>
      <dl>
        {told.map(({ gear, limitMag, band }) => (
          <>
            <dt key={gear.id}>
              {gearName(gear)}, {sayPrint("starsTo", { limit: fixed(limitMag, 1) })}
            </dt>
            <dd>{sayPrint(band)}</dd>
          </>
        ))}
      </dl>
    </section>
  );
}

const DOT_STEP_MM = 9;
export function Legend({ sheet }: { sheet: HopSheet }) {
  const { dots, signs } = legendOf(sheet.hop.page, sheet.hop.marks);
  return (
    <section class="legend">
      <h2>{sayPrint("dots")}</h2>
      <svg viewBox="0 0 67 8" role="img">
        <title>{sayPrint("dots")}</title>
        {dots.slice(-7).map(({ magV, r }, i) => (
          <g key={magV}>
            <circle cx={3 + i * DOT_STEP_MM} cy="2" r={r * MM_PER_PX} />
            <text class="figure" x={3 + i * DOT_STEP_MM} y="7.4" text-anchor="middle">
              {magV}
            </text>
          </g>
        ))}
      </svg>
      <ul>
        {signs.map((sign) => (
          <li key={sign}>
            <svg viewBox="-13 -13 26 26" aria-hidden="true">
              <path d={signPath({ sign, r: sign === "anchor" ? 9.5 : 7, axisRad: 1, flat: 0.45 })} />
              {(sign === "anchor" || sign === "doubleStar") && <circle r="4" />}
            </svg>
            {signWords(sign)}
          </li>
        ))}
      </ul>
    </section>
  );
}

function legWords(sheet: HopSheet, i: number): string {
  const { mark, deg, fields, towardsDeg } = sheet.legs[i]!;
  const gear = gearName(sheet.rows.find((row) => row.gear.id === sheet.compiled.spec.hoppingGear)!.gear);
  const figures = { deg: fixed(deg, 1), fields: fixed(fields, 2), compass: compassOf(towardsDeg), mark };
  return sayPrint("leg", { gear, ...figures });
}

/** @param printed whether the way may be told */
export function Way({ sheet, printed }: { sheet: HopSheet; printed: boolean }) {
  const { legs, rows, compiled, object } = sheet;
  const { spec, ways } = compiled;
  const [anchor, target] = [ways[0]!.marks[0]!.name, ways[0]!.marks.at(-1)!.name];
  if (!printed)
    return (
      <section>
        <h2>{sayPrint("wayOwn")}</h2>
        <p>{sayPrint("noWay", { anchor, target })}</p>
      </section>
    );
  const gearOf = (id: string) => rows.find(({ gear }) => gear.id === id)!.gear;
  const [hopping, claim] = [gearOf(spec.hoppingGear), gearOf(spec.claimGear)];
  const first = rows.find(({ gear }) => gear.kind === "sight")?.gear ?? hopping;
  const deg = fixed(ways[0]!.lengthDas / 36_000, 1);
  const sign = (push: { right: number; up: number }, fieldDeg: number, label: string) => (
    <StepSign fieldDeg={fieldDeg} push={push} label={label} sizePx={STEP_SIGN_PX} />
  );
  return (
    <section class="way">
      <h2>{legs.length === 1 ? sayPrint("wayOne", { deg }) : sayPrint("way", { deg, legs: legs.length })}</h2>
      <ol>
        <li>
          {sign({ right: 0, up: 0 }, first.fieldDeg, sayPrint("start"))}
          <span>{sayPrint("first", { gear: gearName(first), anchor })}</span>
        </li>
        {legs.map((leg, i) => (
          <li key={i}>
            {sign(leg.push, hopping.fieldDeg, compassOf(leg.towardsDeg))}
            <span>{legWords(sheet, i)}</span>
          </li>
        ))}
        <li>
          {sign({ right: 0, up: 0 }, claim.fieldDeg, sayPrint("look"))}
          <span>{sayPrint("last", { gear: gearName(claim), looks: looksOf(object) })}</span>
        </li>
      </ol>
      <p class="small">{sayPrint("signs")}</p>
    </section>
  );
}

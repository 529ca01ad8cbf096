/** Meridians and parallels and what they are called: right ascension below, declination at the right. */
import { DEG, radecFromDir } from "#core/celestial/vector.ts";
import { type ChartPage, dirAtDeg, type PageProjection, reachRad } from "./page.ts";
import type { LineMark } from "./types.ts";

const DEC_STEPS_DEG = [0.25, 0.5, 1, 2, 5, 10, 20, 30];
const RA_STEPS_MIN = [1, 2, 4, 10, 20, 30, 60, 120, 240];
/** Lines about so far apart are neither a net nor missing. */
const WANTED_PX = 62;

const stepNear = (steps: readonly number[], pxPerUnit: number): number =>
  steps.find((step) => step * pxPerUnit >= WANTED_PX) ?? steps.at(-1)!;

/** Halvings that bring a line's end to the frame: 2^-16 of a step. */
const HALVINGS = 16;

/** The parts of a curve that lie within the frame, ended on it; x, y after x, y. */
function runsInside(
  page: ChartPage,
  projection: PageProjection,
  count: number,
  at: (t: number) => readonly [raDeg: number, decDeg: number],
): number[][] {
  const point = { x: 0, y: 0 };
  const inside = (t: number): boolean => {
    const [raDeg, decDeg] = at(t);
    const dir = dirAtDeg(raDeg, decDeg);
    const near = dir[0] * page.centre[0] + dir[1] * page.centre[1] + dir[2] * page.centre[2] > 0;
    return near && projection.project(dir, point) && projection.holds(point);
  };
  /** Between a place inside and one outside, the last one inside. */
  const edge = (tIn: number, tOut: number) => {
    let [a, b] = [tIn, tOut];
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (a + b) / 2;
      if (inside(middle)) a = middle;
      else b = middle;
    }
    inside(a);
  };
  const runs: number[][] = [];
  let run: number[] | null = null;
  for (let i = 0; i <= count; i++) {
    const t = i / count;
    if (inside(t)) {
      const [x, y] = [point.x, point.y];
      if (!run) {
        run = [];
        runs.push(run);
        if (i > 0) {
          edge(t, (i - 1) / count);
          run.push(point.x, point.y);
        }
      }
      run.push(x, y);
    } else if (run) {
      edge((i - 1) / count, t);
      run.push(point.x, point.y);
      run = null;
    }
  }
  return runs.filter((points) => points.length > 2);
}

const raText = (minutes: number): string => {
  const whole = ((Math.round(minutes) % 1440) + 1440) % 1440;
  return `${Math.floor(whole / 60)}h ${String(whole % 60).padStart(2, "0")}`;
};
const decText = (deg: number): string => {
  const size = Math.abs(deg);
  const minutes = Math.round((size % 1) * 60);
  const sign = deg < 0 ? "−" : "+";
  return `${size < 1e-9 ? "" : sign}${Math.floor(size)}°${minutes ? `${String(minutes).padStart(2, "0")}′` : ""}`;
};

function parallels(
  page: ChartPage,
  projection: PageProjection,
  decDeg: number,
  reachDeg: number,
  raDeg: number,
): LineMark[] {
  const step = stepNear(DEC_STEPS_DEG, page.pxPerDeg);
  const marks: LineMark[] = [];
  for (let dec = Math.ceil((decDeg - reachDeg) / step) * step; dec <= decDeg + reachDeg; dec += step) {
    if (Math.abs(dec) >= 90) continue;
    const spreadDeg = Math.min(180, (1.4 * reachDeg) / Math.max(0.02, Math.cos(dec * DEG)));
    for (const points of runsInside(page, projection, 160, (t) => [raDeg + (2 * t - 1) * spreadDeg, dec]))
      marks.push({ kind: "line", style: "grid", points, figure: { text: decText(dec), edge: "right" } });
  }
  return marks;
}

function meridians(
  page: ChartPage,
  projection: PageProjection,
  decDeg: number,
  reachDeg: number,
  raDeg: number,
): LineMark[] {
  const scale = Math.max(0.05, Math.cos(decDeg * DEG));
  const stepMin = stepNear(RA_STEPS_MIN, (page.pxPerDeg * scale) / 4);
  const spreadDeg = Math.min(
    180,
    (1.4 * reachDeg) / Math.max(0.02, Math.cos(Math.min(89, Math.abs(decDeg) + reachDeg) * DEG)),
  );
  const marks: LineMark[] = [];
  const [from, to] = [Math.max(-89.5, decDeg - 1.4 * reachDeg), Math.min(89.5, decDeg + 1.4 * reachDeg)];
  for (let ra = Math.ceil(((raDeg - spreadDeg) * 4) / stepMin) * stepMin; ra < (raDeg + spreadDeg) * 4; ra += stepMin) {
    for (const points of runsInside(page, projection, 80, (t) => [ra / 4, from + (to - from) * t]))
      marks.push({ kind: "line", style: "grid", points, figure: { text: raText(ra), edge: "bottom" } });
  }
  return marks;
}

/** The net of a page; each line carries its figure and the edge where that stands. */
export function gridMarks(page: ChartPage, projection: PageProjection): LineMark[] {
  const { raRad, decRad } = radecFromDir(page.centre);
  const [raDeg, decDeg, reachDeg] = [raRad / DEG, decRad / DEG, reachRad(page) / DEG];
  return [
    ...parallels(page, projection, decDeg, reachDeg, raDeg),
    ...meridians(page, projection, decDeg, reachDeg, raDeg),
  ];
}

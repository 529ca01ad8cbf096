/** Meridians and parallels with their figures: right ascension below, declination at the right, inside the frame. */
import { DEG, radecFromDir } from "#core/celestial/vector.ts";
import { type ChartPage, dirAtDeg, type PageProjection, reachRad } from "./page.ts";
import type { ChartMark } from "./types.ts";

const DEC_STEPS_DEG = [0.25, 0.5, 1, 2, 5, 10, 20, 30];
const RA_STEPS_MIN = [1, 2, 4, 10, 20, 30, 60, 120, 240];
/** Lines about so far apart are neither a net nor missing. */
const WANTED_PX = 78;

const stepNear = (steps: readonly number[], pxPerUnit: number): number =>
  steps.find((step) => step * pxPerUnit >= WANTED_PX) ?? steps.at(-1)!;

type Run = { points: number[]; lastX: number; lastY: number };

/** The parts of a curve that lie within the frame. */
function runsInside(
  page: ChartPage,
  projection: PageProjection,
  count: number,
  at: (t: number) => readonly [raDeg: number, decDeg: number],
): Run[] {
  const point = { x: 0, y: 0 };
  const runs: Run[] = [];
  let run: Run | null = null;
  for (let i = 0; i <= count; i++) {
    const [raDeg, decDeg] = at(i / count);
    const dir = dirAtDeg(raDeg, decDeg);
    const near = dir[0] * page.centre[0] + dir[1] * page.centre[1] + dir[2] * page.centre[2] > 0;
    if (near && projection.project(dir, point) && projection.holds(point)) {
      run ??= { points: [], lastX: 0, lastY: 0 };
      run.points.push(point.x, point.y);
      [run.lastX, run.lastY] = [point.x, point.y];
    } else if (run) {
      runs.push(run);
      run = null;
    }
  }
  if (run) runs.push(run);
  return runs.filter(({ points }) => points.length > 2);
}

const raText = (minutes: number): string => {
  const whole = ((Math.round(minutes) % 1440) + 1440) % 1440;
  return `${Math.floor(whole / 60)}h ${String(whole % 60).padStart(2, "0")}`;
};
const decText = (deg: number): string => {
  const size = Math.abs(deg);
  const minutes = Math.round((size % 1) * 60);
  return `${deg < 0 ? "−" : "+"}${Math.floor(size)}°${minutes ? `${String(minutes).padStart(2, "0")}′` : ""}`;
};

const textAt = (x: number, y: number, text: string): ChartMark => ({
  kind: "text",
  style: "gridFigure",
  x,
  y,
  align: "end",
  text,
});

/** The end of a run that is furthest along one axis. */
const endOf = ({ points }: Run, axis: 0 | 1): readonly [x: number, y: number] => {
  const last = points.length - 2;
  const from = [points[0]!, points[1]!] as const;
  const to = [points[last]!, points[last + 1]!] as const;
  return to[axis] > from[axis] ? to : from;
};

function parallels(
  page: ChartPage,
  projection: PageProjection,
  decDeg: number,
  reachDeg: number,
  raDeg: number,
): ChartMark[] {
  const step = stepNear(DEC_STEPS_DEG, page.pxPerDeg);
  const marks: ChartMark[] = [];
  const rightEdge = page.widthPx / 2 - page.marginPx;
  for (let dec = Math.ceil((decDeg - reachDeg) / step) * step; dec <= decDeg + reachDeg; dec += step) {
    if (Math.abs(dec) >= 90) continue;
    const spreadDeg = Math.min(180, (1.4 * reachDeg) / Math.max(0.02, Math.cos(dec * DEG)));
    for (const run of runsInside(page, projection, 160, (t) => [raDeg + (2 * t - 1) * spreadDeg, dec])) {
      marks.push({ kind: "line", style: "grid", points: run.points });
      const [x, y] = endOf(run, 0);
      if (x > rightEdge - 8) marks.push(textAt(x - 6, y - 5, decText(dec)));
    }
  }
  return marks;
}

function meridians(
  page: ChartPage,
  projection: PageProjection,
  decDeg: number,
  reachDeg: number,
  raDeg: number,
): ChartMark[] {
  const scale = Math.max(0.05, Math.cos(decDeg * DEG));
  const stepMin = stepNear(RA_STEPS_MIN, (page.pxPerDeg * scale) / 4);
  const spreadDeg = Math.min(
    180,
    (1.4 * reachDeg) / Math.max(0.02, Math.cos(Math.min(89, Math.abs(decDeg) + reachDeg) * DEG)),
  );
  const marks: ChartMark[] = [];
  const bottomEdge = page.heightPx / 2 - page.marginPx;
  const [from, to] = [Math.max(-89.5, decDeg - 1.4 * reachDeg), Math.min(89.5, decDeg + 1.4 * reachDeg)];
  for (let ra = Math.ceil(((raDeg - spreadDeg) * 4) / stepMin) * stepMin; ra < (raDeg + spreadDeg) * 4; ra += stepMin) {
    for (const run of runsInside(page, projection, 80, (t) => [ra / 4, from + (to - from) * t])) {
      marks.push({ kind: "line", style: "grid", points: run.points });
      const [x, y] = endOf(run, 1);
      if (y > bottomEdge - 8) marks.push({ ...textAt(x + 4, y - 6, raText(ra)), align: "start" } as ChartMark);
    }
  }
  return marks;
}

/** The net of a page and its figures. */
export function gridMarks(page: ChartPage, projection: PageProjection): ChartMark[] {
  const { raRad, decRad } = radecFromDir(page.centre);
  const [raDeg, decDeg, reachDeg] = [raRad / DEG, decRad / DEG, reachRad(page) / DEG];
  return [
    ...parallels(page, projection, decDeg, reachDeg, raDeg),
    ...meridians(page, projection, decDeg, reachDeg, raDeg),
  ];
}

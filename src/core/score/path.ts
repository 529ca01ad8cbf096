/**
 * The trail as a scored path: what the learner's hand did, without the wiggles of a hand and without what only undid the
 * sky's drift.
 */
import { dot } from "#core/celestial/vector.ts";
import type { AttemptRecord, Dir, GearId } from "#core/seams/index.ts";
import { SET_ELSEWHERE } from "#core/session/trail.ts";
import { dirsOfTrail, distanceDas, distanceToArcDas } from "./places.ts";
import { WIGGLE } from "./rules.ts";

/** A straight piece of the way; `share` (0..1) of its length counts, the rest undid drift. */
export type Step = { readonly from: Dir; readonly to: Dir; readonly lengthDas: number; readonly share: number };

/** The instrument in use at a moment of the attempt. */
export function gearAt(record: AttemptRecord, tMs: number): GearId {
  let gear = record.compiled.spec.gear[0] ?? "";
  for (const event of record.events) {
    if (event.tMs > tMs) break;
    if (event.kind === "use" || event.kind === "eyepiece") gear = event.gear;
  }
  return gear;
}

/** True field in use at a moment, das; the hopping field where the instrument is not among the compiled ones. */
export function fieldAtDas(record: AttemptRecord, tMs: number): number {
  const gear = gearAt(record, tMs);
  return record.compiled.limits.find((limit) => limit.gear === gear)?.fieldDas ?? record.compiled.hoppingFieldDas;
}

type Run = { readonly points: readonly number[]; readonly share: number };

const chord = (a: Dir, b: Dir): Dir => [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
const plus = (a: Dir, b: Dir): Dir => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const size = (v: Dir) => Math.sqrt(dot(v, v));

/** How much of a run's length counts: a push against the drift since the last push is free up to that drift. */
const shareOf = (push: Dir, lengthRad: number, drift: Dir): number => {
  const driftSize = size(drift);
  if (driftSize === 0 || lengthRad === 0) return 1;
  const undone = Math.min(driftSize, Math.max(0, -dot(push, drift) / driftSize));
  return Math.max(0, lengthRad - undone) / lengthRad;
};

/** Runs of samples that the hand moved, each with the share of it that counts. */
function runsByHand(record: AttemptRecord, dirs: readonly Dir[]): Run[] {
  const { trail } = record;
  const runs: Run[] = [];
  let drift: Dir = [0, 0, 0];
  let points: number[] = [];
  let lengthRad = 0;
  const close = () => {
    const [first, last] = [points[0], points.at(-1)];
    if (first !== undefined && last !== undefined && last > first) {
      runs.push({ points, share: shareOf(chord(dirs[first]!, dirs[last]!), lengthRad, drift) });
      drift = [0, 0, 0];
    }
    points = [];
    lengthRad = 0;
  };
  for (let i = 1; i < dirs.length; i++) {
    const step = chord(dirs[i - 1]!, dirs[i]!);
    if (trail.byHand[i]) {
      if (points.length === 0) points.push(i - 1);
      points.push(i);
      lengthRad += size(step);
      continue;
    }
    close();
    drift = trail.mark[i] === SET_ELSEWHERE ? [0, 0, 0] : plus(drift, step);
  }
  close();
  return runs;
}

/** Keeps the points that lie at least the wiggle apart, and the last. */
function thinned(points: readonly Dir[], wiggleDas: number): Dir[] {
  const kept = [points[0]!];
  for (const point of points) if (distanceDas(kept.at(-1)!, point) >= wiggleDas) kept.push(point);
  const last = points.at(-1)!;
  if (kept.at(-1) !== last) kept.push(last);
  return kept;
}

/** Cuts where the way turns back by more than a right angle. */
function cutAtReversals(points: readonly Dir[]): Dir[][] {
  const pieces: Dir[][] = [];
  let piece: Dir[] = [];
  points.forEach((point, i) => {
    piece.push(point);
    const [before, after] = [points[i - 1], points[i + 1]];
    if (before && after && dot(chord(before, point), chord(point, after)) < 0) {
      pieces.push(piece);
      piece = [point];
    }
  });
  pieces.push(piece);
  return pieces;
}

/** Leaves out points nearer than the wiggle to the arc between those kept (Douglas and Peucker 1973, distance to the arc). */
function simplified(points: readonly Dir[], wiggleDas: number): Dir[] {
  const [first, last] = [points[0]!, points.at(-1)!];
  let furthest = 0;
  let furthestDas = wiggleDas;
  for (let i = 1; i < points.length - 1; i++) {
    const offDas = distanceToArcDas(points[i]!, first, last);
    if (offDas > furthestDas) [furthest, furthestDas] = [i, offDas];
  }
  if (furthest === 0) return [first, last];
  return [
    ...simplified(points.slice(0, furthest + 1), wiggleDas).slice(0, -1),
    ...simplified(points.slice(furthest), wiggleDas),
  ];
}

/** Splits a run where the instrument changes, so that each part has one wiggle. */
function partsByField(record: AttemptRecord, points: readonly number[]): { points: number[]; wiggleDas: number }[] {
  const parts: { points: number[]; wiggleDas: number }[] = [];
  for (const point of points) {
    const fieldDas = fieldAtDas(record, record.trail.tMs[point]!);
    const wiggleDas = Math.min(WIGGLE.mostDas, Math.round((fieldDas * WIGGLE.fieldPermille) / 1000));
    const part = parts.at(-1);
    if (part?.wiggleDas === wiggleDas) part.points.push(point);
    else {
      if (part) part.points.push(point);
      parts.push({ points: [point], wiggleDas });
    }
  }
  return parts.filter(({ points: some }) => some.length > 1);
}

/**
 * The steps that count, in order.
 * @param record the trail's samples with their marks of the hand, and the events that say which instrument was in use
 */
export function scoredPath(record: AttemptRecord): Step[] {
  const dirs = dirsOfTrail(record.trail);
  const steps: Step[] = [];
  for (const { points, share } of runsByHand(record, dirs)) {
    for (const part of partsByField(record, points)) {
      const thin = thinned(
        part.points.map((i) => dirs[i]!),
        part.wiggleDas,
      );
      for (const piece of cutAtReversals(thin)) {
        const line = simplified(piece, part.wiggleDas);
        for (let i = 1; i < line.length; i++)
          steps.push({ from: line[i - 1]!, to: line[i]!, lengthDas: distanceDas(line[i - 1]!, line[i]!), share });
      }
    }
  }
  return steps;
}

/** Where and when the tube rested, read from the trail. */
import type { AttemptRecord, EventKind, Trail } from "#core/seams/index.ts";
import { SET_ELSEWHERE, SETS_ELSEWHERE } from "#core/session/trail.ts";

/** `index`: the sample at which the rest was reached; it lasted until `toMs`, when the hand moved on or the record ends. */
export type Rest = { readonly index: number; readonly fromMs: number; readonly toMs: number };

/** The last moment that the record knows of. */
export const endMs = ({ events, trail }: AttemptRecord): number =>
  Math.max(events.at(-1)?.tMs ?? 0, trail.tMs.at(-1) ?? 0);

/** Index of the last sample at or before a moment, or 0: where the tube pointed then. */
export function sampleAt({ trail }: AttemptRecord, tMs: number): number {
  let [index, beyond] = [0, trail.tMs.length];
  while (beyond - index > 1) {
    const middle = (index + beyond) >> 1;
    if (trail.tMs[middle]! <= tMs) index = middle;
    else beyond = middle;
  }
  return index;
}

/** Whether an event always sets the tube elsewhere: another instrument may, or may not. */
const surelySets = (kind: EventKind): boolean => SETS_ELSEWHERE.has(kind) && kind !== "use" && kind !== "eyepiece";

/** Indices of the samples of one moment at which the tube was set elsewhere. */
function strokesAt({ trail }: AttemptRecord, last: number): number[] {
  const strokes: number[] = [];
  for (let i = last; i > 0 && trail.tMs[i] === trail.tMs[last]; i--) {
    if (trail.mark[i] === SET_ELSEWHERE) strokes.unshift(i);
  }
  return strokes;
}

/**
 * Index of the sample that says where the tube pointed when an event came, by its place in the list of events; or 0. One
 * moment may have several events, and samples from before and after the tube was set elsewhere: the events' order tells which.
 */
export function sampleOfEvent(record: AttemptRecord, event: number): number {
  const { tMs } = record.events[event]!;
  const last = sampleAt(record, tMs);
  const strokes = record.trail.tMs[last] === tMs ? strokesAt(record, last) : [];
  if (strokes.length === 0) return last;
  let first = event;
  while (record.events[first - 1]?.tMs === tMs) first--;
  const setBefore = record.events.slice(first, event).filter(({ kind }) => surelySets(kind)).length;
  let maySetAfter = 0;
  for (let i = event; record.events[i]?.tMs === tMs; i++) if (SETS_ELSEWHERE.has(record.events[i]!.kind)) maySetAfter++;
  const after = Math.min(maySetAfter, strokes.length - setBefore);
  return after > 0 ? strokes.at(-after)! - 1 : last;
}

/** The trail's first samples. */
export function trailUntil(trail: Trail, count: number): Trail {
  return {
    tMs: trail.tMs.subarray(0, count),
    raDas: trail.raDas.subarray(0, count),
    decDas: trail.decDas.subarray(0, count),
    byHand: trail.byHand.subarray(0, count),
    mark: trail.mark.subarray(0, count),
  };
}

/** Rests in order: the start at the anchor, every rest that the session marked, and wherever the tube was set at a stroke. */
export function restsOf(record: AttemptRecord): Rest[] {
  const { trail } = record;
  const rests: Rest[] = [];
  for (let i = 0; i < trail.tMs.length; i++) {
    if (i > 0 && trail.mark[i] === 0) continue;
    let next = i + 1;
    while (next < trail.tMs.length && !trail.byHand[next] && trail.mark[next] === 0) next++;
    rests.push({ index: i, fromMs: trail.tMs[i]!, toMs: trail.tMs[next] ?? endMs(record) });
  }
  return rests;
}

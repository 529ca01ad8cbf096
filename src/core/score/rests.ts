/** Where and when the tube rested, read from the trail. */
import type { AttemptRecord, Trail } from "#core/seams/index.ts";

/** `index`: the sample at which the rest was reached; it lasted until `toMs`, when the hand moved on or the record ends. */
export type Rest = { readonly index: number; readonly fromMs: number; readonly toMs: number };

/** The last moment that the record knows of. */
export const endMs = ({ events, trail }: AttemptRecord): number =>
  Math.max(events.at(-1)?.tMs ?? 0, trail.tMs.at(-1) ?? 0);

/** Index of the last sample at or before a moment, or 0: where the tube pointed then. */
export function sampleAt({ trail }: AttemptRecord, tMs: number): number {
  let index = 0;
  for (let i = 0; i < trail.tMs.length && trail.tMs[i]! <= tMs; i++) index = i;
  return index;
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

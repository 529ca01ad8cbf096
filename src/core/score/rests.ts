/** Where and when the tube rested, read from the trail. */
import type { AttemptRecord, Dir } from "#core/seams/index.ts";
import { fieldAtDas } from "./path.ts";
import { distanceDas } from "./places.ts";
import { REST } from "./rules.ts";

/** `index`: the sample at the rest's start; `toMs` is the attempt's last moment where nothing moved after it. */
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

/** Rests in order: slower than a twentieth of the field in use a second, for at least 0.8 s. */
export function restsOf(record: AttemptRecord, dirs: readonly Dir[]): Rest[] {
  const { trail } = record;
  const rests: Rest[] = [];
  let start = -1;
  const close = (toMs: number) => {
    if (start >= 0 && toMs - trail.tMs[start]! >= REST.forMs)
      rests.push({ index: start, fromMs: trail.tMs[start]!, toMs });
    start = -1;
  };
  for (let i = 0; i < dirs.length - 1; i++) {
    const spanMs = trail.tMs[i + 1]! - trail.tMs[i]!;
    const movedDas = distanceDas(dirs[i]!, dirs[i + 1]!);
    const slow = movedDas * 1_000_000 < fieldAtDas(record, trail.tMs[i]!) * REST.fieldPermillePerS * spanMs;
    if (slow && start < 0) start = i;
    // A gap in the samples is a rest that ended in the push which made the next sample.
    if (!slow) close(trail.tMs[i]!);
    else if (movedDas > 0 && spanMs >= REST.forMs) close(trail.tMs[i + 1]!);
  }
  if (start < 0) start = dirs.length - 1;
  close(endMs(record));
  return rests;
}

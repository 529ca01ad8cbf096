/** Pins: does the learner know where the tube points? Asked twice, at rest. */
import { dirFromMas } from "#core/celestial/vector.ts";
import type { AttemptRecord, Dir } from "#core/seams/index.ts";
import { gearAt } from "./path.ts";
import { distanceDas } from "./places.ts";
import { endMs, type Rest, restsOf, sampleOfEvent } from "./rests.ts";
import { PIN, PIN_STAYS_PERMILLE } from "./rules.ts";

/** One question: where the tube stood when it was asked, from when on an answer counts, and the first answer given. */
export type PinAnswer = {
  readonly askedMs: number;
  readonly answeredMs: number | null;
  readonly offDas: number | null;
};

/** Hand-made length up to a sample, das, wiggles and all. */
const lengthUntil = ({ trail }: AttemptRecord, dirs: readonly Dir[], index: number): number => {
  let lengthDas = 0;
  for (let i = 1; i <= index; i++) if (trail.byHand[i]) lengthDas += distanceDas(dirs[i - 1]!, dirs[i]!);
  return lengthDas;
};

/** The first rest after a third of par. */
const firstAsk = (record: AttemptRecord, dirs: readonly Dir[], rests: readonly Rest[]): Rest | null =>
  rests.find(({ index }) => 3 * lengthUntil(record, dirs, index) >= record.compiled.parDas) ?? null;

/** When the hopping instrument was left for the last time, or the end. */
const leftHoppingMs = (record: AttemptRecord): number => {
  const { hoppingGear } = record.compiled.spec;
  let left = endMs(record);
  let gear = gearAt(record, -1);
  for (const event of record.events) {
    if (event.kind !== "use" && event.kind !== "eyepiece") continue;
    if (gear === hoppingGear && event.gear !== hoppingGear) left = event.tMs;
    gear = event.gear;
  }
  return gear === hoppingGear ? endMs(record) : left;
};

/** The last rest in the hopping instrument. */
const lastAsk = (record: AttemptRecord, rests: readonly Rest[]): Rest | null => {
  const leftMs = leftHoppingMs(record);
  return rests.filter(({ fromMs }) => fromMs <= leftMs).at(-1) ?? null;
};

/** The first pin set while the tube stood about where it was asked. */
function answerTo(record: AttemptRecord, dirs: readonly Dir[], ask: Rest): PinAnswer {
  const staysDas = Math.round((record.compiled.hoppingFieldDas * PIN_STAYS_PERMILLE) / 1000);
  const asked = dirs[ask.index]!;
  for (const [i, event] of record.events.entries()) {
    if (event.tMs < ask.fromMs || event.kind !== "pin") continue;
    const sample = sampleOfEvent(record, i);
    if (sample < ask.index) continue;
    const pointing = dirs[sample]!;
    if (distanceDas(pointing, asked) > staysDas) break;
    const offDas = distanceDas(dirFromMas(event.at), pointing);
    return { askedMs: ask.fromMs, answeredMs: event.tMs, offDas };
  }
  return { askedMs: ask.fromMs, answeredMs: null, offDas: null };
}

/**
 * The answers that count: at the first rest after a third of par, and at the last rest in the hopping instrument; a hop
 * shorter than one field asks the last alone.
 */
export function pinAnswers(record: AttemptRecord, dirs: readonly Dir[]): PinAnswer[] {
  const rests = restsOf(record);
  const short = record.compiled.parDas < record.compiled.hoppingFieldDas;
  const asks = short ? [lastAsk(record, rests)] : [firstAsk(record, dirs, rests), lastAsk(record, rests)];
  return asks.map((ask) =>
    ask ? answerTo(record, dirs, ask) : { askedMs: endMs(record), answeredMs: null, offDas: null },
  );
}

/** Points of one answer out of `most`: all within a tenth of the field, none beyond half, evenly in between. */
export function pinPoints({ offDas }: PinAnswer, fieldDas: number, most: number): number {
  if (offDas === null) return 0;
  const [full, none] = [fieldDas * PIN.fullPermille, fieldDas * PIN.nonePermille];
  const share = Math.min(1, Math.max(0, (none - offDas * 1000) / (none - full)));
  return Math.round(most * share);
}

/** Care: what wrong claims, restarts, hints and aids cost. */
import type { AttemptRecord, Dir } from "#core/seams/index.ts";
import { judgedClaims } from "./claims.ts";
import { type Corridor, directnessPoints, type Lengths, lengthsIn } from "./corridor.ts";
import { distanceDas } from "./places.ts";
import { sampleOfEvent } from "./rests.ts";
import { PRICE } from "./rules.ts";

/** One thing paid for. */
export type Price = {
  readonly rule: "wrongClaim" | "restart" | "hint" | "aid";
  readonly points: number;
  readonly atMs: number;
};

const claimPrices = (record: AttemptRecord, dirs: readonly Dir[]): Price[] =>
  judgedClaims(record, dirs)
    .filter(({ right }) => !right)
    .slice(0, PRICE.wrongClaims.length)
    .map(({ atMs }, i) => ({ rule: "wrongClaim", points: PRICE.wrongClaims[i]!, atMs }));

/** A hint costs once a leg and grade, where the lesson prices hints. */
function hintPrices({ events, compiled }: AttemptRecord): Price[] {
  if (compiled.spec.aids.hints !== "priced") return [];
  const paid = new Set<string>();
  const prices: Price[] = [];
  for (const event of events) {
    if (event.kind !== "hint" || event.grade === 3) continue;
    const key = `${event.leg}.${event.grade}`;
    if (paid.has(key)) continue;
    paid.add(key);
    prices.push({ rule: "hint", points: PRICE.hints[event.grade], atMs: event.tMs });
  }
  return prices;
}

/** An aid that the lesson prices costs once, when it is first switched on. */
function aidPrices({ events, compiled }: AttemptRecord): Price[] {
  const used = new Set<string>();
  const prices: Price[] = [];
  for (const event of events) {
    if (event.kind !== "aid" || !event.on || used.has(event.aid) || compiled.spec.aids[event.aid] !== "priced")
      continue;
    used.add(event.aid);
    const { aids } = PRICE;
    if (event.aid in aids) prices.push({ rule: "aid", points: aids[event.aid as keyof typeof aids], atMs: event.tMs });
  }
  return prices;
}

/**
 * A restart has a small fixed price, and never more than the straight way home would have cost in directness: going back
 * when lost is good craft.
 */
function restartPrices(record: AttemptRecord, dirs: readonly Dir[], corridor: Corridor, lengths: Lengths): Price[] {
  const weight = record.compiled.spec.weights.directness;
  let sofar = lengths;
  return [...record.events.entries()]
    .filter(([, { kind, tMs }]) => kind === "restart" && dirs.length > 0 && tMs >= (record.trail.tMs[0] ?? Infinity))
    .map(([i, { tMs }]) => {
      const from = dirs[sampleOfEvent(record, i)]!;
      const home = { from, to: corridor.anchor, lengthDas: distanceDas(from, corridor.anchor), share: 1 };
      const walked = lengthsIn(corridor, [home]);
      const then = { insideDas: sofar.insideDas + walked.insideDas, outsideDas: sofar.outsideDas + walked.outsideDas };
      const wayHome = directnessPoints(corridor, sofar, weight) - directnessPoints(corridor, then, weight);
      sofar = then;
      return { rule: "restart", points: Math.min(PRICE.restart, wayHome), atMs: tMs };
    });
}

/** Everything paid for, in the order of time. */
export function pricesOf(record: AttemptRecord, dirs: readonly Dir[], corridor: Corridor, lengths: Lengths): Price[] {
  return [
    ...claimPrices(record, dirs),
    ...restartPrices(record, dirs, corridor, lengths),
    ...hintPrices(record),
    ...aidPrices(record),
  ].sort((a, b) => a.atMs - b.atMs);
}

/** Whole points for care: its weight less the prices, down to its floor. */
export const carePoints = (weight: number, prices: readonly Price[]): number =>
  Math.max(PRICE.careFloor, weight - prices.reduce((sum, { points }) => sum + points, 0));

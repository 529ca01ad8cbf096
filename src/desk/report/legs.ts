/** The way as a list: each leg of the shortest way, and how much of the learner's own way it took. */

import { dirFromMas } from "#core/celestial/vector.ts";
import { type Step, scoredPath } from "#core/score/path.ts";
import { distanceDas, distanceToArcDas } from "#core/score/places.ts";
import type { Dir } from "#core/seams/index.ts";
import { pushSeen } from "../steps/pushSeen.ts";
import type { Push } from "../steps/stepShape.ts";
import { markName } from "../words/say.ts";
import { type Facts, PASSED_FIELDS } from "./facts.ts";

export interface Leg {
  readonly name: string;
  /** From the mark before, as the hopping instrument shows it. */
  readonly push: Push;
  readonly parDas: number;
  /** What the hand went to get here from the mark that it had before; null where the way never came past. */
  readonly youDas: number | null;
  readonly reached: boolean;
}

/** A place on the path: the step, and how far into it, das. */
type Reached = { readonly step: number; readonly intoDas: number };

/** Where the path first comes past a mark from a place on. */
function firstPast(path: readonly Step[], mark: Dir, nearDas: number, after: Reached): Reached | null {
  for (let i = after.step; i < path.length; i++) {
    const { from, to } = path[i]!;
    if (distanceToArcDas(mark, from, to) > nearDas) continue;
    const intoDas = Math.min(path[i]!.lengthDas, distanceDas(from, mark));
    return { step: i, intoDas: i === after.step ? Math.max(after.intoDas, intoDas) : intoDas };
  }
  return null;
}

/** What of the path counts between two places on it, das. */
function countedDas(path: readonly Step[], from: Reached, to: Reached): number {
  let sum = 0;
  for (let i = from.step; i <= to.step && i < path.length; i++) {
    const { lengthDas, share } = path[i]!;
    sum += share * ((i === to.step ? to.intoDas : lengthDas) - (i === from.step ? from.intoDas : 0));
  }
  return sum;
}

/**
 * The legs in order, from the one to the first mark after the anchor. Lengths of the legs that were reached add up to the
 * whole trail once the target is found: what went on after the last mark belongs to the last leg.
 */
export function legsOf(facts: Facts): Leg[] {
  const { record, report, way } = facts;
  const { spec, hoppingFieldDas } = record.compiled;
  const path = scoredPath(record);
  const end: Reached = { step: path.length, intoDas: 0 };
  const dirs = way.marks.map(({ dir }) => dirFromMas(dir));
  const found = report.word === "found" || report.word === "notSeen";
  let last: Reached = { step: 0, intoDas: 0 };
  return way.marks.slice(1).map(({ name }, i) => {
    const [from, to] = [dirs[i]!, dirs[i + 1]!];
    const isLast = i === way.marks.length - 2;
    const past = isLast ? (found ? end : null) : firstPast(path, to, hoppingFieldDas * PASSED_FIELDS, last);
    const youDas = past && countedDas(path, last, past);
    last = past ?? last;
    return {
      name: markName(name),
      push: pushSeen(spec, spec.hoppingGear, from, to),
      parDas: distanceDas(from, to),
      youDas,
      reached: past !== null,
    };
  });
}

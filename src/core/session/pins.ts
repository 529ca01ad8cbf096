/** When the learner is asked "where are you?". Until a pin is set the page keeps cross, ring and trail off the sheet. */
import { separationDas } from "#core/celestial/vector.ts";
import type { CompiledAttempt, Trail } from "#core/seams/index.ts";
import { compiledFieldDas } from "./claim.ts";
import { pointingMas } from "./pointing.ts";
import type { Outcome, Session } from "./state.ts";
import { AT_REST, createRecorder } from "./trail.ts";

/** A pin that was asked for holds as long as the tube stays within this share of the hopping field, percent. */
const STAYS_PERCENT = 25;

/** A hop shorter than one hopping field is asked once, at its end. */
const asksOnTheWay = ({ spec, parDas, hoppingFieldDas }: CompiledAttempt) =>
  spec.weights.pins > 0 && parDas >= hoppingFieldDas;

/** At a rest: the first one after a third of par, by the length that the hand made. */
export function askAtRest(session: Session): Outcome[] {
  const { compiled, state, recorder } = session;
  if (state.firstPinAsked || !asksOnTheWay(compiled) || 3 * recorder.handDas < compiled.parDas) return [];
  session.state = { ...state, firstPinAsked: true };
  return [{ kind: "pinAsked", which: 1 }];
}

/** On leaving the hopping instrument, or at a claim in it: the last rest there, unless it was asked about already. */
export function askOnLeaving(session: Session): Outcome[] {
  const { compiled, state, recorder } = session;
  const { hoppingGear, weights } = compiled.spec;
  if (state.phase !== "hop" || state.gear !== hoppingGear || weights.pins === 0) return [];
  if (!recorder.mark.includes(AT_REST)) return [];
  const here = pointingMas(session);
  const asked = state.lastPinAskedAt;
  const stays = (compiledFieldDas(compiled, hoppingGear) * STAYS_PERCENT) / 100;
  if (asked && separationDas(asked, here) <= stays) return [];
  session.state = { ...state, lastPinAskedAt: here };
  return [{ kind: "pinAsked", which: 2 }];
}

/** Whether a stored trail got as far as the first question. */
export function wasAskedOnTheWay(compiled: CompiledAttempt, trail: Trail): boolean {
  if (!asksOnTheWay(compiled)) return false;
  const lastRest = trail.mark.lastIndexOf(AT_REST) + 1;
  const untilRest = createRecorder({
    tMs: trail.tMs.subarray(0, lastRest),
    raDas: trail.raDas.subarray(0, lastRest),
    decDas: trail.decDas.subarray(0, lastRest),
    byHand: trail.byHand.subarray(0, lastRest),
    mark: trail.mark.subarray(0, lastRest),
  });
  return 3 * untilRest.handDas >= compiled.parDas;
}

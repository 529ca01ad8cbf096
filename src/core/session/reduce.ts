/** What an event makes of a session's state: pure, and the same when an attempt is taken up again from its record. */
import { gearById } from "#core/optics/gear.ts";
import type { AttemptEvent, CompiledAttempt, MasDir } from "#core/seams/index.ts";
import { judgeClaim } from "./claim.ts";
import type { EndReason, Outcome, SessionState } from "./state.ts";

/** The third wrong claim ends a scored attempt. */
const WRONG_CLAIMS_ALLOWED = 2;
/** A finder's screws reach a degree and a half (from memory, no source), or as far as it was out of line at first. */
const SCREWS_REACH_DAS = 54_000;

export type Reduced = { readonly state: SessionState; readonly outcomes: readonly Outcome[] };

/** The state before any event: the first instrument of the list in hand, the anchor still to be found. */
export function startState({ spec }: CompiledAttempt): SessionState {
  const gear = spec.gear[0] ?? spec.claimGear;
  return {
    phase: "anchor",
    gear,
    tubeGear: spec.gear.find((id) => gearById(id).kind !== "eye") ?? gear,
    scored: true,
    rested: false,
    confirmedAtMs: 0,
    tracking: false,
    paused: false,
    locked: [false, false],
    finderOffsetDas: spec.finderOffsetDas,
    found: [],
    wrongClaims: 0,
    firstPinAsked: false,
    lastPinAskedAt: null,
    knocked: false,
    atSun: false,
    endReason: null,
  };
}

/** The finder's screws turned: they reach only so far, so that nobody can search the sky with them. */
function screwed(
  { spec }: CompiledAttempt,
  [x, y]: SessionState["finderOffsetDas"],
  [byX, byY]: readonly [number, number],
): SessionState["finderOffsetDas"] {
  const within = (das: number, startDas: number) => {
    const most = Math.max(SCREWS_REACH_DAS, Math.abs(startDas));
    return Math.min(most, Math.max(-most, das));
  };
  return [within(x + byX, spec.finderOffsetDas[0]), within(y + byY, spec.finderOffsetDas[1])];
}

function end(state: SessionState, why: EndReason): Reduced {
  return { state: { ...state, phase: "ended", endReason: why }, outcomes: [{ kind: "ended", why }] };
}

function claim(
  compiled: CompiledAttempt,
  state: SessionState,
  event: Extract<AttemptEvent, { kind: "claim" }>,
  pointing: MasDir,
): Reduced {
  const judged = judgeClaim(compiled, pointing, event.says, state.gear, state.found);
  if (judged.verdict === "notAllowed") return { state, outcomes: [] };
  const { target, verdict } = judged;
  const right = verdict === "right";
  const wrongClaims = state.wrongClaims + (right ? 0 : 1);
  const found = right ? [...state.found, target] : state.found;
  const next = { ...state, found, wrongClaims };
  const outcome: Outcome = { kind: "claimed", says: event.says, verdict, target, wrongClaims };
  const over = right
    ? found.length === compiled.spec.targets.length
    : state.scored && wrongClaims > WRONG_CLAIMS_ALLOWED;
  if (!over) return { state: next, outcomes: [outcome] };
  const ended = end(next, right ? "found" : "missed");
  return { state: ended.state, outcomes: [outcome, ...ended.outcomes] };
}

/**
 * The state after an event that was taken, and what follows for the page. Movements of the tube are not its affair.
 * @param pointing where the instrument in use points, as the trail has it; only a claim asks
 */
export function reduce(compiled: CompiledAttempt, state: SessionState, event: AttemptEvent, pointing: MasDir): Reduced {
  const quiet = (next: SessionState): Reduced => ({ state: next, outcomes: [] });
  switch (event.kind) {
    case "use":
    case "eyepiece": {
      const onTube = gearById(event.gear).kind !== "eye";
      return quiet({ ...state, gear: event.gear, tubeGear: onTube ? event.gear : state.tubeGear, rested: false });
    }
    case "confirm":
      return {
        state: { ...state, phase: "hop", confirmedAtMs: event.tMs, rested: false },
        outcomes: [{ kind: "anchorConfirmed" }],
      };
    case "restart":
      return { state: { ...state, rested: false }, outcomes: [{ kind: "restarted" }] };
    case "knock":
      return { state: { ...state, knocked: true, rested: false }, outcomes: [{ kind: "knocked" }] };
    case "track":
      return quiet({ ...state, tracking: event.on });
    case "pause":
      return quiet({ ...state, paused: event.on });
    case "axisLock": {
      const [one, two] = state.locked;
      return quiet({ ...state, locked: event.axis === 1 ? [event.locked, two] : [one, event.locked] });
    }
    case "align":
      return quiet({ ...state, finderOffsetDas: screwed(compiled, state.finderOffsetDas, event.byDas) });
    case "claim":
      return claim(compiled, state, event, pointing);
    case "hint": {
      const given: Outcome = { kind: "hintGiven", leg: event.leg, grade: event.grade };
      const shown = event.grade === 3;
      return {
        state: shown ? { ...state, scored: false } : state,
        outcomes: shown ? [given, { kind: "shown" }] : [given],
      };
    }
    case "giveUp":
      return end(state, "givenUp");
    case "end":
      return end(state, "end");
    default:
      return quiet(state);
  }
}

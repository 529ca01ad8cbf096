/** The hand on the finder's screws: drags and held arrows move the stars in the finder, and the tube stays where it is. */
import { DAS_RAD } from "#core/celestial/vector.ts";
import { type SessionEvent, screwingHand, stepEvent } from "#core/session/session.ts";
import type { Hop } from "./hop.ts";
import { settle } from "./outcomes.ts";

/** Screws are turned eight times a second at most: each turn is an event of the record. */
const TICKS_A_TURN = 6;

/** Called with each step of the session while the hand is on the screws. */
export function turnScrews(hop: Hop, tick: number): void {
  const { steering, attempt } = hop;
  if (tick % TICKS_A_TURN !== 0) return;
  const drag = steering.takeScrews();
  if (!drag) return;
  const [one, two] = screwingHand(attempt.session, drag);
  const event: SessionEvent = { kind: "align", byDas: [Math.round(one / DAS_RAD), Math.round(two / DAS_RAD)] };
  stepEvent(attempt.session, event);
  hop.keeper.changed();
  settle(hop);
}

/** The hour of a hop: it may be set until the anchor is confirmed, and what is compiled for it goes into the record. */
import type { AttemptEvent, CompiledAttempt } from "#core/seams/index.ts";
import type { Session } from "./state.ts";

/** The instant that was set last, UTC, ms since 1970-01-01T00:00Z; null where none was. */
export function hourSet(events: readonly AttemptEvent[]): number | null {
  const last = events.findLast((event) => event.kind === "timeSet");
  return last?.kind === "timeSet" ? last.toMs : null;
}

/**
 * Takes the hop compiled anew for the hour that it starts at, before it does: from then on limits and ways stand.
 * @param compiled the same hop; `spec.startMs` is the new hour
 * @returns false, and nothing is changed, where the hop is on already
 */
export function compiledAnew(session: Session, compiled: CompiledAttempt): boolean {
  if (session.state.phase !== "anchor") return false;
  session.compiled = compiled;
  return true;
}

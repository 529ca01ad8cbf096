/** Lets a simulated learner do a hop in a session: it gets looks, its moves go to the tube. */

import { DEG, masFromDir } from "#core/celestial/vector.ts";
import type { PageProjection } from "#core/chart/page.ts";
import { emptyField, seenField } from "#core/field/seenField.ts";
import { visiblePatches } from "#core/field/visiblePatches.ts";
import { emptyStars, visibleStars } from "#core/field/visibleStars.ts";
import type { Seeing, SkyObject, StarSource } from "#core/seams/index.ts";
import {
  gearInUse,
  NO_HAND,
  type Outcome,
  pointing,
  type Session,
  stepEvent,
  TICK_MS,
  tick,
  viewOf,
} from "#core/session/session.ts";
import type { LearnerMove, Look, Rehearsal } from "./types.ts";

/** The sky that a session stands under. */
export type RehearsalWorld = {
  readonly source: StarSource;
  readonly seeing: Seeing;
  readonly objects: readonly SkyObject[];
  /** The page that the learner holds: a pin on the paper is a place in the sky. */
  readonly page: PageProjection;
};
export type RehearsalRun = { readonly moves: readonly LearnerMove[]; readonly outcomes: readonly Outcome[] };

const MOST_MOVES = 150;
const FIELDS_PER_S = 0.5;
const LONGEST_REST_MS = 5000;
/** A look at the new picture before the next move. */
const SETTLE_MS = 1000;

/**
 * Rehearses from the confirmed anchor on, in the hopping instrument, until the attempt has ended, the learner has given up
 * or done too much. Tiles are awaited: how quick a source is does not count.
 */
export async function rehearse(
  session: Session,
  learner: Rehearsal,
  world: RehearsalWorld,
  signal: AbortSignal,
): Promise<RehearsalRun> {
  const moves: LearnerMove[] = [];
  const outcomes: Outcome[] = [];
  const lookAgain = lookThrough(session, world, signal);
  let pinAsked = false;
  while (session.state.phase !== "ended" && moves.length < MOST_MOVES) {
    const move = learner.next(await lookAgain(pinAsked));
    moves.push(move);
    const heard = carryOut(session, move, world.page);
    outcomes.push(...heard);
    pinAsked = heard.some(({ kind }) => kind === "pinAsked");
  }
  return { moves, outcomes };
}

function lookThrough(session: Session, { source, seeing, objects }: RehearsalWorld, signal: AbortSignal) {
  const field = emptyField();
  const stars = emptyStars();
  const view = new Float64Array(9);
  return async (pinAsked: boolean): Promise<Look> => {
    const input = { pointing: pointing(session), gear: gearInUse(session), source, seeing, objects };
    if (seenField(input, field).missing.length > 0) await source.want(field.missing, 0, signal);
    seenField(input, field);
    viewOf(session, view);
    return { stars: visibleStars(field, view, stars), patches: visiblePatches(field, view), pinAsked };
  };
}

function carryOut(session: Session, move: LearnerMove, page: PageProjection): Outcome[] {
  switch (move.kind) {
    case "push":
      return [...pushTube(session, move.axis1, move.axis2), ...waitForRest(session)];
    case "pin":
      return [...stepEvent(session, { kind: "pin", at: masFromDir(page.unproject(move.at.x, move.at.y)) })];
    case "use":
      return [...stepEvent(session, { kind: "use", gear: move.gear }), ...waitForRest(session)];
    case "claim":
      return [...waitForRest(session), ...stepEvent(session, { kind: "claim", says: move.says })];
    case "restart":
      return [...stepEvent(session, { kind: "restart" }), ...waitForRest(session)];
    case "giveUp":
      return [...stepEvent(session, { kind: "giveUp" })];
  }
}

/** A steady push, as fast as one can follow the stars. */
function pushTube(session: Session, axis1: number, axis2: number): Outcome[] {
  const stepRad = (FIELDS_PER_S * gearInUse(session).fieldDeg * DEG * TICK_MS) / 1000;
  const ticks = Math.max(1, Math.ceil(Math.hypot(axis1, axis2) / stepRad));
  const heard: Outcome[] = [];
  for (let i = 0; i < ticks; i++) heard.push(...tick(session, { axis1: axis1 / ticks, axis2: axis2 / ticks }));
  return heard;
}

function waitForRest(session: Session): Outcome[] {
  const heard: Outcome[] = [];
  for (let ms = 0; ms < SETTLE_MS || (!session.state.rested && ms < LONGEST_REST_MS); ms += TICK_MS) {
    heard.push(...tick(session, NO_HAND));
  }
  return heard;
}

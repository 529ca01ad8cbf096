/**
 * A simulated learner. It has a page and looks through the instrument; where it points it must find out from the stars. It
 * nudges each axis once to see what the hand does, then goes from fix to fix towards the target, puts what it seeks into the
 * middle, and claims. Where the field is nowhere on the page it looks a little further about, and goes back to the anchor
 * when lost, once.
 */
import { createHandSense, type HandSense, type Vector } from "./handSense.ts";
import { type Fix, matchField } from "./matchField.ts";
import type { GearInHand, LearnerMove, Look, PaperPoint, Rehearsal, RehearsalTask } from "./types.ts";

/** Nudges and steps in radii of the field; an old star stays in view at each step. */
const NUDGE_RADII = 0.2;
const STEP_RADII = 0.9;
const ARRIVED_RADII = 0.06;
const IN_THE_MIDDLE_RADII = 0.12;
/** Where the field is sought about the place expected: first near, then wide. */
const SEARCH_RADII = [1, 3] as const;
/** Further than this from the place expected, somebody has moved the tube. */
const KNOCKED_RADII = 0.6;
const LOST_OFTEN = 4;

/** What the learner believes and remembers. */
type Mind = {
  readonly task: RehearsalTask;
  /** What pushes do to the place on the page (hopping instrument), and to a thing in view (claim instrument). */
  readonly onPage: HandSense;
  readonly inView: HandSense;
  gear: GearInHand;
  /** Where on the page the next fix should be. */
  expected: PaperPoint;
  /** The last push and where things stood before it. */
  pushed: { readonly push: Vector; readonly from: Vector } | null;
  lost: number;
  restarted: boolean;
};

export function createRehearsal(task: RehearsalTask): Rehearsal {
  const mind: Mind = {
    task,
    onPage: createHandSense(nudgeRad(task, task.hopping)),
    inView: createHandSense(nudgeRad(task, task.claim)),
    gear: task.hopping,
    expected: task.anchor,
    pushed: null,
    lost: 0,
    restarted: false,
  };
  return { next: (look) => nextMove(mind, look) };
}

function nextMove(mind: Mind, look: Look): LearnerMove {
  const fix = mind.gear === mind.task.hopping || look.pinAsked ? fixNear(mind, look) : null;
  if (look.pinAsked) return { kind: "pin", at: fix ? { x: fix.x, y: fix.y } : mind.expected };
  if (mind.gear !== mind.task.hopping) return centre(mind, look);
  return fix ? followPage(mind, fix, look) : lookAbout(mind);
}

/** The field found on the page, near the place expected or further off. */
function fixNear({ task, gear, expected }: Mind, { stars }: Look): Fix | null {
  const { radiusPx, parity } = gear;
  for (const radii of SEARCH_RADII) {
    const fix = matchField(stars, task.stars, { radiusPx, parity, near: expected, withinPx: radii * radiusPx });
    if (fix) return fix;
  }
  return null;
}

/** A step towards the target on the page, or what one does there. */
function followPage(mind: Mind, fix: Fix, look: Look): LearnerMove {
  const { task, gear, onPage } = mind;
  const at: Vector = [fix.x, fix.y];
  // A field that stands where no push could have brought it tells of a knock, not of the hand.
  if (Math.hypot(fix.x - mind.expected.x, fix.y - mind.expected.y) > KNOCKED_RADII * gear.radiusPx) mind.pushed = null;
  learn(mind, onPage, at);
  mind.lost = 0;
  mind.expected = { x: fix.x, y: fix.y };
  const [dx, dy] = [task.target.x - fix.x, task.target.y - fix.y];
  const far = Math.hypot(dx, dy);
  if (far < ARRIVED_RADII * gear.radiusPx) return arrived(mind, look);
  const share = Math.min(1, (STEP_RADII * gear.radiusPx) / far);
  if (!onPage.nudge()) mind.expected = { x: fix.x + share * dx, y: fix.y + share * dy };
  return push(mind, onPage, [share * dx, share * dy], at);
}

/** In the claim instrument: what is no star goes to the middle. */
function centre(mind: Mind, look: Look): LearnerMove {
  const [patch] = look.patches.toSorted((a, b) => Math.hypot(a.x, a.y) - Math.hypot(b.x, b.y));
  if (!patch) return arrived(mind, look);
  learn(mind, mind.inView, [patch.x, patch.y]);
  if (Math.hypot(patch.x, patch.y) < IN_THE_MIDDLE_RADII) return arrived(mind, look);
  return push(mind, mind.inView, [-patch.x, -patch.y], [patch.x, patch.y]);
}

function arrived(mind: Mind, { patches }: Look): LearnerMove {
  const { claim } = mind.task;
  if (mind.gear.id === claim.id) return { kind: "claim", says: patches.length > 0 ? "here" : "notSeen" };
  mind.gear = claim;
  mind.pushed = null;
  return { kind: "use", gear: claim.id };
}

/** The field is nowhere on the page: a little further along either axis other stars come in; at last, back to the anchor. */
function lookAbout(mind: Mind): LearnerMove {
  mind.lost += 1;
  mind.pushed = null;
  if (mind.lost >= LOST_OFTEN) return goBack(mind);
  const nudge = nudgeRad(mind.task, mind.gear);
  return mind.lost % 2 === 1 ? { kind: "push", axis1: nudge, axis2: 0 } : { kind: "push", axis1: 0, axis2: nudge };
}

function goBack(mind: Mind): LearnerMove {
  if (mind.restarted) return { kind: "giveUp" };
  mind.restarted = true;
  mind.lost = 0;
  mind.expected = mind.task.anchor;
  return { kind: "restart" };
}

function push(mind: Mind, sense: HandSense, wanted: Vector, from: Vector): LearnerMove {
  const [axis1, axis2] = sense.nudge() ?? sense.pushFor(wanted);
  mind.pushed = { push: [axis1, axis2], from };
  return { kind: "push", axis1, axis2 };
}

function learn(mind: Mind, sense: HandSense, [x, y]: Vector): void {
  if (mind.pushed) sense.learn(mind.pushed.push, [x - mind.pushed.from[0], y - mind.pushed.from[1]]);
  mind.pushed = null;
}

function nudgeRad({ radPerPx }: RehearsalTask, { radiusPx }: GearInHand): number {
  return NUDGE_RADII * radiusPx * radPerPx;
}

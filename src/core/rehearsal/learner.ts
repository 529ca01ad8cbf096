/**
 * A simulated learner. It has a page and looks through the instrument; where it points it must find out from the stars. It
 * nudges each axis once to see what the hand does, then goes from fix to fix towards the target, puts what it seeks into the
 * middle, and claims: what is no star, the star that the page has not, or stars that it has, as the page's sign says. Where the field is nowhere on the page it looks a little further about, and goes back to the anchor
 * when lost, once.
 */
import { createHandSense, type HandSense, type Vector } from "./handSense.ts";
import { type Fix, matchField, unprinted } from "./matchField.ts";
import type { GearInHand, LearnerMove, Look, PaperPoint, PaperStar, Rehearsal, RehearsalTask } from "./types.ts";

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
/** So near to the target's sign a star that the page has not is the one sought. */
const AT_SIGN_RADII = 0.15;
/** A star is known again in another instrument by its brightness. */
const SAME_MAG = 0.3;

/** What the learner believes and remembers. */
type Mind = {
  readonly task: RehearsalTask;
  /** What pushes do to the place on the page (hopping instrument), and to a thing in view (claim instrument). */
  readonly onPage: HandSense;
  readonly inView: HandSense;
  gear: GearInHand;
  /** Where on the page the next fix should be. */
  expected: PaperPoint;
  /** The star that is sought, once it was seen in the hopping instrument or on the page. */
  star: PaperStar | null;
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
    star: null,
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
  if (far < ARRIVED_RADII * gear.radiusPx) {
    mind.star = starAtSign(task, gear, fix, look);
    return arrived(mind, look);
  }
  const share = Math.min(1, (STEP_RADII * gear.radiusPx) / far);
  if (!onPage.nudge()) mind.expected = { x: fix.x + share * dx, y: fix.y + share * dy };
  return push(mind, onPage, [share * dx, share * dy], at);
}

/** The star at the target's sign that the page has not, or the one that it has; null where there is none. */
function starAtSign({ sought, stars, target }: RehearsalTask, gear: GearInHand, fix: Fix, look: Look) {
  if (sought === "patch") return null;
  const apart = (star: PaperStar) => Math.hypot(star.x - target.x, star.y - target.y);
  const all = sought === "stranger" ? unprinted(look.stars, stars, fix, gear) : stars;
  const near = all.filter((star) => apart(star) < AT_SIGN_RADII * gear.radiusPx);
  return near.toSorted((a, b) => apart(a) - apart(b))[0] ?? null;
}

/** Where in view the thing sought is, nearest to the middle. */
function inSight({ task, star }: Mind, { patches, stars }: Look): Vector | null {
  const places: Vector[] = task.sought === "patch" ? patches.map(({ x, y }) => [x, y]) : [];
  for (let i = 0; star && i < stars.count; i++)
    if (Math.abs(stars.milliMag[i]! / 1000 - star.magV) < SAME_MAG) places.push([stars.x[i]!, stars.y[i]!]);
  return places.toSorted((a, b) => Math.hypot(...a) - Math.hypot(...b))[0] ?? null;
}

/** In the claim instrument: what is sought goes to the middle. */
function centre(mind: Mind, look: Look): LearnerMove {
  const place = inSight(mind, look);
  if (!place) return arrived(mind, look);
  learn(mind, mind.inView, place);
  if (Math.hypot(...place) < IN_THE_MIDDLE_RADII) return arrived(mind, look);
  return push(mind, mind.inView, [-place[0], -place[1]], place);
}

function arrived(mind: Mind, look: Look): LearnerMove {
  const { claim } = mind.task;
  if (mind.gear.id === claim.id) return { kind: "claim", says: inSight(mind, look) ? "here" : "notSeen" };
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

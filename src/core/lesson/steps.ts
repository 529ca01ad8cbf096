/** Which of a hop's words are up. */
import type { GearKind } from "#core/seams/index.ts";
import type { LessonStep, Moment } from "./types.ts";

/** How things stand in an attempt, as far as the words depend on it. */
export interface Facts {
  readonly moved: boolean;
  readonly anchorNear: boolean;
  readonly anchorConfirmed: boolean;
  readonly gear: GearKind;
  /** Marks of the first way passed since the last start from the anchor. */
  readonly marksReached: number;
  readonly nearTarget: boolean;
  readonly lost: boolean;
}

function holds(when: Moment, facts: Facts): boolean {
  const [moment, detail] = when.split(":");
  switch (moment) {
    case "start":
      return true;
    case "gear":
      return facts.gear === detail;
    case "markReached":
      return facts.marksReached >= Number(detail);
    default:
      return facts[moment as "moved" | "anchorNear" | "anchorConfirmed" | "nearTarget" | "lost"];
  }
}

/**
 * The step that is up: the last one whose moment holds. A step `anchorConfirmed` divides the list: those before it are over
 * once the anchor is confirmed, those after it wait for that, so that a glance through the finder on the way to the anchor
 * does not bring up what comes later.
 */
export function stepNow(steps: readonly LessonStep[], facts: Facts): LessonStep {
  const divide = steps.findIndex(({ when }) => when === "anchorConfirmed");
  const open = divide < 0 ? steps : facts.anchorConfirmed ? steps.slice(divide) : steps.slice(0, divide);
  return open.findLast(({ when }) => holds(when, facts)) ?? steps[0]!;
}

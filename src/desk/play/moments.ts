/** Which of a lesson's words stand beside the field: steps come up at moments, and go forward unless one is lost. */
import type { LessonStep, Moment } from "#core/lesson/types.ts";

export interface Guide {
  /** The step whose words stand now. */
  current(): LessonStep | undefined;
  /** A moment came; true where the words changed. */
  reach(moment: Moment): boolean;
}

/**
 * Follows the steps of a lesson.
 * @param steps in the file's order, which is the order of the hop
 */
export function createGuide(steps: readonly LessonStep[]): Guide {
  let at = Math.max(
    0,
    steps.findIndex(({ when }) => when === "start"),
  );
  const isLost = () => steps[at]?.when === "lost";
  return {
    current: () => steps[at],
    reach(moment) {
      const next = steps.findIndex(({ when }) => when === moment);
      const back = next < at && !isLost() && moment !== "lost" && moment !== "anchorConfirmed";
      if (next < 0 || next === at || back) return false;
      at = next;
      return true;
    },
  };
}

import { describe, expect, it } from "vitest";
import { type Facts, stepNow } from "#core/lesson/steps.ts";
import type { LessonStep, Moment } from "#core/lesson/types.ts";

const steps: LessonStep[] = (
  [
    "start",
    "gear:sight",
    "anchorConfirmed",
    "gear:finder",
    "markReached:1",
    "nearTarget",
    "gear:eyepiece",
    "lost",
  ] satisfies Moment[]
).map((when) => ({ when, now: when, say: "." }));
const atStart: Facts = {
  moved: false,
  anchorNear: false,
  anchorConfirmed: false,
  gear: "eye",
  marksReached: 0,
  nearTarget: false,
  lost: false,
};
const confirmed: Facts = { ...atStart, anchorConfirmed: true, gear: "sight" };

describe("the step that is up", () => {
  it.each<[string, Facts, Moment]>([
    ["at the start", atStart, "start"],
    ["in the sight", { ...atStart, gear: "sight" }, "gear:sight"],
    ["in the finder before the anchor is confirmed", { ...atStart, gear: "finder" }, "start"],
    ["the anchor confirmed, the sight still in hand", confirmed, "anchorConfirmed"],
    ["in the finder", { ...confirmed, gear: "finder" }, "gear:finder"],
    ["a mark passed", { ...confirmed, gear: "finder", marksReached: 1 }, "markReached:1"],
    ["by the target", { ...confirmed, gear: "finder", marksReached: 1, nearTarget: true }, "nearTarget"],
    ["in the eyepiece", { ...confirmed, gear: "eyepiece", marksReached: 1, nearTarget: true }, "gear:eyepiece"],
    ["lost", { ...confirmed, gear: "finder", marksReached: 1, lost: true }, "lost"],
  ])("%s", (_, facts, when) => {
    expect(stepNow(steps, facts).when).toBe(when);
  });
});

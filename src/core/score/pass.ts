/** When a hop is passed. */
import type { Report } from "#core/seams/index.ts";

/**
 * Passed: the target claimed, the points reached, and, where pins were asked, at least one that earned something: straight
 * luck without knowing where one points is not the skill.
 */
export function passes(report: Report, markPoints: number): boolean {
  if (report.points === null || (report.word !== "found" && report.word !== "notSeen")) return false;
  const pins = report.lines.find(({ what }) => what === "pins");
  const knew = !pins || pins.figures.of === 0 || pins.points > 0;
  return knew && report.points >= markPoints;
}

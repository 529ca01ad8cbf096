/** What a lesson makes of a report: stars, and the figures that its lines name. */
import { judgedClaims } from "#core/score/claims.ts";
import { passes } from "#core/score/pass.ts";
import { dirsOfTrail } from "#core/score/places.ts";
import type { AttemptRecord, Report } from "#core/seams/index.ts";
import { spotName } from "./spots.ts";
import type { Lesson, LessonPass } from "./types.ts";
import type { Figures } from "./words.ts";

const DAS_PER_DEG = 36_000;

export type Stars = 0 | 1 | 2 | 3;

const claimsIn = (record: AttemptRecord) => judgedClaims(record, dirsOfTrail(record.trail)).length;
const highestHint = ({ events }: AttemptRecord) =>
  events.reduce((highest, event) => (event.kind === "hint" ? Math.max(highest, event.grade) : highest), 0);

/** One star: the points and at most one wrong claim; two: besides, no hint over the first grade; three: no hint, no wrong claim. */
function starsByPoints(points: readonly [number, number, number], report: Report, record: AttemptRecord): Stars {
  const wrongClaims = claimsIn(record) - 1;
  const hint = highestHint(record);
  if (passes(report, points[2]) && wrongClaims === 0 && hint === 0) return 3;
  if (passes(report, points[1]) && wrongClaims <= 1 && hint <= 1) return 2;
  return passes(report, points[0]) && wrongClaims <= 1 ? 1 : 0;
}

function starsByClaims(most: readonly [number, number, number], report: Report, record: AttemptRecord): Stars {
  if (report.word !== "found" && report.word !== "notSeen") return 0;
  const claims = claimsIn(record);
  return claims <= most[2] ? 3 : claims <= most[1] ? 2 : claims <= most[0] ? 1 : 0;
}

/** Stars earned by an attempt with one target. 0: not passed. */
export function starsEarned(pass: LessonPass, report: Report, record: AttemptRecord): Stars {
  return "points" in pass ? starsByPoints(pass.points, report, record) : starsByClaims(pass.claims, report, record);
}

/** The values of a lesson's lines, from the report and the record alone; what is not known is left out. */
export function figuresOf(lesson: Lesson, stageIndex: number, report: Report, record: AttemptRecord): Figures {
  const hop = lesson.stages[stageIndex]?.hop;
  const field = record.compiled.hoppingFieldDas;
  const deg = (das: number) => (das / DAS_PER_DEG).toFixed(1);
  const fields = (das: number) => (das / field).toFixed(1);
  const started = record.trail.tMs[0];
  const ended = record.events.findLast(({ kind }) => kind === "claim")?.tMs;
  return {
    ...(hop ? { anchor: spotName(hop.anchor), target: spotName(hop.target) } : {}),
    trailDeg: deg(report.trailDas),
    parDeg: deg(report.parDas),
    trailFields: fields(report.trailDas),
    parFields: fields(report.parDas),
    shortFields: fields(report.shortByDas),
    claims: String(claimsIn(record)),
    ...(report.points === null ? {} : { points: String(report.points) }),
    ...(report.habit ? { cost: String(report.habit.costPoints) } : {}),
    ...(started !== undefined && ended !== undefined ? { seconds: String(Math.round((ended - started) / 1000)) } : {}),
  };
}

/** All that a report says, worked out from the record once: the record is scored again, stored points are not read. */
import { dirFromMas } from "#core/celestial/vector.ts";
import { figuresOf, type Stars, starsEarned } from "#core/lesson/pass.ts";
import { spotName } from "#core/lesson/spots.ts";
import type { Lesson } from "#core/lesson/types.ts";
import type { Figures } from "#core/lesson/words.ts";
import { type JudgedClaim, judgedClaims } from "#core/score/claims.ts";
import { type DearPart, dearPart } from "#core/score/dearPart.ts";
import { dirsOfTrail, distanceDas } from "#core/score/places.ts";
import { score } from "#core/score/report.ts";
import type { AttemptRecord, Dir, Report, Route } from "#core/seams/index.ts";
import { decodeRecord } from "#core/session/record.ts";
import { isSeeded } from "../app/lessonOf.ts";
import type { FinishedAttempt } from "../app/ports.ts";
import { dateFormat, fixed, written } from "../words/say.ts";

const DAS_PER_DEG = 36_000;
/** A mark counts as passed within this share of the hopping field. */
export const PASSED_FIELDS = 0.25;

export const degOf = (das: number): string => fixed(das / DAS_PER_DEG, 1);

export interface Facts {
  readonly record: AttemptRecord;
  readonly report: Report;
  readonly stars: Stars;
  readonly figures: Figures;
  readonly dirs: readonly Dir[];
  readonly claims: readonly JudgedClaim[];
  readonly dear: DearPart | null;
  /** The shortest of the named ways. */
  readonly way: Route;
  readonly anchor: string;
  readonly target: string;
  /** The furthest mark of the way that was passed, its name; null where none was. */
  readonly passed: string | null;
  /** Where the tube pointed at the last claim or at the end; null before the anchor. */
  readonly stood: Dir | null;
  /** Lessons that count claims have dots and no points. */
  readonly byClaims: boolean;
}

/** A lesson file's lines keep their author's decimal mark; lines of the page's own have that of its language. */
export const figuresFor = ({ id }: Lesson, { figures }: Facts): Figures =>
  isSeeded(id)
    ? Object.fromEntries(Object.entries(figures).map(([name, figure]) => [name, figure.replace(/^\d+\.\d+$/, written)]))
    : figures;

/** @throws InputError where the record cannot be read */
export function factsOf(attempt: FinishedAttempt, lesson: Lesson): Facts {
  const record = decodeRecord(attempt.recordText);
  const report = score(record);
  const dirs = dirsOfTrail(record.trail);
  const claims = judgedClaims(record, dirs);
  const hop = lesson.stages[0]!.hop;
  const way = record.compiled.ways.reduce((best, one) => (one.lengthDas < best.lengthDas ? one : best));
  return {
    record,
    report,
    stars: starsEarned(lesson.pass, report, record),
    figures: figuresOf(lesson, 0, report, record),
    dirs,
    claims,
    dear: dearPart(record),
    way,
    anchor: spotName(hop.anchor),
    target: spotName(hop.target),
    passed: lastPassed(way, dirs, record.compiled.hoppingFieldDas),
    stood: claims.at(-1)?.place ?? dirs.at(-1) ?? null,
    byClaims: "claims" in lesson.pass,
  };
}

/** The name of the furthest mark between anchor and target that the trail came past. */
export function lastPassed(way: Route, dirs: readonly Dir[], fieldDas: number): string | null {
  const between = way.marks.slice(1, -1).toReversed();
  const passed = between.find(({ dir }) => {
    const mark = dirFromMas(dir);
    return dirs.some((place) => distanceDas(place, mark) <= fieldDas * PASSED_FIELDS);
  });
  return passed?.name ?? null;
}

/** Milliseconds of time for a degree of longitude. */
const MS_PER_DEG = 240_000;

/** Mean local time of a moment of the attempt, "21.05", and the night's date. */
export function nightTime(
  { compiled }: Pick<AttemptRecord, "compiled">,
  tMs: number,
): { readonly time: string; readonly date: string } {
  const [, lonMas] = compiled.spec.siteMas;
  const local = new Date(compiled.spec.startMs + tMs + (lonMas / 3_600_000) * MS_PER_DEG);
  const [hours, minutes] = [local.getUTCHours(), local.getUTCMinutes()].map((value) => String(value).padStart(2, "0"));
  const date = dateFormat({ timeZone: "UTC", day: "numeric", month: "long", year: "numeric" });
  return { time: `${hours}.${minutes}`, date: date.format(local) };
}

/** Width of the hopping field, degrees. */
export const hoppingFieldDeg = ({ compiled }: AttemptRecord): number => compiled.hoppingFieldDas / DAS_PER_DEG;

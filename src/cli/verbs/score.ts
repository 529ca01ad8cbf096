/** `score`: a record's report, and whether the record is what it claims to be. */
import { DAS_RAD, DEG } from "#core/celestial/vector.ts";
import { toHopSpec } from "#core/lesson/hopSpec.ts";
import { realLookups } from "#core/lesson/realLookups.ts";
import type { Lesson } from "#core/lesson/types.ts";
import { compileHop } from "#core/score/compile.ts";
import { score as scoreOf } from "#core/score/report.ts";
import { InputError } from "#core/seams/errors.ts";
import type { AttemptRecord, CompiledAttempt, Report, ScoreWhat } from "#core/seams/index.ts";
import { hourSet } from "#core/session/hour.ts";
import { checksumFits, decodeRecord } from "#core/session/record.ts";
import { parseArgs } from "../args.ts";
import { readText } from "../files.ts";
import type { Io, Verb } from "../io.ts";
import { readLesson } from "../lessonFile.ts";
import { residentAbout, skyOf } from "../skies.ts";
import { pairs } from "../table.ts";
import { UsageError } from "../usageError.ts";

const LARGEST_RECORD_BYTES = 8_000_000;
const deg = (das: number) => Number(((das * DAS_RAD) / DEG).toFixed(4));

async function readRecord(file: string): Promise<AttemptRecord> {
  const text = await readText(file, LARGEST_RECORD_BYTES);
  try {
    return decodeRecord(text);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new UsageError("RECORD", `${file}: ${error.message}`, error.hint, { file });
  }
}

/** What a lesson fixes: all that was compiled but the hand's gain, which is drawn for each try. */
function fixedPart({ gainPermille: _drawn, context, ...rest }: CompiledAttempt): string {
  return JSON.stringify([sorted(rest), context && [...context.stars], context?.lookAlikes]);
}

/** The value with the keys of every object in order, so that equal values give equal text. */
function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== "object" || value === null) return value;
  const entries = Object.entries(value).filter(([, each]) => each !== undefined);
  return Object.fromEntries(entries.sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, each]) => [key, sorted(each)]));
}

/** Whether some stage of the lesson compiles to the record's integers. */
async function compilesAgain(record: AttemptRecord, lesson: Lesson, io: Io): Promise<boolean> {
  const wanted = fixedPart(record.compiled);
  // The night may have been set to another hour before the hop; then the record's events say so.
  const { spec: recorded } = record.compiled;
  const startMs = hourSet(record.events) === recorded.startMs ? recorded.startMs : Date.parse(lesson.time);
  const seeing = realLookups.seeing({ ...lesson, time: new Date(startMs).toISOString() });
  for (let stage = 0; stage < lesson.stages.length; stage++) {
    const spec = { ...toHopSpec(lesson, stage, realLookups), startMs };
    const stars = await residentAbout(skyOf(spec.sky, io), spec, seeing);
    const compiled = compileHop(spec, stars, seeing, 0);
    if ("ok" in compiled && fixedPart(compiled.ok) === wanted) return true;
  }
  return false;
}

function partsOf({ lines }: Report): Partial<Record<ScoreWhat, number>> {
  return Object.fromEntries(lines.map(({ what, points }) => [what, points]));
}

export const score: Verb = {
  what: "the points of a recorded attempt, and whether the record is unchanged",
  usage: "score RECORD.json [--lesson=FILE]",
  async run(args, io) {
    const { options, words } = parseArgs(args, { lesson: "value" }, { least: 1, most: 1, what: "a record" });
    const record = await readRecord(words[0]!);
    const lesson = options.lesson === undefined ? undefined : await readLesson(options.lesson);
    const report = scoreOf(record);
    const matchesRecord = checksumFits(record) && (lesson === undefined || (await compilesAgain(record, lesson, io)));
    const trail = {
      lengthDeg: deg(report.trailDas),
      parDeg: deg(report.parDas),
      fields: Number((report.trailDas / record.compiled.hoppingFieldDas).toFixed(1)),
    };
    const parts = partsOf(report);
    return {
      exit: matchesRecord ? 0 : 1,
      json: { score: report.points, word: report.word, parts, trail, habit: report.habit, matchesRecord },
      text: pairs([
        ["score", report.points === null ? `none: ${report.word}` : `${report.points}, ${report.word}`],
        ...Object.entries(parts).map(([what, points]) => [`  ${what}`, String(points)] as const),
        ["trail", `${trail.lengthDeg} deg for ${trail.parDeg}, ${trail.fields} fields`],
        ["record", matchesRecord ? "as it was made" : "changed"],
      ]),
    };
  },
};

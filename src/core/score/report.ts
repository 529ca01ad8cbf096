/** The report: a record becomes lines of whole points that add up exactly. Nothing but the record is read. */
import { InputError } from "#core/seams/errors.ts";
import type { AttemptRecord, Dir, Report, ReportWord, Score, ScoreLine, Weights } from "#core/seams/index.ts";
import { carePoints, type Price, pricesOf } from "./care.ts";
import { type JudgedClaim, judgedClaims } from "./claims.ts";
import { type Corridor, corridorOf, directnessPoints, excessDas, type Lengths, lengthsIn } from "./corridor.ts";
import { costliestHabit } from "./habits.ts";
import { type Step, scoredPath } from "./path.ts";
import { pinAnswers, pinPoints } from "./pins.ts";
import { dirsOfTrail, distanceDas } from "./places.ts";
import { endMs, trailUntil } from "./rests.ts";
import { MOST_FIELDS, PRICE, SCORE_VERSION } from "./rules.ts";

/** Weights of this hop: one shorter than a field asks one pin and gives the other's weight to directness. */
export function weightsOf({ compiled }: AttemptRecord): Weights {
  const { weights } = compiled.spec;
  if (compiled.parDas >= compiled.hoppingFieldDas || weights.directness === 0) return weights;
  const pins = Math.floor(weights.pins / 2);
  return { directness: weights.directness + weights.pins - pins, pins, care: weights.care };
}

const shownAtMs = ({ events }: AttemptRecord): number | null =>
  events.find((event) => event.kind === "hint" && event.grade === 3)?.tMs ?? null;

/** How the attempt ended, in one word. */
function wordOf(record: AttemptRecord, claims: readonly JudgedClaim[]): ReportWord {
  const last = claims.at(-1);
  const shown = shownAtMs(record);
  if (shown !== null && (!last?.right || shown < last.atMs)) return "shown";
  if (last?.right) return last.says === "here" ? "found" : "notSeen";
  return claims.length >= PRICE.wrongClaims.length ? "missed" : "givenUp";
}

const line = (
  what: ScoreLine["what"],
  points: number,
  rule: string,
  figures: ScoreLine["figures"] = {},
  at: readonly number[] = [],
) => ({ what, points, rule, figures, at }) satisfies ScoreLine;

const pinsLine = (record: AttemptRecord, dirs: readonly Dir[], weight: number): ScoreLine => {
  const answers = pinAnswers(record, dirs);
  const first = answers.length === 1 ? weight : Math.floor(weight / 2);
  const shares = answers.length === 1 ? [first] : [first, weight - first];
  const points = answers.map((answer, i) => pinPoints(answer, record.compiled.hoppingFieldDas, shares[i]!));
  const answered = answers.filter(({ offDas }) => offDas !== null);
  const figures = {
    asked: answers.length,
    answered: answered.length,
    offDas: Math.max(0, ...answered.map(({ offDas }) => offDas ?? 0)),
    of: weight,
  };
  const at = answers.map(({ answeredMs, askedMs }) => answeredMs ?? askedMs);
  return line(
    "pins",
    points.reduce((sum, one) => sum + one, 0),
    answered.length > 0 ? "pins" : "pinsUnanswered",
    figures,
    at,
  );
};

const careLine = (weight: number, prices: readonly Price[]): ScoreLine => {
  const count = (rule: Price["rule"]) => prices.filter((price) => price.rule === rule).length;
  const cost = (rule: Price["rule"]) =>
    prices.reduce((sum, price) => sum + (price.rule === rule ? price.points : 0), 0);
  const figures = {
    wrongClaims: count("wrongClaim"),
    wrongClaimsCost: cost("wrongClaim"),
    restarts: count("restart"),
    restartsCost: cost("restart"),
    hints: count("hint"),
    hintsCost: cost("hint"),
    aids: count("aid"),
    aidsCost: cost("aid"),
    of: weight,
  };
  return line(
    "care",
    carePoints(weight, prices),
    prices.length > 0 ? "carePaid" : "careWhole",
    figures,
    prices.map(({ atMs }) => atMs),
  );
};

const directnessLine = (corridor: Corridor, lengths: Lengths, weight: number): ScoreLine =>
  line(
    "directness",
    directnessPoints(corridor, lengths, weight),
    excessDas(corridor, lengths) > 0 ? "longer" : "direct",
    {
      trailDas: lengths.insideDas + lengths.outsideDas,
      outsideDas: lengths.outsideDas,
      parDas: corridor.parDas,
      of: weight,
    },
  );

/** The lines of a found target; a last line lifts a sum below zero to zero. */
function foundLines(
  record: AttemptRecord,
  dirs: readonly Dir[],
  corridor: Corridor,
  lengths: Lengths,
  word: ReportWord,
): ScoreLine[] {
  const weights = weightsOf(record);
  const lines = [
    line("found", 0, word === "notSeen" ? "rightPlace" : "found"),
    directnessLine(corridor, lengths, weights.directness),
    pinsLine(record, dirs, weights.pins),
    careLine(weights.care, pricesOf(record, dirs, corridor, lengths)),
  ];
  const sum = lines.reduce((points, one) => points + one.points, 0);
  return sum < 0 ? [...lines, line("floor", -sum, "floor")] : lines;
}

/** The trail up to the moment at which the scored part ended. */
function scoredPart(record: AttemptRecord, untilMs: number): AttemptRecord {
  const { trail, events } = record;
  const upTo = trail.tMs.findIndex((tMs) => tMs > untilMs);
  return {
    ...record,
    events: events.filter(({ tMs }) => tMs <= untilMs),
    trail: trailUntil(trail, upTo < 0 ? trail.tMs.length : upTo),
  };
}

/** @throws InputError where the way is longer than any hand goes: judging it would take minutes */
function walkable(steps: readonly Step[], { fieldDas }: Corridor): readonly Step[] {
  const fields = steps.reduce((sum, { lengthDas }) => sum + lengthDas, 0) / fieldDas;
  if (fields <= MOST_FIELDS) return steps;
  throw new InputError(`The trail is ${Math.round(fields)} fields long.`, `No hop is longer than ${MOST_FIELDS}.`);
}

/**
 * Scores a record.
 * @param whole an attempt that ended, or that is judged as if it ended now
 * @returns lines whose points add up to `points`; `points` is null where the way was shown
 * @throws InputError where the record was made under rules that this version does not know, or its trail is beyond all bounds
 */
export const score: Score = (whole): Report => {
  if (whole.compiled.versions.score !== SCORE_VERSION)
    throw new InputError(
      `The record was scored by rules ${whole.compiled.versions.score}; this program knows rules ${SCORE_VERSION}.`,
      "Open it with the version of the program that made it.",
    );
  const claims = judgedClaims(whole, dirsOfTrail(whole.trail));
  const last = claims.at(-1);
  const word = wordOf(whole, claims);
  const record = scoredPart(whole, last?.right || word === "missed" ? last!.atMs : endMs(whole));
  const dirs = dirsOfTrail(record.trail);
  const corridor = corridorOf(record.compiled);
  const lengths = lengthsIn(corridor, walkable(scoredPath(record), corridor));
  const found = word === "found" || word === "notSeen";
  const lines = found ? foundLines(record, dirs, corridor, lengths, word) : [line("found", 0, word)];
  const stood = last?.place ?? dirs.at(-1);
  return {
    word,
    points: word === "shown" ? null : lines.reduce((sum, { points }) => sum + points, 0),
    lines,
    trailDas: lengths.insideDas + lengths.outsideDas,
    parDas: corridor.parDas,
    shortByDas: stood ? distanceDas(stood, corridor.target) : distanceDas(corridor.anchor, corridor.target),
    habit: costliestHabit(record, dirs, corridor, lengths),
  };
};

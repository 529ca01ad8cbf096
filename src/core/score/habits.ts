/**
 * The habit that cost most, from the record alone: one thing to do better. A code fires at its count; its cost is what the
 * score would gain without it. Ties go to the skill that is learnt earlier.
 */
import { dirFromMas } from "#core/celestial/vector.ts";
import type { AttemptRecord, Dir, Report } from "#core/seams/index.ts";
import { pricesOf } from "./care.ts";
import { type Corridor, directnessPoints, excessDas, type Lengths } from "./corridor.ts";
import { type Move, movesOf } from "./moves.ts";
import { pinAnswers, pinPoints } from "./pins.ts";
import { dirsOfRoute, distanceDas } from "./places.ts";
import { restsOf } from "./rests.ts";

type Found = { readonly code: string; readonly costPoints: number; readonly lesson: string };

/** Points that the directness line would gain if so much of the way had not been made. */
function costOf(corridor: Corridor, lengths: Lengths, weight: number, wastedDas: number): number {
  const saved = Math.min(wastedDas, Math.round(excessDas(corridor, lengths)));
  const outside = Math.min(saved, lengths.outsideDas);
  const better = { insideDas: lengths.insideDas - 2 * (saved - outside), outsideDas: lengths.outsideDas - outside };
  return directnessPoints(corridor, better, weight) - directnessPoints(corridor, lengths, weight);
}

const turned = ({ gear }: Move) => gear.path === "halfTurn" || gear.path === "newtonian";
const mirror = ({ gear }: Move) => gear.path === "mirrorDiagonal";
const total = (moves: readonly Move[]) => moves.reduce((sum, { lengthDas }) => sum + lengthDas, 0);
/** A wrong move is made twice: out, and back. */
const outAndBack = (moves: readonly Move[]) => 2 * total(moves);

/** Codes that moves can show: which moves count, how many make the habit, where it is trained. */
const BY_MOVES: readonly {
  code: string;
  lesson: string;
  least: number;
  is: (move: Move, fieldDas: number) => boolean;
}[] = [
  {
    code: "INV-KEEP",
    lesson: "2-02",
    least: 2,
    is: (move, field) => turned(move) && move.fit === "reversed" && 2 * move.lengthDas >= field,
  },
  { code: "INV-HALF", lesson: "2-02", least: 2, is: (move) => turned(move) && move.fit === "mirrored" },
  {
    code: "MIR-ROT",
    lesson: "2-03",
    least: 2,
    is: (move) => mirror(move) && (move.fit === "mirrored" || move.fit === "reversed"),
  },
  {
    code: "PSH-LEAP",
    lesson: "2-05",
    least: 2,
    is: (move, field) => move.fit === "right" && (move.lengthDas - move.legDas) * 100 > field * 35,
  },
  { code: "STP-LONG", lesson: "3-06", least: 2, is: (move, field) => move.lengthDas * 10 >= field * 9 },
];

function fromMoves(corridor: Corridor, lengths: Lengths, weight: number, moves: readonly Move[]): Found[] {
  return BY_MOVES.flatMap(({ code, lesson, least, is }) => {
    const hits = moves.filter((move) => is(move, corridor.fieldDas));
    if (hits.length < least) return [];
    const beyond = hits.reduce((sum, { lengthDas, legDas }) => sum + 2 * Math.max(0, lengthDas - legDas), 0);
    const wastedDas = code === "PSH-LEAP" || code === "STP-LONG" ? beyond : outAndBack(hits);
    return [{ code, lesson, costPoints: costOf(corridor, lengths, weight, wastedDas) }];
  });
}

/** So long a rest is a look, not a halt; so near is centred: permille of the field. */
const LOOK_MS = 4000;
const CENTRED_PERMILLE = 150;

/** Moves that ended with a long look at a star that only resembles a mark: each was made out, and back. */
function fromTwins(record: AttemptRecord, corridor: Corridor, lengths: Lengths, moves: readonly Move[]): Found[] {
  const { context, ways, spec } = record.compiled;
  if (!context || context.lookAlikes.length === 0) return [];
  const twins = context.lookAlikes.map((at) =>
    dirFromMas({ raMas: context.stars[3 * at]!, decMas: context.stars[3 * at + 1]! }),
  );
  const marks = ways.flatMap(dirsOfRoute);
  const centred = (place: Dir) => (dir: Dir) => distanceDas(place, dir) * 1000 <= corridor.fieldDas * CENTRED_PERMILLE;
  const looks = restsOf(record).filter(({ fromMs, toMs }) => toMs - fromMs >= LOOK_MS);
  const hits = moves.filter(
    ({ to, toMs }) =>
      looks.some(({ fromMs }) => fromMs === toMs) && twins.some(centred(to)) && !marks.some(centred(to)),
  );
  const costPoints = costOf(corridor, lengths, spec.weights.directness, outAndBack(hits));
  return hits.length > 0 ? [{ code: "FIG-TWIN", lesson: "3-05", costPoints }] : [];
}

/** What the lines of the score show by themselves, where no habit of the hand fired. */
function fromLines(record: AttemptRecord, dirs: readonly Dir[], corridor: Corridor, lengths: Lengths): Found[] {
  const { weights } = record.compiled.spec;
  const prices = pricesOf(record, dirs, corridor, lengths);
  const paid = (rule: string) => prices.reduce((sum, price) => sum + (price.rule === rule ? price.points : 0), 0);
  const answers = pinAnswers(record, dirs);
  const share = Math.floor(weights.pins / Math.max(1, answers.length));
  const pins = answers.reduce((sum, answer) => sum + share - pinPoints(answer, corridor.fieldDas, share), 0);
  const spiral = lengths.outsideDas > 6 * corridor.fieldDas;
  const wandering = costOf(corridor, lengths, weights.directness, lengths.outsideDas);
  return [
    { code: "LST-CLAIM", lesson: "4-01", costPoints: paid("wrongClaim") },
    { code: spiral ? "LST-SPIRAL" : "OFF-WAY", lesson: "3-09", costPoints: wandering },
    {
      code: "TO-AND-FRO",
      lesson: "3-06",
      costPoints: costOf(corridor, lengths, weights.directness, excessDas(corridor, lengths)) - wandering,
    },
    { code: "PIN-OFF", lesson: "3-05", costPoints: pins },
    { code: "HINTS", lesson: "3-01", costPoints: paid("hint") + paid("aid") },
    { code: "FIRST-SHORT", lesson: "3-02", costPoints: 0 },
  ];
}

/** The dearest habit of an attempt; null where nothing was lost, or the tube never left the anchor. */
export function costliestHabit(
  record: AttemptRecord,
  dirs: readonly Dir[],
  corridor: Corridor,
  lengths: Lengths,
): Report["habit"] {
  if (dirs.length === 0 || dirs.every((dir) => distanceDas(dir, dirs[0]!) === 0)) return null;
  const moves = movesOf(record, dirs);
  const weight = record.compiled.spec.weights.directness;
  const found = [
    ...fromMoves(corridor, lengths, weight, moves),
    ...fromTwins(record, corridor, lengths, moves),
    ...fromLines(record, dirs, corridor, lengths),
  ];
  const dearest = found.reduce((best, one) => (one.costPoints > best.costPoints ? one : best));
  return dearest.costPoints > 0 ? dearest : null;
}

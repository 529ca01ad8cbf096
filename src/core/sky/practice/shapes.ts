/** Every clear shape that neighbouring bright stars make, with how well it shows. */
import { type Neighbours, type Spot, tenthsDeg, turnDeg } from "./gabriel.ts";

const SHAPE_KINDS = ["line", "hook", "cup", "zigzag", "triangle", "kite", "box", "ring", "fork", "cross"] as const;
export type ShapeKind = (typeof SHAPE_KINDS)[number];
/** Spots by their place in the list; each line joins two of `spots`. The better it shows the higher its score. */
export type Shape = {
  readonly kind: ShapeKind;
  readonly spots: readonly number[];
  readonly lines: readonly (readonly [number, number])[];
  readonly score: number;
};

const LONGEST_PATH = 6;
/** Degrees by which a way may turn and still go straight on. */
const STRAIGHT = 22;
/** What each kind is worth beside its light: closed and crossed ones catch the eye, a line is soon seen in anything. */
const WORTH: Readonly<Record<ShapeKind, number>> = {
  line: 300,
  hook: 200,
  cup: 800,
  zigzag: 100,
  triangle: 1300,
  kite: 1200,
  box: 1100,
  ring: 1200,
  fork: 200,
  cross: 1500,
};
const FAINT_MILLIMAG = 5000;
const STROKE_COST = 350;

/** All shapes of a graph, in an order that is the same in every engine. */
export function shapesOf(spots: readonly Spot[], graph: Neighbours): Shape[] {
  const found: Shape[] = [];
  const turn = turnsOf(spots);
  const length = lengthsOf(spots, graph);
  const add = (kind: ShapeKind, lines: readonly (readonly [number, number])[]) => {
    const own = [...new Set(lines.flat())];
    found.push({ kind, spots: own, lines, score: WORTH[kind] + scoreOf(spots, own, lines.map(length)) });
  };
  for (let start = 0; start < spots.length; start++) {
    walk(turn, graph, [start], [], add);
    addStar(turn, graph, start, add);
  }
  return found;
}

/** The turn at the second of three places of the list; each is worked out once. */
type Turn = (a: number, b: number, c: number) => number;

function turnsOf(spots: readonly Spot[]): Turn {
  const known = new Map<number, number>();
  return (a, b, c) => {
    const key = (a * spots.length + b) * spots.length + c;
    const there = known.get(key);
    if (there !== undefined) return there;
    const turn = turnDeg(spots[a]!.dir, spots[b]!.dir, spots[c]!.dir);
    known.set(key, turn);
    return turn;
  };
}

type Add = (kind: ShapeKind, lines: readonly (readonly [number, number])[]) => void;

/** Lengths of the lines of a graph, tenths of a degree. */
function lengthsOf(spots: readonly Spot[], graph: Neighbours): (line: readonly [number, number]) => number {
  const known = graph.map((near, a) => near.map((b) => tenthsDeg(spots[a]!.dir, spots[b]!.dir)));
  return ([a, b]) => known[a]![graph[a]!.indexOf(b)]!;
}

function scoreOf(spots: readonly Spot[], own: readonly number[], lengths: readonly number[]): number {
  const light = own.reduce((sum, i) => sum + Math.max(0, FAINT_MILLIMAG - spots[i]!.milliMag), 0);
  const uneven = Math.max(...lengths) - Math.min(...lengths);
  const length = lengths.reduce((sum, each) => sum + each, 0);
  return light - STROKE_COST * lengths.length - 3 * length - 12 * uneven;
}

const linesOf = (path: readonly number[]) => path.slice(1).map((to, i) => [path[i]!, to] as const);

/** Goes on from the end of a path as long as it may become a shape, and adds each shape it makes on the way. */
function walk(turn: Turn, graph: Neighbours, path: readonly number[], turns: readonly number[], add: Add) {
  const end = path[path.length - 1]!;
  const before = path[path.length - 2];
  for (const next of graph[end]!) {
    if (next === path[0] && path.length >= 3) addCycle(turn, graph, path, add);
    if (path.includes(next)) continue;
    const bends = before === undefined ? [] : [...turns, turn(before, end, next)];
    const longer = [...path, next];
    const kind = kindOf(longer, bends);
    if (kind) add(kind, linesOf(longer));
    if (longer.length < LONGEST_PATH && mayGrow(bends)) walk(turn, graph, longer, bends, add);
  }
}

/** Straight so far, or all to one side, or from side to side. */
function mayGrow(turns: readonly number[]): boolean {
  const straight = turns.every((turn) => Math.abs(turn) <= STRAIGHT);
  return straight || isRound(turns, 150) || isJagged(turns);
}

const isRound = (turns: readonly number[], most: number) =>
  turns.every((turn) => turn > 0 === turns[0]! > 0 && Math.abs(turn) >= STRAIGHT - 2 && Math.abs(turn) <= most);
const isJagged = (turns: readonly number[]) =>
  turns.every(
    (turn, i) => Math.abs(turn) >= 50 && Math.abs(turn) <= 120 && turn > 0 === (turns[0]! > 0 === (i % 2 === 0)),
  );

function kindOf(path: readonly number[], turns: readonly number[]): ShapeKind | undefined {
  if (path.length < 3) return undefined;
  const last = Math.abs(turns[turns.length - 1]!);
  const shaft = turns.slice(0, -1).every((turn) => Math.abs(turn) <= STRAIGHT);
  if (path.length >= 4 && shaft && last >= 50 && last <= 120) return "hook";
  // The others are the same from either end: they are taken from one.
  if (path[0]! > path[path.length - 1]!) return undefined;
  if (shaft && last <= STRAIGHT && path.length <= 5) return "line";
  const whole = turns.reduce((sum, turn) => sum + Math.abs(turn), 0);
  if (path.length >= 4 && isRound(turns, 80) && whole >= 70 && whole <= 220) return "cup";
  return path.length >= 4 && isJagged(turns) ? "zigzag" : undefined;
}

/** A closed way is taken from its first spot, and one way round. */
function addCycle(turn: Turn, graph: Neighbours, path: readonly number[], add: Add): void {
  const first = path[0]!;
  if (Math.min(...path) !== first || path[1]! > path[path.length - 1]!) return;
  const lines = [...linesOf(path), [path[path.length - 1]!, first] as const];
  if (path.length > 3) {
    add(path.length === 4 ? "box" : "ring", lines);
    return;
  }
  add("triangle", lines);
  path.forEach((corner, i) => {
    const [left, right] = [path[(i + 1) % 3]!, path[(i + 2) % 3]!];
    for (const tail of graph[corner]!) {
      // The tail goes on from the corner as the line that halves it does.
      const outward = [left, right].map((side) => turn(side, corner, tail));
      const away = outward[0]! > 0 !== outward[1]! > 0 && outward.every((each) => Math.abs(each) <= 70);
      if (!path.includes(tail) && away) add("kite", [...lines, [corner, tail]]);
    }
  });
}

/** Arms about one spot: three far from one another, or four at about right angles. */
function addStar(turn: Turn, graph: Neighbours, middle: number, add: Add): void {
  const arms = graph[middle]!;
  const wide = (a: number, b: number) => 180 - Math.abs(turn(a, middle, b));
  for (let i = 0; i < arms.length; i++)
    for (let j = i + 1; j < arms.length; j++)
      for (let k = j + 1; k < arms.length; k++) {
        const [a, b, c] = [arms[i]!, arms[j]!, arms[k]!];
        const angles = [wide(a, b), wide(b, c), wide(a, c)];
        if (Math.min(...angles) >= 75)
          add("fork", [
            [middle, a],
            [middle, b],
            [middle, c],
          ]);
        for (const d of arms.slice(k + 1))
          if (isCross([...angles, wide(a, d), wide(b, d), wide(c, d)]))
            add("cross", [
              [middle, a],
              [middle, b],
              [middle, c],
              [middle, d],
            ]);
      }
}

/** Whether the six angles between four arms are four of about a quarter turn and two of about a half. */
function isCross(angles: readonly number[]): boolean {
  const sorted = [...angles].sort((x, y) => x - y);
  return sorted[0]! >= 62 && sorted[3]! <= 118 && sorted[4]! >= 145;
}

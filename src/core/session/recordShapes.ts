/** What a record must look like: bounds for every number, and the whole union of events. */
import type {
  AttemptEvent,
  CompiledAttempt,
  EventKind,
  GearLimit,
  HopSpec,
  MasDir,
  Route,
  TargetSpec,
  Weights,
} from "#core/seams/index.ts";
import { bool, type Check, int, list, maybe, object, oneOf, orNull, pair, refuse, text } from "./shape.ts";

const MOST_MS = 4_000_000_000;
const CIRCLE_DAS = 12_960_000;
const INT32 = 2_147_483_647;
const ms = int(0, MOST_MS);
const das = int(-CIRCLE_DAS, CIRCLE_DAS);
const length = int(0, INT32);
const whole = int(0, 1_000_000);
const magnitude = int(-5000, 30_000);
const utcMs = int(-8_640_000_000_000_000, 8_640_000_000_000_000);
const id = text(80);
const masDir = object<MasDir>({ raMas: int(0, 1_295_999_999), decMas: int(-324_000_000, 324_000_000) });
const target = object<TargetSpec>({ dir: masDir, sizeDas: length, objectId: id });
/** From anchor to target at least. */
const route = object<Route>({ marks: list(object({ dir: masDir, name: text(120) }), 200, 2), lengthDas: length });
/** True fields as instruments have them, 0.05 to 120 degrees: a score walks a trail in parts of the field. */
const field = int(1800, 4_320_000);
const term = oneOf(["free", "priced", "off"]);
const percent = int(0, 100);
const weightsShape = object<Weights>({ directness: percent, pins: percent, care: percent });
const weights: Check<Weights> = (value, where) => {
  const each = weightsShape(value, where);
  if (each.directness + each.pins + each.care !== 100) refuse(where, "do not make 100 together");
  return each;
};
const limit = object<GearLimit>({
  gear: id,
  fieldDas: field,
  avertedMilliMag: magnitude,
  directMilliMag: magnitude,
});

const spec = object<HopSpec>({
  sky: object({ kind: oneOf(["catalogue", "practice", "imported"]), seed: maybe(text(200)), skyVersion: whole }),
  anchor: masDir,
  targets: list(target, 50, 1),
  neighbours: list(target, 2000),
  ways: list(route, 50, 1),
  hoppingGear: id,
  claimGear: id,
  gear: list(id, 50),
  mount: oneOf(["altazimuth", "equatorial"]),
  stance: oneOf(["upright", "withEyepiece"]),
  siteMas: pair(int(-1_296_000_000, 1_296_000_000)),
  startMs: utcMs,
  drift: bool,
  weights,
  aids: object({
    ring: term,
    compass: term,
    limits: term,
    asInInstrument: term,
    carry: term,
    trail: term,
    hints: term,
  }),
  level: oneOf(["G", "C", "P", "M"]),
  finderOffsetDas: pair(das),
});

const starTriples: Check<Int32Array> = (value, where) =>
  Int32Array.from(list(int(-INT32, INT32), 60_000)(value, where));

/** A compiled attempt, as JSON.parse gave it. */
export const compiledShape = object<CompiledAttempt>({
  versions: object({ record: whole, score: whole, sky: whole, generator: whole, seeing: whole, solver: text(80) }),
  spec,
  ways: list(route, 50, 1),
  parDas: length,
  hoppingFieldDas: field,
  limits: list(limit, 50),
  zenith: masDir,
  gainPermille: pair(int(100, 10_000)),
  knock: maybe(object({ atMs: ms, byDas: pair(das) })),
  rivals: list(target, 2000),
  targetBands: list(oneOf(["seen", "edge", "not"]), 50),
  context: orNull(object({ stars: starTriples, lookAlikes: list(whole, 20_000) })),
});

type BodyOf<E, K> = E extends { readonly kind: infer Kinds }
  ? K extends Kinds
    ? Omit<E, "tMs" | "kind">
    : never
  : never;
type Body<K extends EventKind> = BodyOf<AttemptEvent, K>;
type Bodies = { readonly [K in EventKind]: Check<Body<K>> };

const nothing = object({});
const onOff = object({ on: bool });
const ofGear = object({ gear: id });
const at = object({ at: masDir });
const axes = object({ axis: oneOf([1, 2, "both"]) });

const bodies: Bodies = {
  use: ofGear,
  eyepiece: ofGear,
  look: at,
  push: axes,
  nudge: axes,
  swing: axes,
  axisLock: object({ axis: oneOf([1, 2]), locked: bool }),
  track: onOff,
  pause: onOff,
  timeSet: object({ toMs: utcMs }),
  align: object({ byDas: pair(das) }),
  confirm: nothing,
  restart: nothing,
  knock: nothing,
  giveUp: nothing,
  end: nothing,
  chartView: object({
    turnMilliRad: int(-1_000_000, 1_000_000),
    flipped: bool,
    scalePermille: int(1, 1_000_000),
    centre: masDir,
  }),
  pencil: at,
  pin: at,
  hint: object({ leg: whole, grade: oneOf([1, 2, 3]) }),
  aid: object({
    aid: oneOf(["ring", "compass", "limits", "asInInstrument", "carry", "trail", "hints"]),
    on: bool,
  }),
  avert: onOff,
  torch: onOff,
  stare: onOff,
  focus: object({ value: int(-1_000_000, 1_000_000) }),
  glimpse: at,
  claim: object<Body<"claim">>({
    says: oneOf(["here", "notSeen"]),
    confidence: maybe(oneOf([50, 60, 70, 80, 90, 100])),
    nearest: maybe(id),
  }),
  answer: object({ item: whole, value: text(200) }),
  away: object({ hidden: bool }),
};

/** One event. A kind that this version does not know makes the whole record unreadable, never wrong. */
export const eventShape: Check<AttemptEvent> = (value, where) => {
  const { kind, tMs } = object({ kind: text(20), tMs: ms })(value, where);
  if (!Object.hasOwn(bodies, kind)) refuse(where, `is of the unknown kind "${kind}"`);
  const body = bodies[kind as EventKind](value, where);
  return { kind, tMs, ...body } as AttemptEvent;
};

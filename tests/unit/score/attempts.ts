/** Invented attempts in fields: the anchor at (0, 0), x east and y north, one unit a hopping field. For tests alone. */
import { DAS_RAD, dirFromMas, masFromDir, offsetDir } from "#core/celestial/vector.ts";
import { lengthOfMarksDas } from "#core/score/places.ts";
import { SCORE_VERSION } from "#core/score/rules.ts";
import type {
  AttemptEvent,
  AttemptRecord,
  CompiledAttempt,
  HopSpec,
  MasDir,
  Trail,
  Weights,
} from "#core/seams/index.ts";
import { RECORD_VERSION } from "#core/session/record.ts";
import type { SessionEvent } from "#core/session/session.ts";

export type Place = readonly [x: number, y: number];
export const FIELD_DAS = 190_800;
const ANCHOR: MasDir = { raMas: 360_000_000, decMas: 54_000_000 };
const anchorDir = dirFromMas(ANCHOR);

/** The direction of a place in fields, by distance and position angle from the anchor. */
export function mas([x, y]: Place): MasDir {
  const distanceRad = Math.hypot(x, y) * FIELD_DAS * DAS_RAD;
  return masFromDir(offsetDir(anchorDir, Math.atan2(x, y), distanceRad));
}

const NO_AIDS = {
  ring: "off",
  compass: "off",
  limits: "off",
  asInInstrument: "off",
  carry: "off",
  trail: "off",
  hints: "priced",
} as const;
const STANDARD: Weights = { directness: 50, pins: 30, care: 20 };

/** A compiled hop along marks given in fields; the first is the anchor, the last the target. */
export function compiledHop(marks: readonly Place[], change: Partial<HopSpec> = {}): CompiledAttempt {
  const dirs = marks.map(mas);
  const lengthDas = lengthOfMarksDas(dirs);
  const way = { marks: dirs.map((dir, i) => ({ dir, name: `mark ${i}` })), lengthDas };
  const limit = (gear: string, fieldDas: number) => ({ gear, fieldDas, avertedMilliMag: 9800, directMilliMag: 8300 });
  return {
    versions: { record: RECORD_VERSION, score: SCORE_VERSION, sky: 1, generator: 0, seeing: 1, solver: "named-1" },
    spec: {
      sky: { kind: "catalogue", skyVersion: 1 },
      anchor: ANCHOR,
      targets: [{ dir: dirs.at(-1)!, sizeDas: 4800, objectId: "target" }],
      neighbours: [],
      ways: [way],
      hoppingGear: "finder-9x50",
      claimGear: "newton200-48x",
      gear: ["eye", "sight", "finder-9x50", "newton200-48x"],
      mount: "altazimuth",
      stance: "upright",
      siteMas: [180_000_000, 0],
      startMs: Date.UTC(2027, 0, 7, 22),
      drift: false,
      weights: STANDARD,
      aids: NO_AIDS,
      level: "P",
      finderOffsetDas: [0, 0],
      ...change,
    },
    ways: [way],
    parDas: lengthDas,
    hoppingFieldDas: FIELD_DAS,
    limits: [
      limit("eye", 3_240_000),
      limit("sight", 1_800_000),
      limit("finder-9x50", FIELD_DAS),
      limit("newton200-48x", 39_600),
    ],
    zenith: { raMas: 360_000_000, decMas: 180_000_000 },
    gainPermille: [1000, 1000],
    rivals: [],
    targetBands: ["seen"],
    context: null,
  };
}

type Sample = { tMs: number; place: Place; byHand: 0 | 1; mark: 0 | 1 | 2 };
/** Writes an attempt step by step, at 5 samples a second, as a session would. */
export class Writer {
  tMs = 0;
  place: Place = [0, 0];
  readonly samples: Sample[] = [];
  readonly events: AttemptEvent[] = [];
  private readonly compiled: CompiledAttempt;

  constructor(compiled: CompiledAttempt) {
    this.compiled = compiled;
    this.event({ kind: "use", gear: "finder-9x50" }).event({ kind: "confirm" });
    this.samples.push({ tMs: 0, place: [0, 0], byHand: 0, mark: 1 });
  }
  event(event: SessionEvent): this {
    this.events.push({ ...event, tMs: this.tMs } as AttemptEvent);
    return this;
  }
  /** Moves on a straight line and rests for two seconds. */
  to(place: Place, { fieldsPerS = 0.5, rest = true, byHand = 1 as 0 | 1 } = {}): this {
    const from = this.place;
    const fields = Math.hypot(place[0] - from[0], place[1] - from[1]);
    const count = Math.max(1, Math.ceil((fields / fieldsPerS) * 5));
    for (let i = 1; i <= count; i++) {
      this.tMs += 200;
      const at: Place = [from[0] + ((place[0] - from[0]) * i) / count, from[1] + ((place[1] - from[1]) * i) / count];
      this.samples.push({ tMs: this.tMs, place: at, byHand, mark: i === count && rest ? 1 : 0 });
    }
    this.place = place;
    if (rest) this.tMs += 2000;
    return this;
  }
  /** Set back to the anchor, free of length. */
  restart(): this {
    this.event({ kind: "restart" });
    this.samples.push({ tMs: this.tMs, place: [0, 0], byHand: 0, mark: 2 });
    this.place = [0, 0];
    this.tMs += 1000;
    return this;
  }
  pin(at: Place = this.place): this {
    return this.event({ kind: "pin", at: mas(at) });
  }
  claim(): this {
    if (this.compiled.spec.claimGear !== this.compiled.spec.hoppingGear)
      this.event({ kind: "use", gear: this.compiled.spec.claimGear });
    this.tMs += 1000;
    return this.event({ kind: "claim", says: "here" });
  }
  record(): AttemptRecord {
    const round = (valueMas: number) => Math.round(valueMas / 10_000) * 100;
    const dirs = this.samples.map(({ place }) => mas(place));
    const trail: Trail = {
      tMs: Int32Array.from(this.samples, ({ tMs }) => tMs),
      raDas: Int32Array.from(dirs, ({ raMas }) => round(raMas)),
      decDas: Int32Array.from(dirs, ({ decMas }) => round(decMas)),
      byHand: Uint8Array.from(this.samples, ({ byHand }) => byHand),
      mark: Uint8Array.from(this.samples, ({ mark }) => mark),
    };
    return { compiled: this.compiled, events: this.events, trail, lengthBeforeDas: 0, checksum: 0 };
  }
}

/** A hop to try sessions on, and a hand that pushes a tube as a learner would. */
import { DEG, dirFromMas, masFromDir, offsetDir, separationDas, separationRad } from "#core/celestial/vector.ts";
import { fieldDas, gearById } from "#core/optics/gear.ts";
import { axesFromDir, wrapAxis1 } from "#core/optics/mount.ts";
import type { CompiledAttempt, Dir, HopSpec, MasDir } from "#core/seams/index.ts";
import {
  type Outcome,
  POSE,
  pointing,
  type Session,
  type SessionEvent,
  stepEvent,
  tick,
} from "#core/session/session.ts";
import { setTubeFor } from "#core/session/tube.ts";

/** 1h09m44s +35 37', high in the east from 50 N on the evening of the hop. */
export const ANCHOR: MasDir = { raMas: 62_760_000, decMas: 128_220_000 };
export const ANCHOR_DIR = dirFromMas(ANCHOR);
/** A place so far from the anchor, at a position angle (north through east). */
export const away = (deg: number, angleDeg: number): MasDir =>
  masFromDir(offsetDir(ANCHOR_DIR, angleDeg * DEG, deg * DEG));
export const TARGET = away(7, 300);
const FREE = "free" as const;

export function hop(spec: Partial<HopSpec> = {}, rest: Partial<CompiledAttempt> = {}): CompiledAttempt {
  const targets = spec.targets ?? [{ dir: TARGET, sizeDas: 6000, objectId: "glow" }];
  const way = {
    marks: [
      { dir: ANCHOR, name: "anchor" },
      { dir: targets[0]!.dir, name: "target" },
    ],
    lengthDas: separationDas(ANCHOR, targets[0]!.dir),
  };
  const gear = spec.gear ?? ["eye", "sight", "finder-9x50", "newton200-48x"];
  return {
    versions: { record: 1, score: 1, sky: 1, generator: 1, seeing: 1, solver: "none" },
    spec: {
      sky: { kind: "practice", seed: "sallow", skyVersion: 1 },
      anchor: ANCHOR,
      targets,
      neighbours: [],
      ways: [way],
      hoppingGear: "finder-9x50",
      claimGear: "newton200-48x",
      gear,
      mount: "altazimuth",
      stance: "upright",
      siteMas: [180_000_000, 0],
      startMs: Date.UTC(2027, 9, 29, 20),
      drift: false,
      weights: { directness: 50, pins: 30, care: 20 },
      aids: { ring: FREE, compass: FREE, limits: FREE, asInInstrument: FREE, carry: "off", trail: FREE, hints: FREE },
      level: "P",
      finderOffsetDas: [0, 0],
      ...spec,
    },
    ways: [way],
    parDas: way.lengthDas,
    hoppingFieldDas: fieldDas(gearById(spec.hoppingGear ?? "finder-9x50")),
    limits: gear.map((id) => ({
      gear: id,
      fieldDas: fieldDas(gearById(id)),
      avertedMilliMag: 9800,
      directMilliMag: 8300,
    })),
    zenith: away(30, 90),
    gainPermille: [1000, 1000],
    rivals: [],
    targetBands: targets.map(() => "seen" as const),
    context: null,
    ...rest,
  };
}

/** Everything that a session said, in order. */
export class Hearing {
  readonly all: Outcome[] = [];
  kinds(): string[] {
    return this.all.map(({ kind }) => kind);
  }
}

export function wait(session: Session, ms: number, heard = new Hearing()): Hearing {
  for (let t = 0; t < ms; t += 20) heard.all.push(...tick(session));
  return heard;
}

/** Pushes the pointing to a place at a steady speed, corrected at each tick, then lets go until the tube rests. */
export function pushTo(session: Session, to: MasDir | Dir, degPerS = 2, heard = new Hearing()): Hearing {
  const dir = "raMas" in to ? dirFromMas(to) : to;
  const { compiled, pose, clock } = session;
  const [gain1, gain2] = compiled.gainPermille;
  for (let i = 0; i < 20_000; i++) {
    const here = axesFromDir(clock.mount, clock.frame, pointing(session));
    const there = axesFromDir(clock.mount, clock.frame, dir);
    const d1 = wrapAxis1("equatorial", there.axis1Rad - here.axis1Rad) - pose[POSE.pending1]!;
    const d2 = there.axis2Rad - here.axis2Rad - pose[POSE.pending2]!;
    const far = Math.hypot(d1 * Math.cos(here.axis2Rad), d2);
    if (far < 4e-6) break;
    const share = Math.min(1, (degPerS * 0.02 * DEG) / far);
    heard.all.push(...tick(session, { axis1: (d1 * share * 1000) / gain1, axis2: (d2 * share * 1000) / gain2 }));
  }
  return wait(session, 1200, heard);
}

export const say = (session: Session, event: SessionEvent, heard = new Hearing()): Hearing => {
  heard.all.push(...stepEvent(session, event));
  return heard;
};

/** Takes an instrument and sets it on the anchor, then confirms. */
export function onAnchor(session: Session, gear = "finder-9x50", anchor = ANCHOR): Session {
  say(session, { kind: "use", gear });
  setTubeFor(session, gear, dirFromMas(anchor));
  const heard = say(session, { kind: "confirm" });
  if (!heard.kinds().includes("anchorConfirmed")) throw new Error("the anchor was not in the middle");
  return session;
}

export const offDeg = (session: Session, from: MasDir) => separationRad(pointing(session), dirFromMas(from)) / DEG;

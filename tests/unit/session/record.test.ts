import { deflateSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { score } from "#core/score/report.ts";
import { InputError } from "#core/seams/errors.ts";
import type { AttemptEvent, AttemptRecord, Trail } from "#core/seams/index.ts";
import { checksumFits, checksumOf, decodeRecord, encodeRecord, record, signed, trailOf } from "#core/session/record.ts";
import { createSession, POSE, type Session } from "#core/session/session.ts";
import { packTrail } from "#core/session/trailCodec.ts";
import { away, hop, offDeg, onAnchor, pushTo, say, TARGET, wait } from "./hands.ts";

/** A whole hop with a detour, a restart, pins, a hint, a wrong claim and a right one. */
function played(compiled = hop(), until = 99): Session {
  const session = createSession(compiled);
  const steps: (() => unknown)[] = [
    () => say(session, { kind: "use", gear: "sight" }),
    () => pushTo(session, away(0.1, 0), 8),
    () => say(session, { kind: "confirm" }),
    () => say(session, { kind: "use", gear: "finder-9x50" }),
    () => pushTo(session, away(3, 250), 1),
    () => say(session, { kind: "pin", at: away(3.1, 250) }),
    () => say(session, { kind: "chartView", turnMilliRad: -1571, flipped: true, scalePermille: 1200, centre: TARGET }),
    () => say(session, { kind: "restart" }),
    () => pushTo(session, away(4, 300), 1),
    () => say(session, { kind: "hint", leg: 0, grade: 1 }),
    () => pushTo(session, TARGET, 0.8),
    () => say(session, { kind: "use", gear: "newton200-48x" }),
    () => say(session, { kind: "pin", at: TARGET }),
    () => pushTo(session, away(7.4, 300), 0.2),
    () => say(session, { kind: "claim", says: "here", confidence: 60, nearest: "star" }),
    () => pushTo(session, TARGET, 0.2),
    () => say(session, { kind: "claim", says: "here" }),
  ];
  for (const step of steps.slice(0, until)) step();
  return session;
}

const columns = (trail: Trail) => [trail.tMs, trail.raDas, trail.decDas, trail.byHand, trail.mark].map((c) => [...c]);

describe("a replay", () => {
  it("equals its run: the same trail, the same whole numbers, the same score", () => {
    const run = record(played());
    const replay = decodeRecord(encodeRecord(run));
    expect(columns(trailOf(replay))).toEqual(columns(trailOf(run)));
    expect(replay.events).toEqual(run.events);
    expect(replay.compiled).toEqual(run.compiled);
    expect(replay.checksum).toBe(run.checksum);
    expect(checksumFits(replay)).toBe(true);
    expect(score(replay)).toEqual(score(run));
    expect(score(run).word).toBe("found");
    expect(encodeRecord(replay)).toBe(encodeRecord(run));
  });

  it("comes out of the same hand again", () => {
    expect(encodeRecord(record(played()))).toBe(encodeRecord(record(played())));
  });

  it("keeps the stars about the way, and a knock", () => {
    const context = { stars: Int32Array.of(1, -2, 3), lookAlikes: [0] };
    const run = record(createSession(hop({}, { context, knock: { atMs: 100, byDas: [1, -2] } })));
    const replay = decodeRecord(encodeRecord(run));
    expect(replay.compiled).toEqual(run.compiled);
    expect(checksumFits(replay)).toBe(true);
  });
});

describe("an attempt taken up again", () => {
  it("goes on where it stopped, at every place of the hop, on a still and a turning sky", () => {
    for (const drift of [false, true]) {
      for (let until = 3; until <= 16; until++) {
        const left = played(hop({ drift, finderOffsetDas: [7200, 0] }), until);
        const stored = decodeRecord(encodeRecord(record(left)));
        const again = createSession(stored.compiled, { resume: stored });
        expect(columns(record(again).trail)).toEqual(columns(stored.trail));
        expect({ ...again.state, rested: false }).toEqual({
          ...left.state,
          rested: false,
          lastPinAskedAt: null,
        });
        const sinceLastWord = left.pose[POSE.tMs]! - again.pose[POSE.tMs]!;
        expect(left.pose[POSE.skyMs]! - again.pose[POSE.skyMs]!).toBe(drift ? sinceLastWord : 0);
        const last = stored.trail.tMs.length - 1;
        const place = { raMas: stored.trail.raDas[last]! * 100, decMas: stored.trail.decDas[last]! * 100 };
        expect(offDeg(again, place) * 3600).toBeLessThan(0.01);
        expect(checksumFits(record(again))).toBe(true);
      }
    }
  });
});

describe("size", () => {
  /** Five minutes of pushes with looks at the chart between them, deflated, without the compiled attempt. */
  function fiveMinutes(degPerS: number, lookMs: number): { samples: number; bytes: number } {
    const session = onAnchor(createSession(hop()));
    for (let i = 0; session.pose[POSE.tMs]! < 300_000; i++) {
      pushTo(session, away(4 + 3 * Math.sin(i), 300 + 40 * Math.cos(2.3 * i)), degPerS);
      say(session, { kind: "chartView", turnMilliRad: 100 * i, flipped: false, scalePermille: 1000, centre: TARGET });
      wait(session, lookMs);
    }
    const { trail, events } = record(session);
    const bytes = deflateSync(JSON.stringify({ trail: packTrail(trail), events })).length;
    return { samples: trail.tMs.length, bytes };
  }

  it("of five minutes is about a kilobyte deflated", () => {
    const { samples, bytes } = fiveMinutes(1.5, 8000);
    expect(samples).toBeGreaterThan(200);
    expect(bytes).toBeLessThan(1400);
  });

  it("is at most two kilobytes where the tube hardly ever rests", () => {
    const { samples, bytes } = fiveMinutes(0.6, 1000);
    expect(samples).toBeGreaterThan(900);
    expect(bytes).toBeLessThan(2048);
  });
});

describe("decodeRecord", () => {
  const good = () => JSON.parse(encodeRecord(record(played()))) as Record<string, unknown>;
  const refused = (change: (json: Record<string, unknown>) => void) => {
    const json = good();
    change(json);
    return () => decodeRecord(JSON.stringify(json));
  };

  it("refuses what it does not know, and says where", () => {
    expect(() => decodeRecord("")).toThrow(InputError);
    expect(() => decodeRecord("[".repeat(200_000))).toThrow(InputError);
    expect(() => decodeRecord(" ".repeat(5_000_000))).toThrow("longer");
    expect(() => decodeRecord("null")).toThrow(InputError);
    expect(refused((j) => Object.assign(j, { version: 2 }))).toThrow("version");
    expect(refused((j) => (j.events as unknown[]).push({ kind: "teleport", tMs: 4e6 }))).toThrow(
      'unknown kind "teleport"',
    );
    expect(refused((j) => (j.events as unknown[]).push({ kind: "toString", tMs: 4e6 }))).toThrow("unknown kind");
    expect(refused((j) => (j.events as { tMs: number }[])[2]!.tMs--)).toThrow("events[2]");
    expect(refused((j) => (j.events as unknown[]).push({ kind: "hint", tMs: 4e6, leg: 0, grade: 4 }))).toThrow("grade");
    expect(refused((j) => delete (j.compiled as Record<string, unknown>).parDas)).toThrow("compiled.parDas");
    expect(refused((j) => Object.assign(j.compiled as object, { parDas: 1.5 }))).toThrow("compiled.parDas");
    const specOf = (j: Record<string, unknown>) => (j.compiled as { spec: Record<string, unknown> }).spec;
    expect(refused((j) => Object.assign(specOf(j), { targets: [] }))).toThrow("compiled.spec.targets has fewer than 1");
    expect(refused((j) => Object.assign(specOf(j), { weights: { directness: 100, pins: 100, care: 100 } }))).toThrow(
      "compiled.spec.weights do not make 100 together",
    );
    expect(refused((j) => Object.assign(j.compiled as object, { ways: [] }))).toThrow("compiled.ways has fewer than 1");
    expect(refused((j) => Object.assign(j.compiled as object, { hoppingFieldDas: 1 }))).toThrow("hoppingFieldDas");
    expect(refused((j) => (j.trail as { ra: number[] }).ra.pop())).toThrow("unequal");
    expect(refused((j) => (j.trail as { dec: number[] }).dec.fill(30_000))).toThrow("trail.dec");
    expect(refused((j) => (j.trail as { tMs: number[] }).tMs.fill(-1))).toThrow("trail.tMs");
    expect(refused((j) => (j.trail as { hand: number[] }).hand.push(1))).toThrow("trail.hand");
    expect(refused((j) => (j.trail as { marks: number[][] }).marks.push([0, 3]))).toThrow("trail.marks");
  });

  it("leaves out keys that it does not know, also those that reach for the prototype", () => {
    const text = encodeRecord(record(played())).replace('"parDas":', '"__proto__":{"polluted":1},"extra":2,"parDas":');
    const read = decodeRecord(text);
    expect("extra" in read.compiled).toBe(false);
    expect("polluted" in read.compiled).toBe(false);
    expect(checksumFits(read)).toBe(true);
  });

  it("finds damage by the checksum: any changed number shows", () => {
    const run = record(played());
    const shifted: AttemptRecord = { ...run, trail: { ...run.trail, raDas: run.trail.raDas.map((das) => das + 100) } };
    expect(checksumFits(shifted)).toBe(false);
    const events = run.events.slice(0, -1);
    expect(checksumFits({ ...run, events })).toBe(false);
    expect(checksumFits(signed({ ...run, events }))).toBe(true);
    expect(checksumOf({ ...run, lengthBeforeDas: run.lengthBeforeDas + 1 })).not.toBe(run.checksum);
  });

  it("never throws anything but an InputError at random JSON", () => {
    fc.assert(
      fc.property(fc.json(), (json) => {
        expect(() => decodeRecord(json)).toThrow(InputError);
      }),
    );
    const keys = Object.keys(good());
    fc.assert(
      fc.property(fc.constantFrom(...keys), fc.jsonValue(), (key, value) => {
        const json = { ...good(), [key]: value };
        try {
          decodeRecord(JSON.stringify(json));
        } catch (error) {
          expect(error).toBeInstanceOf(InputError);
        }
      }),
      { numRuns: 50 },
    );
  });

  it("takes every kind of event there is", () => {
    const at = TARGET;
    const bodies: readonly Record<string, unknown>[] = [
      { kind: "use", gear: "sight" },
      { kind: "eyepiece", gear: "newton200-48x" },
      { kind: "look", at },
      { kind: "push", axis: 1 },
      { kind: "nudge", axis: 2 },
      { kind: "swing", axis: "both" },
      { kind: "axisLock", axis: 2, locked: true },
      { kind: "track", on: true },
      { kind: "pause", on: false },
      { kind: "timeSet", toMs: -5 },
      { kind: "align", byDas: [1, -1] },
      { kind: "confirm" },
      { kind: "restart" },
      { kind: "knock" },
      { kind: "giveUp" },
      { kind: "end" },
      { kind: "chartView", turnMilliRad: 1, flipped: false, scalePermille: 900, centre: at },
      { kind: "pencil", at },
      { kind: "pin", at },
      { kind: "hint", leg: 0, grade: 3 },
      { kind: "aid", aid: "carry", on: true },
      { kind: "avert", on: true },
      { kind: "torch", on: true },
      { kind: "stare", on: true },
      { kind: "focus", value: -3 },
      { kind: "glimpse", at },
      { kind: "claim", says: "notSeen", confidence: 100, nearest: "x" },
      { kind: "answer", item: 2, value: "yes" },
      { kind: "away", hidden: true },
    ];
    const events = bodies.map((body) => ({ ...body, tMs: 0 }) as unknown as AttemptEvent);
    const run = signed({ ...record(createSession(hop())), events });
    expect(decodeRecord(encodeRecord(run)).events).toEqual(events);
  });
});

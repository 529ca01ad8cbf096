import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DEG, separationRad } from "#core/celestial/vector.ts";
import { GEAR } from "#core/optics/gear.ts";
import type { Dir, MountKind } from "#core/seams/index.ts";
import { checksumFits, decodeRecord, encodeRecord, record } from "#core/session/record.ts";
import {
  altAzOf,
  carryingHand,
  createSession,
  POSE,
  pointing,
  pushingHand,
  type Session,
  type SessionEvent,
  stepEvent,
  tick,
  tubeDir,
  viewOf,
} from "#core/session/session.ts";
import { setTube } from "#core/session/tube.ts";
import { ANCHOR, ANCHOR_DIR, hop, onAnchor, TARGET } from "./hands.ts";

const STEP = 1e-4;
const mounts: readonly MountKind[] = ["altazimuth", "equatorial"];

function sessionWith(gear: string, mount: MountKind): Session {
  const session = createSession(hop({ gear: [gear], mount }), { reducedMotion: true });
  setTube(session, ANCHOR_DIR);
  stepEvent(session, { kind: "look", at: ANCHOR });
  return session;
}

/** Where the star that was in the middle stands in the picture after a push, in steps. */
function starMoves(session: Session, hand: { axis1: number; axis2: number }): [number, number] {
  const star: Dir = pointing(session);
  tick(session, hand);
  const m = viewOf(session, new Float64Array(9));
  const row = (i: number) => m[i]! * star[0] + m[i + 1]! * star[1] + m[i + 2]! * star[2];
  return [row(0) / row(6) / STEP, row(3) / row(6) / STEP];
}

describe("a drag", () => {
  it("carries the stars with the finger in every image, where that aid is on, and always with the naked eye", () => {
    for (const mount of mounts) {
      for (const gear of GEAR.keys()) {
        for (const [x, y] of [
          [1, 0],
          [0, 1],
          [-0.6, 0.8],
        ] as const) {
          const session = sessionWith(gear, mount);
          const drag = { rightRad: x * STEP, upRad: y * STEP };
          const hand = gear === "eye" ? pushingHand(session, drag) : carryingHand(session, drag);
          const [movedX, movedY] = starMoves(session, hand);
          expect(movedX, `${gear} ${mount}`).toBeCloseTo(x, 2);
          expect(movedY, `${gear} ${mount}`).toBeCloseTo(y, 2);
        }
      }
    }
  });

  it("pushes the tube as seen by someone who faces the target, whatever the image does", () => {
    for (const gear of ["sight", "finder-9x50", "finder-9x50-mirror", "newton200-48x"]) {
      const session = sessionWith(gear, "altazimuth");
      const { altRad, azRad } = altAzOf(session);
      tick(session, pushingHand(session, { rightRad: STEP, upRad: 2 * STEP }));
      expect((altAzOf(session).azRad - azRad) / STEP).toBeCloseTo(1, 6);
      expect((altAzOf(session).altRad - altRad) / STEP).toBeCloseTo(2, 6);
    }
  });

  it("in a correct image sends the stars against the finger, in one turned by half along with it", () => {
    const up = { rightRad: 0, upRad: STEP };
    const moves = (gear: string) => {
      const session = sessionWith(gear, "altazimuth");
      return starMoves(session, pushingHand(session, up))[1];
    };
    expect(moves("sight")).toBeCloseTo(-1, 4);
    expect(moves("finder-9x50")).toBeCloseTo(1, 4);
    expect(moves("finder-9x50-mirror")).toBeCloseTo(-1, 4);
  });

  it("turns one knob of an equatorial mount at a time", () => {
    const session = sessionWith("finder-9x50", "equatorial");
    for (const drag of [
      { rightRad: STEP, upRad: 0 },
      { rightRad: 0, upRad: STEP },
      { rightRad: -STEP, upRad: STEP },
    ]) {
      const { axis1, axis2 } = pushingHand(session, drag);
      expect([axis1 === 0, axis2 === 0].filter(Boolean)).toHaveLength(1);
    }
  });
});

describe("whatever a hand does", () => {
  const push = fc.record({
    axis1: fc.double({ min: -0.05, max: 0.05, noNaN: true }),
    axis2: fc.double({ min: -0.05, max: 0.05, noNaN: true }),
    ticks: fc.integer({ min: 1, max: 120 }),
  });
  const event = fc.constantFrom<SessionEvent>(
    { kind: "use", gear: "eye" },
    { kind: "use", gear: "finder-9x50" },
    { kind: "use", gear: "newton200-48x" },
    { kind: "restart" },
    { kind: "claim", says: "here" },
    { kind: "pin", at: TARGET },
    { kind: "track", on: true },
    { kind: "align", byDas: [600, -300] },
    { kind: "timeSet", toMs: Date.UTC(2027, 9, 30, 10) },
    { kind: "hint", leg: 0, grade: 3 },
  );
  const script = fc.array(fc.oneof(push, event), { maxLength: 25 });

  it("time and trail go forward, the tube keeps off Sun and ground, and the record reads back", () => {
    fc.assert(
      fc.property(fc.constantFrom(...mounts), fc.boolean(), script, (mount, drift, steps) => {
        const session = onAnchor(createSession(hop({ mount, drift, finderOffsetDas: [9000, 0] })));
        for (const step of steps) {
          if ("kind" in step) stepEvent(session, step);
          else for (let i = 0; i < step.ticks; i++) tick(session, step);
          // Where the Sun or the ground came to a tube that stood still, only pushes are barred.
          if (drift) continue;
          expect(separationRad(tubeDir(session), session.clock.sun) / DEG).toBeGreaterThan(19.999);
          expect(session.pose[POSE.axis2]! / DEG).toBeLessThanOrEqual(90);
        }
        const kept = record(session);
        for (let i = 1; i < kept.trail.tMs.length; i++) {
          expect(kept.trail.tMs[i]).toBeGreaterThanOrEqual(kept.trail.tMs[i - 1]!);
        }
        const read = decodeRecord(encodeRecord(kept));
        expect(checksumFits(read)).toBe(true);
        expect(encodeRecord(record(createSession(read.compiled, { resume: read })))).toBe(encodeRecord(kept));
      }),
      { numRuns: 60 },
    );
  });
});

import { describe, expect, it } from "vitest";
import { dirFromMas, separationDas, separationRad } from "#core/celestial/vector.ts";
import { scoredPath } from "#core/score/path.ts";
import type { Dir, MasDir, Trail } from "#core/seams/index.ts";
import { record } from "#core/session/record.ts";
import { createSession, pointing, type Session, tick, tubeDir } from "#core/session/session.ts";
import { AT_REST, ON_THE_WAY, SET_ELSEWHERE, trailOfRecorder } from "#core/session/trail.ts";
import { setTube } from "#core/session/tube.ts";
import { ANCHOR, ANCHOR_DIR, away, hop, offDeg, onAnchor, pushTo, say, TARGET, wait } from "./hands.ts";

const trailOf = (session: Session): Trail => trailOfRecorder(session.recorder);
const placeOf = (trail: Trail, i: number): MasDir => ({
  raMas: trail.raDas.at(i)! * 100,
  decMas: trail.decDas.at(i)! * 100,
});
const marksOf = (trail: Trail, mark: number) => [...trail.mark].filter((each) => each === mark).length;
/** Length that a score counts, degrees. */
const scoredDeg = (session: Session) =>
  scoredPath(record(session)).reduce((sum, { lengthDas, share }) => sum + lengthDas * share, 0) / 36_000;

describe("the trail", () => {
  it("starts at the tube when the anchor is confirmed; what came before has a figure of its own", () => {
    const session = createSession(hop());
    say(session, { kind: "use", gear: "sight" });
    setTube(session, dirFromMas(away(10, 80)));
    pushTo(session, away(0.4, 80), 5);
    expect(trailOf(session).tMs).toHaveLength(0);
    say(session, { kind: "confirm" });
    const { trail, lengthBeforeDas } = record(session);
    expect([...trail.tMs]).toEqual([session.events.at(-1)!.tMs]);
    expect(separationDas(placeOf(trail, 0), away(0.4, 80))).toBeLessThanOrEqual(80);
    expect(lengthBeforeDas / 36_000).toBeCloseTo(9.6, 1);
  });

  it("has the pose at 5 Hz while the hand moves, rounded to 10 arcseconds, and the rest", () => {
    const session = onAnchor(createSession(hop()));
    const heard = pushTo(session, TARGET, 2);
    const trail = trailOf(session);
    expect(heard.kinds().filter((kind) => kind === "rest")).toHaveLength(1);
    for (const column of [trail.raDas, trail.decDas]) expect([...column].every((das) => das % 100 === 0)).toBe(true);
    const moving = [...trail.tMs].slice(1, -1);
    for (let i = 1; i < moving.length; i++) expect(moving[i]! - moving[i - 1]!).toBeGreaterThanOrEqual(200);
    expect(moving.length).toBeGreaterThan(15);
    expect([...trail.byHand].slice(1).every((flag) => flag === 1)).toBe(true);
    expect(trail.mark.at(-1)).toBe(AT_REST);
    expect(separationDas(placeOf(trail, -1), TARGET)).toBeLessThanOrEqual(80);
    expect(trail.tMs.at(-1)! - trail.tMs.at(-2)!).toBeGreaterThanOrEqual(600);
    const before = trail.tMs.length;
    wait(session, 60_000);
    expect(trailOf(session).tMs).toHaveLength(before);
  });

  it("has each reversal where it happened", () => {
    const session = onAnchor(createSession(hop(), { reducedMotion: true }));
    const turn = away(1.234, 300);
    const dirs: readonly MasDir[] = [turn, ANCHOR];
    for (const dir of dirs) stroke(session, dirFromMas(dir));
    wait(session, 1000);
    const trail = trailOf(session);
    const nearest = Math.min(...[...trail.tMs.keys()].map((i) => separationDas(placeOf(trail, i), turn)));
    expect(nearest).toBeLessThanOrEqual(80);
    expect(scoredDeg(session)).toBeCloseTo(2 * 1.234, 1);
  });

  it("is not filled by the trembling of a hand", () => {
    const session = onAnchor(createSession(hop()));
    wait(session, 1000);
    const before = trailOf(session).tMs.length;
    for (let i = 0; i < 3000; i++) tick(session, { axis1: (i % 2 ? 1 : -1) * 1e-4, axis2: 0 });
    expect(trailOf(session).tMs.length - before).toBeLessThanOrEqual(2);
  });

  it("tells a restart from a push: no length, the places before and after at one moment", () => {
    const session = onAnchor(createSession(hop()));
    pushTo(session, away(3, 100));
    const there = scoredDeg(session);
    say(session, { kind: "restart" });
    const trail = trailOf(session);
    expect(trail.mark.at(-1)).toBe(SET_ELSEWHERE);
    expect(trail.byHand.at(-1)).toBe(0);
    expect(separationDas(placeOf(trail, -1), ANCHOR)).toBeLessThanOrEqual(80);
    expect(separationDas(placeOf(trail, -2), away(3, 100))).toBeLessThanOrEqual(80);
    expect(scoredDeg(session)).toBeCloseTo(there, 6);
    pushTo(session, away(3, 100));
    expect(scoredDeg(session)).toBeCloseTo(2 * there, 1);
  });

  it("follows the instrument in use: a finder out of line makes a jump of no length", () => {
    const session = onAnchor(createSession(hop({ finderOffsetDas: [18_000, 0] })));
    pushTo(session, TARGET);
    say(session, { kind: "use", gear: "newton200-48x" });
    const trail = trailOf(session);
    expect([trail.mark.at(-1), trail.byHand.at(-1)]).toEqual([SET_ELSEWHERE, 0]);
    expect(separationDas(placeOf(trail, -1), placeOf(trail, -2)) / 36_000).toBeCloseTo(0.5, 2);
    expect(separationRad(pointing(session), tubeDir(session))).toBe(0);
  });

  it("stays with the tube while one looks about with the naked eye", () => {
    const session = onAnchor(createSession(hop()));
    wait(session, 1000);
    const before = trailOf(session).tMs.length;
    say(session, { kind: "use", gear: "eye" });
    for (let i = 0; i < 200; i++) tick(session, { axis1: 0.005, axis2: 0 });
    say(session, { kind: "use", gear: "finder-9x50" });
    expect(offDeg(session, ANCHOR)).toBeLessThan(1e-6);
    expect(trailOf(session).tMs).toHaveLength(before);
  });

  it("has the very place of a claim and a pin", () => {
    const session = onAnchor(createSession(hop({ drift: true })));
    wait(session, 3000);
    say(session, { kind: "pin", at: ANCHOR });
    const trail = trailOf(session);
    expect(trail.tMs.at(-1)).toBe(3000);
    expect([trail.mark.at(-1), trail.byHand.at(-1)]).toEqual([ON_THE_WAY, 0]);
  });

  it("knows a knock, which comes once", () => {
    const knock = { atMs: 2000, byDas: [36_000, -18_000] as const };
    const session = onAnchor(createSession(hop({}, { knock })));
    const heard = wait(session, 5000);
    expect(heard.kinds().filter((kind) => kind === "knocked")).toHaveLength(1);
    expect(session.events.filter(({ kind }) => kind === "knock")).toEqual([{ kind: "knock", tMs: 2000 }]);
    expect(offDeg(session, ANCHOR)).toBeGreaterThan(0.5);
    expect(scoredDeg(session)).toBe(0);
    expect(marksOf(trailOf(session), SET_ELSEWHERE)).toBe(1);
  });
});

/** Pushes straight to a place without letting go at its end. */
function stroke(session: Session, to: Dir): void {
  const { pose, clock } = session;
  const steps = 45;
  const from = tubeDir(session);
  for (let i = 1; i <= steps; i++) {
    const at: Dir = [0, 1, 2].map((k) => from[k]! + ((to[k]! - from[k]!) * i) / steps) as unknown as Dir;
    const probe = createProbe(session, at);
    tick(session, { axis1: probe[0] - pose[0]!, axis2: probe[1] - pose[1]! });
  }
  expect(clock.mount).toBe("altazimuth");
}

/** Axes of a place, by setting a copy of the tube on it. */
function createProbe(session: Session, dir: Dir): readonly [number, number] {
  const copy = { ...session, pose: Float64Array.from(session.pose) };
  setTube(copy, dir);
  return [copy.pose[0]!, copy.pose[1]!];
}

describe("keeping a star centred against drift for five minutes", () => {
  const compiled = hop({ drift: true, claimGear: "newton200-48x" });
  const FIVE_MINUTES = 300_000;

  it("costs nothing by a nudge each ten seconds", () => {
    const session = onAnchor(createSession(compiled), "newton200-48x");
    for (let t = 0; t < FIVE_MINUTES; ) {
      const from = session.pose[8]!;
      wait(session, 9000);
      pushTo(session, ANCHOR_DIR, 0.2);
      t += session.pose[8]! - from;
    }
    expect(offDeg(session, ANCHOR)).toBeLessThan(0.02);
    expect(marksOf(trailOf(session), AT_REST)).toBeGreaterThan(20);
    expect(scoredDeg(session)).toBeLessThan(0.05);
  });

  it("costs nothing by a steady hand either", () => {
    const session = onAnchor(createSession(compiled), "newton200-48x");
    for (let t = 0; t < FIVE_MINUTES; t += 20) {
      const probe = createProbe(session, ANCHOR_DIR);
      tick(session, { axis1: probe[0] - session.pose[0]!, axis2: probe[1] - session.pose[1]! });
    }
    expect(offDeg(session, ANCHOR)).toBeLessThan(0.02);
    expect(scoredDeg(session)).toBeLessThan(0.05);
  });
});

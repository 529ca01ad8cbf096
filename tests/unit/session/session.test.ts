import { describe, expect, it } from "vitest";
import { altAzFromDir, dirFromAltAz } from "#core/celestial/frames.ts";
import { DAS_RAD, DEG, dirFromMas, masFromDir, offsetDir, separationRad } from "#core/celestial/vector.ts";
import {
  altAzOf,
  createSession,
  elapsedMs,
  gearInUse,
  orientationOf,
  POSE,
  pointing,
  screwingHand,
  skyTimeMs,
  stepEvent,
  tick,
  tubeDir,
  viewOf,
} from "#core/session/session.ts";
import { setTube } from "#core/session/tube.ts";
import { ANCHOR, ANCHOR_DIR, away, hop, offDeg, onAnchor, pushTo, say, TARGET, wait } from "./hands.ts";

describe("the start", () => {
  it("stands at the first instrument, about 25 degrees from the anchor, up in the sky, the same each time", () => {
    const [one, two] = [createSession(hop()), createSession(hop())];
    expect(gearInUse(one).id).toBe("eye");
    expect(one.pose).toEqual(two.pose);
    expect(separationRad(tubeDir(one), ANCHOR_DIR) / DEG).toBeCloseTo(25, 6);
    expect(altAzOf(one).altRad / DEG).toBeGreaterThan(12);
    const anchorAlt = altAzFromDir(one.clock.horizon, ANCHOR_DIR).altRad;
    expect(Math.abs(altAzOf(one).altRad - anchorAlt) / DEG).toBeLessThan(3);
  });
});

describe("the hand", () => {
  it("turns the gaze with the naked eye, and no tube", () => {
    const session = createSession(hop());
    const tube = tubeDir(session);
    for (let i = 0; i < 100; i++) tick(session, { axis1: 0.002, axis2: 0.001 });
    wait(session, 1000);
    expect(tubeDir(session)).toEqual(tube);
    expect(separationRad(pointing(session), tube) / DEG).toBeGreaterThan(5);
    say(session, { kind: "look", at: ANCHOR });
    expect(offDeg(session, ANCHOR)).toBeLessThan(1e-6);
  });

  it("moves the tube from the sight on, by the drawn gain, and the tube comes to a full stop", () => {
    const session = createSession(hop({}, { gainPermille: [1250, 750] }));
    say(session, { kind: "use", gear: "sight" });
    const [az, alt] = [session.pose[POSE.axis1]!, session.pose[POSE.axis2]!];
    for (let i = 0; i < 50; i++) tick(session, { axis1: 0.001, axis2: -0.002 });
    wait(session, 1000);
    expect(session.pose[POSE.axis1]! - az).toBeCloseTo(0.0625, 12);
    expect(session.pose[POSE.axis2]! - alt).toBeCloseTo(-0.075, 12);
    expect([session.pose[POSE.pending1], session.pose[POSE.pending2]]).toEqual([0, 0]);
  });

  it("follows at once under reduced motion, and gets to the same place", () => {
    const run = (reducedMotion: boolean) => {
      const session = createSession(hop(), { reducedMotion });
      say(session, { kind: "use", gear: "sight" });
      tick(session, { axis1: 0.02, axis2: 0.01 });
      const first = session.pose[POSE.axis1]!;
      wait(session, 1000);
      return { first, last: session.pose[POSE.axis1]! };
    };
    const [calm, still] = [run(false), run(true)];
    expect(still.first).toBe(still.last);
    expect(calm.first).toBeLessThan(calm.last);
    expect(calm.last).toBeCloseTo(still.last, 12);
  });

  it("does not move a locked axis, and cannot push a tube over the top or into the ground", () => {
    const session = createSession(hop());
    say(session, { kind: "use", gear: "finder-9x50" });
    say(session, { kind: "axisLock", axis: 1, locked: true });
    const az = session.pose[POSE.axis1]!;
    for (let i = 0; i < 200; i++) tick(session, { axis1: 0.01, axis2: 0.02 });
    expect(session.pose[POSE.axis1]).toBe(az);
    expect(altAzOf(session).altRad / DEG).toBeCloseTo(90, 6);
    expect([...viewOf(session, new Float64Array(9))].every(Number.isFinite)).toBe(true);
    for (let i = 0; i < 400; i++) tick(session, { axis1: 0, axis2: -0.02 });
    expect(altAzOf(session).altRad / DEG).toBeCloseTo(-5, 6);
  });

  it("has two knobs on an equatorial mount, which keeps above the ground as well", () => {
    const session = createSession(hop({ mount: "equatorial" }));
    say(session, { kind: "use", gear: "finder-9x50" });
    const dec = session.pose[POSE.axis2]!;
    for (let i = 0; i < 50; i++) tick(session, { axis1: 0.002, axis2: 0 });
    expect(session.pose[POSE.axis2]).toBe(dec);
    for (let i = 0; i < 3000; i++) tick(session, { axis1: 0, axis2: -0.002 });
    expect(altAzOf(session).altRad / DEG).toBeGreaterThan(-5.01);
    expect(altAzOf(session).altRad / DEG).toBeLessThan(-4.8);
  });
});

describe("the anchor", () => {
  it("is confirmed in the sight's inner ring, and the page is told how far off one is", () => {
    const session = createSession(hop());
    expect(say(session, { kind: "confirm" }).all).toEqual([{ kind: "refused", why: "useTheSight" }]);
    say(session, { kind: "use", gear: "sight" });
    const aim = (deg: number) => {
      setTube(session, dirFromMas(away(deg, 30)));
      return stepEvent(session, { kind: "confirm" });
    };
    expect(aim(60)).toEqual([{ kind: "notYet", howFar: "near" }]);
    expect(aim(120)).toEqual([{ kind: "notYet", howFar: "far" }]);
    expect(aim(0.51)).toEqual([{ kind: "notYet", howFar: "inField" }]);
    expect(aim(0.49)).toEqual([{ kind: "anchorConfirmed" }]);
    expect(aim(0.49)).toEqual([{ kind: "refused", why: "anchorKnown" }]);
    expect(session.events.map(({ kind }) => kind)).toEqual(["use", "confirm"]);
  });

  it("is confirmed within 0.35 of a finder's radius", () => {
    for (const [deg, kind] of [
      [0.93, "notYet"],
      [0.92, "anchorConfirmed"],
    ] as const) {
      const session = createSession(hop());
      say(session, { kind: "use", gear: "finder-9x50" });
      setTube(session, dirFromMas(away(deg, 30)));
      expect(stepEvent(session, { kind: "confirm" })[0]!.kind).toBe(kind);
    }
  });

  it("comes before everything that counts", () => {
    const session = createSession(hop());
    expect(say(session, { kind: "restart" }).all).toEqual([{ kind: "refused", why: "anchorFirst" }]);
    expect(say(session, { kind: "claim", says: "here" }).all).toEqual([{ kind: "refused", why: "anchorFirst" }]);
    expect(session.events).toEqual([]);
  });
});

describe("a finder out of line", () => {
  it("points beside the telescope until its screws are turned", () => {
    const session = createSession(hop({ finderOffsetDas: [10_800, -7200] }));
    const offset = Math.hypot(0.3, 0.2);
    say(session, { kind: "use", gear: "finder-9x50" });
    expect(separationRad(pointing(session), tubeDir(session)) / DEG).toBeCloseTo(offset, 4);
    say(session, { kind: "use", gear: "newton200-48x" });
    expect(separationRad(pointing(session), tubeDir(session))).toBe(0);
    say(session, { kind: "align", byDas: [-10_800, 7200] });
    say(session, { kind: "use", gear: "finder-9x50" });
    expect(separationRad(pointing(session), tubeDir(session))).toBe(0);
  });

  it("has screws that reach a degree and a half, or as far as it was out at first", () => {
    const reach = (finderOffsetDas: readonly [number, number]) => {
      const session = createSession(hop({ finderOffsetDas }));
      for (let i = 0; i < 50; i++) say(session, { kind: "align", byDas: [6000, -3000] });
      return session.state.finderOffsetDas.map((das) => das / 36_000);
    };
    expect(reach([0, 0])).toEqual([1.5, -1.5]);
    expect(reach([0, 72_000])).toEqual([1.5, -2]);
  });

  it("is not turned in the hop where the claim is made in it: it would come to the target without the tube", () => {
    const align = { kind: "align", byDas: [6000, 0] } as const;
    const inFinder = onAnchor(createSession(hop({ claimGear: "finder-9x50" })));
    expect(say(inFinder, align).all).toEqual([{ kind: "refused", why: "notInTheHop" }]);
    expect(inFinder.state.finderOffsetDas).toEqual([0, 0]);
    const inEyepiece = onAnchor(createSession(hop()));
    expect(say(inEyepiece, align).all).toEqual([]);
    expect(inEyepiece.state.finderOffsetDas).toEqual([6000, 0]);
  });

  it("carries its stars with the finger that turns the screws", () => {
    const session = onAnchor(createSession(hop()));
    const view = viewOf(session, new Float64Array(9));
    const at = (v: ArrayLike<number>, row: number) =>
      v[row]! * ANCHOR_DIR[0] + v[row + 1]! * ANCHOR_DIR[1] + v[row + 2]! * ANCHOR_DIR[2];
    const before = [at(view, 0), at(view, 3)];
    const byDas = screwingHand(session, { rightRad: 0.004, upRad: -0.002 }).map((rad) => Math.round(rad / DAS_RAD));
    say(session, { kind: "align", byDas: [byDas[0]!, byDas[1]!] });
    viewOf(session, view);
    expect(at(view, 0) - before[0]!).toBeCloseTo(0.004, 4);
    expect(at(view, 3) - before[1]!).toBeCloseTo(-0.002, 4);
  });

  it("is set on the anchor itself by a restart", () => {
    const session = onAnchor(createSession(hop({ finderOffsetDas: [18_000, 9000] })));
    pushTo(session, away(3, 10));
    expect(say(session, { kind: "restart" }).kinds()).toEqual(["restarted"]);
    expect(offDeg(session, ANCHOR) * 3600).toBeLessThan(0.01);
  });
});

describe("the Sun", () => {
  it("stops the tube 20 degrees off, says so once, and lets it go outward only", () => {
    const session = createSession(hop());
    say(session, { kind: "use", gear: "sight" });
    const { sun } = session.clock;
    const altAz = altAzFromDir(session.clock.horizon, sun);
    // Below the horizon at this hour: brought up by setting the time to noon.
    expect(altAz.altRad).toBeLessThan(0);
    say(session, { kind: "timeSet", toMs: Date.UTC(2027, 9, 29, 12) });
    setTube(session, offsetDir(session.clock.sun, 0.3, 23 * DEG));
    const heard = pushTo(session, session.clock.sun, 5);
    expect(heard.kinds().filter((kind) => kind === "sunStop")).toHaveLength(1);
    const stopped = separationRad(pointing(session), session.clock.sun) / DEG;
    expect(stopped).toBeGreaterThanOrEqual(20);
    expect(stopped).toBeLessThan(20.2);
    pushTo(session, offsetDir(session.clock.sun, 0.3, 30 * DEG), 5);
    expect(separationRad(pointing(session), session.clock.sun) / DEG).toBeCloseTo(30, 3);
  });

  it("is never brought to a tube by another hour: the tube is swung away, with the caution", () => {
    const noon = Date.UTC(2027, 9, 29, 12);
    const at = createSession(hop({ startMs: noon }));
    const sun = altAzFromDir(at.clock.horizon, at.clock.sun);
    for (const offDeg of [0, 10, 19]) {
      const session = createSession(hop());
      say(session, { kind: "use", gear: "finder-9x50" });
      // Where the Sun will be, as the ground sees it: an undriven tube stays there.
      setTube(session, dirFromAltAz(session.clock.horizon, sun.altRad + offDeg * DEG, sun.azRad));
      expect(say(session, { kind: "timeSet", toMs: noon }).kinds()).toContain("sunStop");
      expect(separationRad(pointing(session), session.clock.sun) / DEG).toBeGreaterThan(25);
    }
    const session = createSession(hop());
    say(session, { kind: "use", gear: "finder-9x50" });
    setTube(
      session,
      dirFromAltAz(session.clock.horizon, sun.altRad, sun.azRad + (21 * DEG) / Math.cos(sun.altRad) + 0.05),
    );
    const before = altAzFromDir(session.clock.horizon, pointing(session));
    expect(say(session, { kind: "timeSet", toMs: noon }).kinds()).not.toContain("sunStop");
    expect(altAzFromDir(session.clock.horizon, pointing(session)).azRad).toBeCloseTo(before.azRad, 2);
  });

  it("gives the caution once where the turning sky carries it to a tube that stands", () => {
    const session = createSession(hop({ drift: true, startMs: Date.UTC(2027, 9, 29, 11) }));
    say(session, { kind: "use", gear: "finder-9x50" });
    // West of it, where it goes by a quarter of a degree a minute.
    setTube(session, offsetDir(session.clock.sun, -90 * DEG, 20.1 * DEG));
    expect(wait(session, 10_000).kinds()).not.toContain("sunStop");
    expect(
      wait(session, 60_000)
        .kinds()
        .filter((kind) => kind === "sunStop"),
    ).toHaveLength(1);
  });

  it("is not reached by a restart or a knock", () => {
    const noon = Date.UTC(2027, 9, 29, 12);
    const { sun, horizon } = createSession(hop({ startMs: noon })).clock;
    // East of the Sun along the ecliptic: the Sun comes nearer from day to day.
    const anchor = masFromDir(offsetDir(sun, 110 * DEG, 20.5 * DEG));
    const [from, to] = [altAzFromDir(horizon, dirFromMas(anchor)), altAzFromDir(horizon, sun)];
    const byDas = [to.azRad - from.azRad, to.altRad - from.altRad].map((rad) => Math.round((rad * 648_000) / Math.PI));
    const session = createSession(
      hop({ startMs: noon, anchor }, { knock: { atMs: 0, byDas: [byDas[0]!, byDas[1]!] } }),
    );
    onAnchor(session, "finder-9x50", anchor);
    expect(wait(session, 20).kinds()).toEqual(["knocked"]);
    expect(offDeg(session, anchor)).toBeLessThan(1e-6);
    const later = createSession(hop({ startMs: noon, anchor }));
    say(later, { kind: "timeSet", toMs: noon + 3 * 86_400_000 });
    onAnchor(later, "finder-9x50", anchor);
    expect(separationRad(dirFromMas(anchor), later.clock.sun) / DEG).toBeLessThan(19);
    expect(say(later, { kind: "restart" }).kinds()).toEqual(["sunStop"]);
  });
});

describe("time", () => {
  const drifting = hop({ drift: true });

  it("stands still unless the lesson lets the sky drift", () => {
    const session = createSession(hop());
    wait(session, 2000);
    expect(elapsedMs(session)).toBe(2000);
    expect(skyTimeMs(session)).toBe(hop().spec.startMs);
  });

  it("carries the stars west through a still field at 15 arcseconds a second times the cosine of declination", () => {
    const session = onAnchor(createSession(drifting));
    wait(session, 60_000);
    const wantArcsec = 15.041 * 60 * Math.cos(35.617 * DEG);
    expect(offDeg(session, ANCHOR) * 3600).toBeGreaterThan(wantArcsec - 3);
    expect(offDeg(session, ANCHOR) * 3600).toBeLessThan(wantArcsec + 3);
    const east = masFromDir(pointing(session));
    expect(east.raMas).toBeGreaterThan(ANCHOR.raMas);
  });

  it("is paused, or followed by a driven mount, on both mounts", () => {
    for (const mount of ["altazimuth", "equatorial"] as const) {
      for (const kind of ["pause", "track"] as const) {
        const session = onAnchor(createSession(hop({ drift: true, mount })));
        say(session, { kind, on: true });
        wait(session, 30_000);
        expect(offDeg(session, ANCHOR) * 3600).toBeLessThan(0.01);
        say(session, { kind, on: false });
        wait(session, 10_000);
        expect(offDeg(session, ANCHOR) * 3600).toBeGreaterThan(100);
      }
    }
  });

  it("can be set: an hour later the tube stands 15 degrees further east among the stars", () => {
    const session = createSession(hop());
    say(session, { kind: "use", gear: "finder-9x50" });
    setTube(session, ANCHOR_DIR);
    say(session, { kind: "timeSet", toMs: hop().spec.startMs + 3_600_000 });
    expect(skyTimeMs(session)).toBe(hop().spec.startMs + 3_600_000);
    const sameSpin = createSession(drifting);
    onAnchor(sameSpin);
    for (let t = 0; t < 3_600_000; t += 20) tick(sameSpin);
    expect(separationRad(pointing(session), pointing(sameSpin)) / DEG).toBeLessThan(1e-4);
    expect(offDeg(session, ANCHOR)).toBeGreaterThan(11.5);
  });

  it("is not set once the hop is on: the sky would carry the tube to the target, and the trail would have no length", () => {
    const session = onAnchor(createSession(hop()));
    const target = dirFromMas(TARGET);
    const before = separationRad(pointing(session), target);
    const heard = say(session, { kind: "timeSet", toMs: hop().spec.startMs + 1_800_000 });
    expect(heard.all).toEqual([{ kind: "refused", why: "notInTheHop" }]);
    expect(session.events.some(({ kind }) => kind === "timeSet")).toBe(false);
    expect(skyTimeMs(session)).toBe(hop().spec.startMs);
    expect(separationRad(pointing(session), target)).toBe(before);
  });
});

describe("what the instrument shows", () => {
  it("puts the pointing in the middle and the zenith where the orientation says", () => {
    const session = onAnchor(createSession(hop()));
    pushTo(session, TARGET);
    say(session, { kind: "use", gear: "newton200-48x" });
    const view = viewOf(session, new Float64Array(9));
    const at = pointing(session);
    for (let i = 0; i < 3; i++) expect(view[6 + i]).toBeCloseTo(at[i]!, 12);
    const { parity, rotationRad } = orientationOf(session);
    expect(parity).toBe(1);
    expect(rotationRad).toBeCloseTo(Math.PI - altAzOf(session).altRad, 9);
  });
});

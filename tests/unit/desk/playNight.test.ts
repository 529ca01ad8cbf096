/** The night of a lesson, and the hand on the finder's screws. */
import { describe, expect, it } from "vitest";
import { sunDir } from "#core/celestial/bodies.ts";
import { altAzFromDir, horizonFromIcrs } from "#core/celestial/frames.ts";
import { DEG, dirFromMas, separationRad } from "#core/celestial/vector.ts";
import { createSession, NO_HAND, screwingHand, stepEvent, tubeDir } from "#core/session/session.ts";
import { darkHours, NIGHT_STEP_MS } from "../../../src/desk/play/night.ts";
import { createSteering } from "../../../src/desk/play/steering.ts";
import { ANCHOR, hop } from "../session/hands.ts";

describe("the hours to which a night may be set", () => {
  const { spec } = hop();
  const { leastMs, mostMs } = darkHours(spec);
  const site = { latDeg: 50, lonDeg: 0, heightM: 0 };
  const altDeg = (utcMs: number, dir: readonly [number, number, number]) =>
    altAzFromDir(horizonFromIcrs(site, utcMs), dir).altRad / DEG;

  it("hold the lesson's own hour and lie whole steps from it", () => {
    expect(leastMs).toBeLessThan(spec.startMs);
    expect(mostMs).toBeGreaterThan(spec.startMs);
    for (const end of [leastMs, mostMs]) expect(Math.abs(end - spec.startMs) % NIGHT_STEP_MS).toBe(0);
  });

  it("are dark with the hop well up, and a step further they are not, or ten hours are enough", () => {
    const isGood = (utcMs: number) =>
      altDeg(utcMs, sunDir(utcMs)) < -12 &&
      [ANCHOR, spec.targets[0]!.dir].every((dir) => altDeg(utcMs, dirFromMas(dir)) > 15);
    for (let utcMs = leastMs; utcMs <= mostMs; utcMs += NIGHT_STEP_MS) expect(isGood(utcMs)).toBe(true);
    expect(isGood(leastMs - NIGHT_STEP_MS)).toBe(false);
    expect(isGood(mostMs + NIGHT_STEP_MS) && mostMs - spec.startMs < 36_000_000).toBe(false);
  });

  it("are the lesson's hour alone where it is light", () => {
    const noon = Date.UTC(2027, 9, 29, 12);
    expect(darkHours({ ...spec, startMs: noon })).toEqual({ leastMs: noon, mostMs: noon });
  });
});

describe("the hand on the finder's screws", () => {
  it("moves no tube; what it turned is told once, and then the tube is in hand again", () => {
    const session = createSession(hop());
    stepEvent(session, { kind: "use", gear: "finder-9x50" });
    const steering = createSteering();
    steering.screws = true;
    steering.drag(30, 0, 372);
    expect(steering.take(session)).toEqual(NO_HAND);
    const turned = steering.takeScrews();
    expect(turned?.rightRad).toBeCloseTo(((30 / 744) * 5.3 * Math.PI) / 180, 9);
    expect(turned?.upRad).toBeCloseTo(0, 12);
    expect(steering.takeScrews()).toBeNull();
    const before = tubeDir(session);
    const [one, two] = screwingHand(session, turned!);
    stepEvent(session, { kind: "align", byDas: [Math.round(one * 1e6), Math.round(two * 1e6)] });
    expect(separationRad(tubeDir(session), before)).toBe(0);
    steering.screws = false;
    steering.drag(30, 0, 372);
    expect(steering.take(session).axis1).not.toBe(0);
    expect(steering.takeScrews()).toBeNull();
  });
});

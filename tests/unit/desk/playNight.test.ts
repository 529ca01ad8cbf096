/** The night of a lesson, and the hand on the finder's screws. */
import { describe, expect, it } from "vitest";
import { sunDir } from "#core/celestial/bodies.ts";
import { altAzFromDir, horizonFromIcrs } from "#core/celestial/frames.ts";
import { DEG, dirFromMas, dirFromRadec, masFromDir, separationRad } from "#core/celestial/vector.ts";
import type { Band, Dir } from "#core/seams/index.ts";
import { createSession, NO_HAND, screwingHand, stepEvent, tubeDir } from "#core/session/session.ts";
import { hourTold, markDown } from "../../../src/desk/play/hours.ts";
import { NIGHT_STEP_MS, nightHours } from "../../../src/desk/play/night.ts";
import { createSteering } from "../../../src/desk/play/steering.ts";
import { hop } from "../session/hands.ts";

const PLACE = { name: "a hill", latDeg: 50, lonDeg: 0, heightM: 250, skyMagPerArcsec2: 20.8 };
const night = { place: PLACE, time: "2027-10-29T20:00:00Z" };
const lessonMs = Date.parse(night.time);
const altDeg = (utcMs: number, dir: Dir) => altAzFromDir(horizonFromIcrs(PLACE, utcMs), dir).altRad / DEG;

describe("the hours to which a night may be set", () => {
  const { leastMs, mostMs } = nightHours(night);

  it("hold the lesson's own hour and lie whole steps from it", () => {
    expect(leastMs).toBeLessThan(lessonMs);
    expect(mostMs).toBeGreaterThan(lessonMs);
    for (const end of [leastMs, mostMs]) expect(Math.abs(end - lessonMs) % NIGHT_STEP_MS).toBe(0);
  });

  it("last from sunset to sunrise, and half a day at most", () => {
    const isUp = (utcMs: number) => altDeg(utcMs, sunDir(utcMs)) > -0.9;
    for (let utcMs = leastMs; utcMs <= mostMs; utcMs += NIGHT_STEP_MS)
      expect(altDeg(utcMs, sunDir(utcMs))).toBeLessThan(-0.8);
    expect(isUp(leastMs - NIGHT_STEP_MS)).toBe(true);
    expect(isUp(mostMs + NIGHT_STEP_MS)).toBe(true);
    const polar = nightHours({ place: { ...PLACE, latDeg: 80 }, time: "2027-12-21T20:00:00Z" });
    expect(polar.mostMs - polar.lessonMs).toBe(12 * 3_600_000);
  });

  it("are the lesson's hour alone where it is light", () => {
    const noon = Date.UTC(2027, 9, 29, 12);
    expect(nightHours({ ...night, time: "2027-10-29T12:00:00Z" })).toEqual({
      lessonMs: noon,
      leastMs: noon,
      mostMs: noon,
    });
  });
});

describe("what is said of an hour that was set", () => {
  /** Both up at the lesson's hour; the second sets in the night. */
  const mark = (name: string, raDeg: number, decDeg: number) => ({
    name,
    dir: masFromDir(dirFromRadec(raDeg * DEG, decDeg * DEG)),
  });
  const marks = [mark("Orlo", 330, 40), mark("Rowanberries", 335, 10)];
  const later = (hours: number) => lessonMs + hours * 3_600_000;
  const told = (utcMs: number, now: Band = "seen") => hourTold(night, marks, utcMs, ["seen", now]);

  it("is nothing near the lesson's own, and beyond half an hour that the words were written for it", () => {
    expect(told(lessonMs)).toBeNull();
    expect(told(later(-0.5))).toBeNull();
    expect(told(later(0.6))).toEqual({
      words: "What is said here was written for 20:00.",
      back: "Back to 20:00",
      isPossible: true,
    });
  });

  it("is that the hop cannot start where an end of it is under the horizon, and which", () => {
    const setsAt = Array.from({ length: 73 }, (_, i) => later(i / 6)).find(
      (ms) => altDeg(ms, dirFromMas(marks[1]!.dir)) <= 0,
    )!;
    expect(told(setsAt - NIGHT_STEP_MS)?.isPossible).toBe(true);
    expect(told(setsAt)).toMatchObject({
      isPossible: false,
      words: expect.stringContaining("Rowanberries is below the horizon"),
    });
    expect(markDown(night, marks.toReversed(), setsAt)?.name).toBe("Rowanberries");
  });

  it("is that the target is lost where it was to be seen, and the hop may start all the same", () => {
    expect(told(lessonMs, "not")).toMatchObject({
      isPossible: true,
      words: expect.stringContaining("20:00 Rowanberries would not be seen"),
    });
    expect(hourTold(night, marks, lessonMs, ["not", "not"])).toBeNull();
    expect(told(lessonMs, "edge")).toBeNull();
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

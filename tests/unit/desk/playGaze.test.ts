import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { skyHere, zenithConditions } from "#core/eye/conditions.ts";
import { starLimits } from "#core/eye/instrument.ts";
import { GEAR } from "#core/optics/gear.ts";
import { starePlace } from "../../../src/desk/play/fieldHand.ts";
import { createGaze, foveaCssPx, stareLossMag } from "../../../src/desk/play/gaze.ts";
import { createHeldActs } from "../../../src/desk/play/heldActs.ts";

const RAD = Math.PI / 180;
const ALL_GEAR = [...GEAR.values()];

describe("the fovea on the field", () => {
  it("is as large as an angle of half a degree at the eye, by trigonometry", () => {
    for (const gear of ALL_GEAR) {
      const wide = gear.kind === "eye" || gear.kind === "sight";
      const onPlane = (rad: number) => (wide ? 2 * Math.tan(rad / 2) : Math.tan(rad));
      const shareOfField = onPlane((0.5 * RAD) / gear.magnification) / onPlane((gear.fieldDeg / 2) * RAD);
      expect(foveaCssPx(gear, 3720)).toBeCloseTo(3720 * shareOfField, 9);
      // Where the field is narrow, simply its share of the apparent field.
      const byShare = (3720 * 0.5) / ((gear.fieldDeg * gear.magnification) / 2);
      if (!wide) expect(foveaCssPx(gear, 3720) / byShare).toBeCloseTo(1, 2);
    }
  });
  it("grows with the field's place on the page, from what a hand can point with", () => {
    for (const gear of ALL_GEAR) {
      expect(foveaCssPx(gear, 1450) * 2).toBeCloseTo(foveaCssPx(gear, 2900), 9);
      expect(foveaCssPx(gear, 145)).toBe(8);
    }
  });
});

describe("what a stare takes", () => {
  it("is the way from the averted limit to the direct one, at most a magnitude and a half, under any sky", () => {
    fc.assert(
      fc.property(fc.constantFrom(...ALL_GEAR), fc.double({ min: 16, max: 22, noNaN: true }), (gear, mu) => {
        const conditions = zenithConditions(mu);
        const { avertedMag, directMag } = starLimits(gear, conditions, skyHere(conditions, [0, 0, 1]), 0.7);
        const lossMag = stareLossMag(1000 * avertedMag, 1000 * directMag, 0);
        expect(lossMag).toBeCloseTo(avertedMag - directMag, 9);
        expect(lossMag).toBeGreaterThanOrEqual(0);
        expect(lossMag).toBeLessThanOrEqual(1.5 + 1e-9);
      }),
    );
  });
  it("is less for an eye that sees by its cones already, and never a gain", () => {
    expect(stareLossMag(9700, 8200, 0.5)).toBeCloseTo(1, 9);
    expect(stareLossMag(9700, 8200, 4)).toBe(0);
  });
});

describe("the gaze", () => {
  const seen = (gaze: ReturnType<typeof createGaze>, ms: number, still = false) => ({
    ...gaze.now(ms, 8, 1.5, 0, still),
  });
  /** Frames of a while, 16 ms apart. */
  const framesTo = (gaze: ReturnType<typeof createGaze>, fromMs: number, toMs: number) => {
    for (let ms = fromMs; ms < toMs; ms += 16) seen(gaze, ms);
    return seen(gaze, toMs);
  };

  it("takes nothing while it is free", () => {
    const gaze = createGaze();
    expect(seen(gaze, 0)).toMatchObject({ lossMag: 0, beside: 0 });
    expect(gaze.moves).toBe(false);
  });
  it("takes more and more where it stares, then all of it, and gives it back", () => {
    const gaze = createGaze();
    seen(gaze, 0);
    gaze.stareAt({ x: 30, y: -20 });
    expect(gaze.moves).toBe(true);
    const midway = framesTo(gaze, 0, 200);
    expect(midway.lossMag).toBeGreaterThan(0.3);
    expect(midway.lossMag).toBeLessThan(1.2);
    expect(framesTo(gaze, 200, 700)).toMatchObject({ xCssPx: 30, yCssPx: -20, foveaCssPx: 8, lossMag: 1.5 });
    expect(gaze.moves).toBe(false);
    gaze.stareAt(null);
    // Where it was does not leap away while it fades.
    expect(framesTo(gaze, 700, 800)).toMatchObject({ xCssPx: 30, yCssPx: -20 });
    expect(framesTo(gaze, 800, 1100).lossMag).toBe(0);
  });
  it("does not stare while it looks beside", () => {
    const gaze = createGaze();
    gaze.stareAt({ x: 0, y: 0 });
    gaze.lookBeside(true);
    expect(framesTo(gaze, 0, 800)).toMatchObject({ lossMag: 0, beside: 1 });
    gaze.lookBeside(false);
    expect(framesTo(gaze, 800, 1600)).toMatchObject({ lossMag: 1.5, beside: 0 });
  });
  it("is there at once under reduced motion", () => {
    const gaze = createGaze();
    gaze.stareAt({ x: 0, y: 0 });
    expect(seen(gaze, 16, true).lossMag).toBe(1.5);
    expect(gaze.moves).toBe(false);
  });
});

describe("a hand held still", () => {
  const field = { left: 100, top: 50, width: 400, height: 400 };
  it("stares at what is under the pointer, from the middle, x right and y up", () => {
    expect(starePlace({ x: 310, y: 230, isFinger: false }, field)).toEqual({ x: 10, y: 20 });
  });
  it("stares past the finger, at what it does not cover, and never out of the field", () => {
    const { x, y } = starePlace({ x: 300, y: 250, isFinger: true }, field);
    expect(x).toBe(0);
    expect(y).toBeGreaterThan(30);
    const high = starePlace({ x: 300, y: 55, isFinger: true }, field);
    expect(high.y).toBeLessThan(200);
    expect(high.y).toBeGreaterThan(180);
  });
});

describe("held acts", () => {
  const hands = () => {
    const told: [string, boolean][] = [];
    return { told, held: createHeldActs((act, on) => told.push([act, on])) };
  };
  it("begin once and end once, whatever repeats, also where Shift came between", () => {
    const { told, held } = hands();
    held.press("v", "avert");
    held.press("v", "avert");
    held.lift("V");
    held.lift("v");
    expect(told).toEqual([
      ["avert", true],
      ["avert", false],
    ]);
  });
  it("all end at once", () => {
    const { told, held } = hands();
    held.press("v", "avert");
    held.press("g", "stare");
    held.release();
    held.release();
    expect(told.slice(2)).toEqual([
      ["avert", false],
      ["stare", false],
    ]);
  });
});

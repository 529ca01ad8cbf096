import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { VisibleStars } from "#core/field/visibleStars.ts";
import { createHandSense } from "#core/rehearsal/handSense.ts";
import { matchField } from "#core/rehearsal/matchField.ts";
import type { PaperStar } from "#core/rehearsal/types.ts";

const RADIUS = 90;

/** A page strewn with stars: a congruential generator, ever more of the faint ones. */
function pageOf(seed: number, count = 900): PaperStar[] {
  let state = seed;
  const draw = () => {
    state = (Math.imul(state, 1664525) + 1013904223) | 0;
    return (state >>> 0) / 4294967296;
  };
  return Array.from({ length: count }, () => ({
    x: 1200 * (draw() - 0.5),
    y: 1200 * (draw() - 0.5),
    magV: 9.5 + 2 * Math.log10(draw() + 1e-3),
  }));
}

/** What an instrument shows of the page at a place: turned, mirrored, with errors, and fainter stars besides. */
function fieldAt(page: readonly PaperStar[], x: number, y: number, turnRad: number, parity: 1 | -1): VisibleStars {
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  const inside = page.flatMap((star, i) => {
    const [dx, dy] = [(star.x - x) / RADIUS, (y - star.y) / RADIUS];
    const trembles = 0.008 * ((i % 3) - 1);
    const place = {
      x: parity * (c * dx - s * dy) + trembles,
      y: s * dx + c * dy,
      mag: star.magV + 0.1 * ((i % 5) / 2 - 1),
    };
    return place.x * place.x + place.y * place.y < 1 ? [place] : [];
  });
  return {
    count: inside.length,
    x: Float32Array.from(inside, (star) => star.x),
    y: Float32Array.from(inside, (star) => star.y),
    milliMag: Int16Array.from(inside, (star) => Math.round(star.mag * 1000)),
    colourBV: new Float32Array(inside.length),
  };
}

describe("finding a field on the page", () => {
  test("finds where it is, however it is turned, mirrored or not", () => {
    const page = pageOf(7);
    fc.assert(
      fc.property(
        fc.record({
          x: fc.integer({ min: -200, max: 200 }),
          y: fc.integer({ min: -200, max: 200 }),
          turn: fc.double({ min: -3.1, max: 3.1, noNaN: true }),
          parity: fc.constantFrom(1 as const, -1 as const),
          off: fc.integer({ min: -60, max: 60 }),
        }),
        ({ x, y, turn, parity, off }) => {
          const how = { radiusPx: RADIUS, parity, near: { x: x + off, y: y - off }, withinPx: RADIUS };
          const fix = matchField(fieldAt(page, x, y, turn, parity), page, how);
          expect(fix).not.toBeNull();
          expect(Math.hypot(fix!.x - x, fix!.y - y)).toBeLessThan(0.03 * RADIUS);
        },
      ),
      { numRuns: 60, seed: 1 },
    );
  });

  test("says nothing where the page has another sky, or the picture is mirrored unbeknown", () => {
    const page = pageOf(7);
    let found = 0;
    for (let i = 0; i < 20; i++) {
      const [x, y] = [-190 + 20 * i, 150 - 17 * i];
      const how = { radiusPx: RADIUS, parity: 1 as const, near: { x, y }, withinPx: RADIUS };
      if (matchField(fieldAt(pageOf(8), x, y, 1, 1), page, how)) found += 1;
      if (matchField(fieldAt(page, x, y, 1, -1), page, how)) found += 1;
    }
    expect(found).toBe(0);
  });

  test("says nothing of an empty field", () => {
    const page = pageOf(7);
    const how = { radiusPx: RADIUS, parity: 1 as const, near: { x: 0, y: 0 }, withinPx: RADIUS };
    expect(matchField(fieldAt([], 0, 0, 0, 1), page, how)).toBeNull();
  });
});

describe("a hand that learns by nudging", () => {
  test("knows after two nudges which push brings what", () => {
    const does = ([p, q]: readonly [number, number]) => [-30 * p + 8 * q, 5 * p + 60 * q] as const;
    const sense = createHandSense(0.01);
    for (let nudge = sense.nudge(); nudge; nudge = sense.nudge()) sense.learn(nudge, does(nudge));
    const [x, y] = does(sense.pushFor([3, -4]));
    expect(x).toBeCloseTo(3, 9);
    expect(y).toBeCloseTo(-4, 9);
  });

  test("nudges again where the tube had not moved yet, and never pushes nowhere", () => {
    const sense = createHandSense(0.01);
    sense.learn(sense.nudge()!, [0, 0]);
    expect(sense.nudge()).toEqual([0.01, 0]);
    sense.learn([0.01, 0], [-0.3, 0.05]);
    sense.learn([0, 0.01], [0, 0]);
    expect(sense.nudge()).toEqual([0, 0.01]);
    sense.learn([0, 0.01], [0.08, 0.6]);
    expect(sense.pushFor([1, 1]).every(Number.isFinite)).toBe(true);
  });
});

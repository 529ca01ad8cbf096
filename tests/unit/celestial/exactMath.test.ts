import { describe, expect, it } from "vitest";
import {
  exactAcos,
  exactAsin,
  exactAtan2,
  exactCircle,
  exactCos,
  exactExp,
  exactHypot3,
  exactLog,
  exactPow10,
  exactSin,
  exactTan,
  roundHalfUp,
} from "#core/celestial/exactMath.ts";
import { exactMathGolden } from "#core/celestial/golden.ts";

const ARGUMENTS = 20_000;

/** The same arguments in every run, evenly over [low, high). */
function* seeded(low: number, high: number): Generator<number> {
  let state = 12345;
  for (let i = 0; i < ARGUMENTS; i++) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    yield low + ((high - low) * state) / 4294967296;
  }
}

function worst(low: number, high: number, deviation: (x: number) => number): number {
  let most = 0;
  for (const x of seeded(low, high)) most = Math.max(most, deviation(x));
  return most;
}

it("a circle has the very bits of cosine and sine", () => {
  const place = [0, 0];
  for (const x of seeded(-20, 20)) {
    exactCircle(x, 0.7, place);
    expect(place[0] === 0.7 * exactCos(x) && place[1] === 0.7 * exactSin(x), `at ${x}`).toBe(true);
  }
});

describe("against the engine's own functions, themselves good to 1 ulp", () => {
  it.each([
    ["sin", exactSin, Math.sin, -1e4, 1e4, 2.3e-16],
    ["sin, far out", exactSin, Math.sin, -1e6, 1e6, 2.3e-16],
    ["cos", exactCos, Math.cos, -1e4, 1e4, 2.3e-16],
    ["asin", exactAsin, Math.asin, -1, 1, 2.3e-16],
    ["acos", exactAcos, Math.acos, -1, 1, 4.5e-16],
  ] as const)("%s is off by less than stated", (_, ours, theirs, low, high, tolerance) => {
    expect(worst(low, high, (x) => Math.abs(ours(x) - theirs(x)))).toBeLessThan(tolerance);
  });

  it.each([
    ["sin, small", exactSin, Math.sin, -1, 1, 2.3e-16],
    ["tan", exactTan, Math.tan, -1.5, 1.5, 5e-16],
    ["exp", exactExp, Math.exp, -700, 700, 2.3e-16],
    ["log", exactLog, Math.log, 1e-3, 1e3, 2.3e-16],
    ["pow10", exactPow10, (x: number) => 10 ** x, -300, 300, 4.5e-16],
  ] as const)("%s is off by less than stated, relative", (_, ours, theirs, low, high, tolerance) => {
    expect(worst(low, high, (x) => Math.abs(ours(x) / theirs(x) - 1))).toBeLessThan(tolerance);
  });

  it("atan2 is right all round the circle and over many sizes", () => {
    const deviation = (x: number) => {
      const [y, z] = [Math.sin(x) * 10 ** (x % 20), Math.cos(x) * 10 ** (x % 17)];
      return Math.abs(exactAtan2(y, z) - Math.atan2(y, z));
    };
    expect(worst(-1000, 1000, deviation)).toBeLessThan(4.5e-16);
  });
});

describe("known values", () => {
  it.each([
    ["sin 355, next to a multiple of pi", exactSin(355), -3.0144353359488447e-5, 1e-20],
    ["cos pi/2 as stored", exactCos(Math.PI / 2), 6.123233995736766e-17, 1e-32],
    ["sin 1e4", exactSin(1e4), -0.30561438888825215, 1e-16],
    ["e", exactExp(1), Math.E, 4.5e-16],
    ["log 2", exactLog(2), Math.LN2, 0],
    ["log of the smallest number", exactLog(5e-324), -744.4400719213812, 2e-13],
    ["smallest power of e", exactExp(-745), 5e-324, 0],
    ["10^0.5", exactPow10(0.5), 3.1622776601683795, 4.5e-16],
    ["tan 1", exactTan(1), 1.5574077246549023, 2.3e-16],
    ["3, 4, 12", exactHypot3(3, 4, 12), 13, 0],
  ])("%s", (_, value, known, tolerance) => {
    expect(Math.abs(value - known)).toBeLessThanOrEqual(tolerance);
  });

  it("gives whole powers of ten exactly", () => {
    for (let k = 0; k <= 22; k++)
      expect([exactPow10(k), exactPow10(-k)]).toEqual([Number(`1e${k}`), Number(`1e-${k}`)]);
  });
});

describe("edges", () => {
  const { NaN: nan, POSITIVE_INFINITY: inf } = Number;

  it("keeps signed zeros and quadrants of atan2 as Math.atan2 does", () => {
    const ends = [0, -0, 1, -1, inf, -inf, 1e-320, -1e300];
    for (const y of ends)
      for (const x of ends) expect(exactAtan2(y, x), `${y}, ${x}`).toBeCloseTo(Math.atan2(y, x), 15);
    expect(Object.is(exactAtan2(-0, 1), -0)).toBe(true);
    expect(exactAtan2(-0, -1)).toBe(-Math.PI);
  });

  it("gives NaN where there is no value", () => {
    for (const value of [
      exactSin(inf),
      exactCos(nan),
      exactAsin(1.1),
      exactAcos(-1.1),
      exactLog(-1),
      exactExp(nan),
      exactAtan2(nan, 1),
      exactAtan2(1, nan),
    ]) {
      expect(value).toBeNaN();
    }
    expect(exactPow10(nan)).toBeNaN();
  });

  it("reaches the ends of the range", () => {
    expect([exactExp(1000), exactExp(-1000), exactExp(-inf), exactExp(0)]).toEqual([inf, 0, 0, 1]);
    expect([exactPow10(400), exactPow10(-400)]).toEqual([inf, 0]);
    expect([exactLog(0), exactLog(inf), exactLog(1)]).toEqual([-inf, inf, 0]);
    expect([exactAsin(1), exactAcos(1), exactAcos(-1)]).toEqual([Math.PI / 2, 0, Math.PI]);
    expect(exactExp(709.7)).toBeGreaterThan(1e308);
    expect(exactPow10(308.25) / 1e308).toBeCloseTo(10 ** 0.25, 12);
  });

  it("rounds halves upward and gives no negative zero", () => {
    expect([roundHalfUp(0.5), roundHalfUp(-0.5), roundHalfUp(-1.5), roundHalfUp(2.4)]).toEqual([1, 0, -1, 2]);
    expect(Object.is(roundHalfUp(-0.2), 0)).toBe(true);
  });
});

it("gives the golden bits", () => {
  // 120,000 results. Another value here means that practice skies, compiled attempts and scores change: raise their versions.
  expect(exactMathGolden()).toBe(3995133180);
});

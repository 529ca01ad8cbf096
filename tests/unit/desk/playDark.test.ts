import { afterEach, describe, expect, it } from "vitest";
import { zenithConditions } from "#core/eye/conditions.ts";
import { costsOf } from "#core/eye/costs.ts";
import { nakedLimitMag } from "#core/eye/threshold.ts";
import { gearById } from "#core/optics/gear.ts";
import { createDark } from "../../../src/desk/play/dark.ts";
import { darkOn } from "../../../src/desk/play/darkOn.ts";
import { limitShares } from "../../../src/desk/play/limits.ts";

const SKY_MU = 21.5;
/** A light went on at the start and out again at once. */
function dazzled(skyMu = SKY_MU) {
  const dark = createDark(() => skyMu);
  dark.light(true, 0);
  dark.light(false, 0);
  return dark;
}
afterEach(() => {
  darkOn.value = true;
});

describe("an eye in play", () => {
  it("begins adapted, and lacks nothing", () => {
    const dark = createDark(() => SKY_MU);
    expect(dark.lackMag(0)).toBe(0);
    expect(dark.lackMag(60_000)).toBe(0);
    expect(dark.moves).toBe(false);
  });
  it("recovers by the model, a minute in each second", () => {
    // Naked-eye limits at sky 21.5 so many minutes after a light without a bleach (the model's own figures, worked out apart
    // to a tenth or better): cones first, then rods.
    const table = [
      [8, 4.3],
      [10, 4.6],
      [12, 5.8],
      [15, 6.06],
    ] as const;
    for (const [minutes, limitMag] of table) {
      const limit = nakedLimitMag(SKY_MU, 2) - dazzled().lackMag(1000 * minutes);
      expect(Math.abs(limit - limitMag), `${minutes} min`).toBeLessThan(0.06);
    }
    const lackAt = (seconds: number) => dazzled().lackMag(1000 * seconds);
    for (let seconds = 1; seconds <= 20; seconds++) expect(lackAt(seconds)).toBeLessThanOrEqual(lackAt(seconds - 1));
  });
  it("is never dazzled for longer than a quarter of a minute, under any sky, and comes to a stand", () => {
    for (let mu = 16; mu <= 22; mu += 0.5) {
      const dark = dazzled(mu);
      expect(dark.moves).toBe(true);
      expect(dark.lackMag(15_000)).toBe(0);
      expect(dark.moves).toBe(false);
    }
  });
  it("lacks most while the light is on, and recovers from when it goes out", () => {
    const dark = createDark(() => SKY_MU);
    dark.light(true, 1000);
    const most = dark.lackMag(1000);
    expect(most).toBeGreaterThan(4);
    expect(dark.lackMag(60_000)).toBe(most);
    expect(dark.moves).toBe(false);
    dark.light(false, 60_000);
    expect(dark.lackMag(60_000)).toBe(most);
    expect(dark.lackMag(70_000)).toBe(dazzled().lackMag(10_000));
  });
  it("is left alone where the reader wants that", () => {
    const dark = dazzled();
    darkOn.value = false;
    expect(dark.lackMag(0)).toBe(0);
    expect(dark.moves).toBe(false);
  });
});

describe("the bar of what limits the view", () => {
  const costs = costsOf(gearById("finder-9x50"), zenithConditions(20.8), [0, 0, 1]);
  it("tells of the light that the eye was in, for as long as it matters", () => {
    const causes = (lackMag: number) => limitShares(costs, lackMag).map(({ cause }) => cause);
    expect(causes(0)).not.toContain("light");
    expect(causes(0.02)).not.toContain("light");
    expect(causes(1.8).at(-1)).toBe("light");
    expect(limitShares(costs, 1.8).at(-1)?.mag).toBe(1.8);
  });
});

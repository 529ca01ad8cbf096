import { describe, expect, it } from "vitest";
import type { Hop } from "../../../src/desk/play/hop.ts";
import { animate } from "../../../src/desk/play/motions.ts";
import { createPicture } from "../../../src/desk/play/picture.ts";

const CHANGED_MS = 1000;
/** As much of a hop as its motions look at. */
const hopWith = (gear: string) =>
  ({
    picture: createPicture(),
    motion: { changedMs: CHANGED_MS, rightMs: 0, proofMs: 0 },
    signals: { limitMag: { value: 9.6 } },
    eye: null,
    attempt: { session: { state: { gear } } },
  }) as unknown as Hop;
const momentAt = (hop: Hop, ms: number, still = false) => {
  const moves = animate(hop, CHANGED_MS + ms, still);
  return { moves, defocus: hop.picture.defocus ?? 0, light: hop.picture.light };
};

describe("a change of instrument", () => {
  it("brings a glass out of black and into focus, and then rests", () => {
    const hop = hopWith("finder-9x50");
    const times = [0, 100, 200, 400, 600, 799];
    const seen = times.map((ms) => momentAt(hop, ms));
    expect(seen[0]).toEqual({ moves: true, defocus: 3, light: 0 });
    for (let i = 1; i < seen.length; i++) {
      expect(seen[i]!.defocus).toBeLessThan(seen[i - 1]!.defocus);
      expect(seen[i]!.light).toBeGreaterThanOrEqual(seen[i - 1]!.light);
      expect(seen[i]!.moves).toBe(true);
    }
    expect(momentAt(hop, 800)).toEqual({ moves: false, defocus: 0, light: 1 });
  });
  it("needs no focus where there is no glass", () => {
    expect(momentAt(hopWith("eye"), 100).defocus).toBe(0);
    expect(momentAt(hopWith("eye"), 420)).toEqual({ moves: false, defocus: 0, light: 1 });
  });
  it("is there at once where motion is reduced", () => {
    expect(momentAt(hopWith("finder-9x50"), 0, true)).toEqual({ moves: false, defocus: 0, light: 1 });
  });
});

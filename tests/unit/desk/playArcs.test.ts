import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  arcPath,
  arcText,
  bandBox,
  bandPath,
  engravedWidthPx,
  fittedSizePx,
  onCircle,
  runsBack,
} from "../../../src/desk/play/arcs.ts";

describe("places on a circle", () => {
  it("turn clockwise from the top, y down", () => {
    const at = [0, 90, 180, 270].map((deg) => onCircle(10, deg));
    const wanted = [
      { x: 0, y: -10 },
      { x: 10, y: 0 },
      { x: 0, y: 10 },
      { x: -10, y: 0 },
    ];
    at.forEach(({ x, y }, i) => {
      expect(x).toBeCloseTo(wanted[i]!.x, 10);
      expect(y).toBeCloseTo(wanted[i]!.y, 10);
    });
  });
});

describe("paths", () => {
  it("run clockwise to a larger angle and back to a smaller one", () => {
    expect(arcPath(10, 0, 90)).toBe("M0.00 -10.00A10.00 10.00 0 0 1 10.00 -0.00");
    expect(arcPath(10, 90, 0)).toBe("M10.00 -0.00A10.00 10.00 0 0 0 0.00 -10.00");
    expect(arcPath(10, -100, 100)).toContain("A10.00 10.00 0 1 1 ");
  });
  it("of a band go out along the rim and back along its inside", () => {
    const path = bandPath(8, 10, 0, 90);
    expect(path.startsWith("M0.00 -10.00A10.00")).toBe(true);
    expect(path).toContain("L8.00 -0.00A8.00");
    expect(path.endsWith("Z")).toBe(true);
  });
});

describe("boxes of bands", () => {
  it("hold every place of the band, and no more than a px beyond the farthest", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 400, noNaN: true }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.double({ min: -180, max: 300, noNaN: true }),
        fc.double({ min: 1, max: 359, noNaN: true }),
        (inner, width, from, span) => {
          const box = bandBox(inner, inner + width, from, from + span);
          const places = Array.from({ length: 361 }, (_, i) => from + (span * i) / 360).flatMap((deg) => [
            onCircle(inner, deg),
            onCircle(inner + width, deg),
          ]);
          const [xs, ys] = [places.map(({ x }) => x), places.map(({ y }) => y)];
          expect(Math.min(...xs)).toBeGreaterThanOrEqual(box.x - 1e-6);
          expect(Math.min(...ys)).toBeGreaterThanOrEqual(box.y - 1e-6);
          expect(Math.max(...xs)).toBeLessThanOrEqual(box.x + box.width + 1e-6);
          expect(Math.max(...ys)).toBeLessThanOrEqual(box.y + box.height + 1e-6);
          expect(box.width).toBeLessThanOrEqual(Math.max(...xs) - Math.min(...xs) + 2.1);
        },
      ),
      { numRuns: 60 },
    );
  });
  it("grow by a margin on each side", () => {
    const bare = bandBox(100, 120, 30, 60);
    const wide = bandBox(100, 120, 30, 60, 4);
    expect(wide.width - bare.width).toBe(8);
    expect(wide.y).toBe(bare.y - 4);
  });
});

describe("text along an arc", () => {
  it("runs the other way below the horizontal alone", () => {
    expect([0, 90, 237, 300, 252].map(runsBack)).toEqual([false, false, true, false, false]);
    expect([146, 180, 213, -180].map(runsBack)).toEqual([true, true, true, true]);
  });
  it("reads from left to right wherever it stands", () => {
    for (const atDeg of [0, 40, 146, 180, 237, 320]) {
      const [, x1, x2] = /^M(\S+) .* (\S+) \S+$/.exec(arcText("WORDS", 300, atDeg, 15).path)!;
      expect(Number(x2)).toBeGreaterThan(Number(x1));
    }
  });
  it("is made smaller to fit, never larger", () => {
    expect(fittedSizePx("THIS IS IT", 1000, 17)).toBe(17);
    const size = fittedSizePx("THE STAR IS IN THE MIDDLE", 200, 17);
    expect(size).toBeLessThan(17);
    expect(engravedWidthPx("THE STAR IS IN THE MIDDLE", size)).toBeCloseTo(200, 6);
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { layoutKind, type PlayLayout, playLayout } from "../../../src/desk/play/geometry.ts";
import { ladderScale } from "../../../src/desk/play/ladderRadii.ts";

const outerOf = ({ barrel }: PlayLayout) => barrel.fieldPx + barrel.rimPx;

describe("the table of 1440 by 900", () => {
  const layout = playLayout(1440, 900);
  it("has barrel, ladder, sheet and words in their places", () => {
    expect(layout.kind).toBe("wide");
    expect(layout.barrel).toEqual({ x: 452, y: 450, fieldPx: 372, rimPx: 52 });
    expect(layout.ladder).toEqual({ x: 919, y: 748, r: 124, half: false });
    expect(layout.sheet).toEqual({ x: 978, y: 12, width: 424, height: 520 });
    expect(layout.words.x).toBe(1070);
    expect(layout.words.width).toBe(340);
  });
  it("keeps barrel and ladder apart by 6 to 12 px", () => {
    const ladder = layout.ladder!;
    const gap = Math.hypot(ladder.x - layout.barrel.x, ladder.y - layout.barrel.y) - ladder.r - outerOf(layout);
    expect(Math.round(gap)).toBeGreaterThanOrEqual(6);
    expect(Math.round(gap)).toBeLessThanOrEqual(12);
  });
});

describe("a phone of 390 by 844", () => {
  it("has the field above and half a ladder under the thumb", () => {
    const layout = playLayout(390, 844);
    expect(layout.kind).toBe("phone");
    expect(layout.barrel).toEqual({ x: 195, y: 248, fieldPx: 145, rimPx: 44 });
    expect(layout.ladder).toEqual({ x: 195, y: 852, r: 196, half: true });
  });
  it("lets the field look in at the sheet's lower left", () => {
    expect(playLayout(390, 844, "sheet").barrel).toEqual({ x: 14, y: 700, fieldPx: 92, rimPx: 34 });
  });
  it("gives the ladder's room to words that need it", () => {
    const roomy = playLayout(390, 844, "field", "rows");
    expect(roomy.ladder).toBeNull();
    expect(roomy.words.height).toBeGreaterThan(playLayout(390, 844).words.height + 100);
  });
});

describe("kinds of layout", () => {
  it("follow the window", () => {
    expect(layoutKind(1440, 900)).toBe("wide");
    expect(layoutKind(1920, 1080)).toBe("wide");
    expect(layoutKind(1024, 768)).toBe("column");
    expect(layoutKind(768, 1024)).toBe("tall");
    expect(layoutKind(390, 844)).toBe("phone");
    expect(layoutKind(844, 390)).toBe("lying");
    expect(layoutKind(720, 450)).toBe("lying");
  });
});

describe("any window", () => {
  const windows = fc.tuple(fc.integer({ min: 320, max: 2560 }), fc.integer({ min: 320, max: 1600 }));
  it("holds the whole barrel, words of a width that can be read, and lettering that is not small", () => {
    fc.assert(
      fc.property(windows, ([width, height]) => {
        const layout = playLayout(width, height);
        const { barrel, words } = layout;
        const outer = outerOf(layout);
        expect(barrel.x - outer).toBeGreaterThanOrEqual(-1);
        expect(barrel.x + outer).toBeLessThanOrEqual(width + 1);
        expect(barrel.y - outer).toBeGreaterThanOrEqual(-1);
        expect(barrel.y + outer).toBeLessThanOrEqual(height + 1);
        expect(barrel.fieldPx).toBeGreaterThan(40);
        expect(words.x).toBeGreaterThanOrEqual(0);
        expect(words.x + words.width).toBeLessThanOrEqual(width);
        expect(words.width).toBeGreaterThanOrEqual(120);
        expect(layout.type).toBeGreaterThanOrEqual(0.85);
      }),
      { numRuns: 500 },
    );
  });
  it("keeps words off the barrel", () => {
    fc.assert(
      fc.property(windows, ([width, height]) => {
        const layout = playLayout(width, height);
        const { barrel, words } = layout;
        const dx = Math.max(words.x - barrel.x, barrel.x - words.x - words.width, 0);
        const dy = Math.max(words.y - barrel.y, barrel.y - words.y - words.height, 0);
        expect(Math.hypot(dx, dy)).toBeGreaterThanOrEqual(outerOf(layout) - 1);
      }),
      { numRuns: 500 },
    );
  });
});

describe("the ladder's scale", () => {
  const scale = ladderScale([1.1, 5.3, 50, 180], 124);
  it("is logarithmic outside the smallest ring and linear inside", () => {
    const inner = 0.3 * 124;
    expect(scale.radiiPx[0]).toBeCloseTo(inner, 6);
    expect(scale.radiiPx[3]).toBeCloseTo(124, 6);
    const wanted = inner + ((124 - inner) * Math.log10(50 / 1.1)) / Math.log10(180 / 1.1);
    expect(scale.radiiPx[2]).toBeCloseTo(wanted, 6);
    expect(scale.radiusPx(0.55)).toBeCloseTo(inner / 2, 6);
    expect(scale.toScale).toBe(true);
  });
  it("gives equal gaps where rings would touch, and says so", () => {
    const close = ladderScale([1, 1.1, 5.3, 180], 124);
    expect(close.toScale).toBe(false);
    const gaps = close.radiiPx.slice(1).map((radius, i) => radius - close.radiiPx[i]!);
    for (const gap of gaps) expect(gap).toBeCloseTo(gaps[0]!, 6);
  });
  it("makes one instrument the whole circle", () => {
    expect(ladderScale([6.5], 124).radiiPx).toEqual([124]);
  });
});

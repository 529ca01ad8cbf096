import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DEG, dirFromRadec, offsetDir } from "#core/celestial/vector.ts";
import { dotRadiusPx } from "#core/chart/content.ts";
import { boxesMeet, letterHeightPx, roughWidth, textBox } from "#core/chart/labels.ts";
import { layLetters } from "#core/chart/letters.ts";
import { chartMarks } from "#core/chart/marks.ts";
import type { ChartPage } from "#core/chart/page.ts";
import { PLAIN_VIEW, pageFromScreen, type SheetView, screenFromPage } from "#core/chart/sheetView.ts";
import type { TextMark } from "#core/chart/types.ts";
import type { StarBlock } from "#core/seams/index.ts";

const centre = dirFromRadec(300 * DEG, 22 * DEG);
const page: ChartPage = { centre, widthPx: 424, heightPx: 520, marginPx: 18, pxPerDeg: 34, limitMag: 8 };
const stars = Array.from({ length: 60 }, (_, i) => ({
  dir: offsetDir(centre, i * 2.4, (0.4 + ((i * 7) % 60) / 10) * DEG),
  magV: 2 + (i % 11) / 2,
  label: i % 3 ? String(10 + i) : "αβγδ"[i % 4]!,
}));
const block: StarBlock = {
  key: { order: 3, pixel: 0, layer: 0 },
  count: stars.length,
  dirs: Float32Array.from([...stars].sort((a, b) => a.magV - b.magV).flatMap(({ dir }) => [...dir])),
  milliMag: Int16Array.from(stars, ({ magV }) => magV * 1000).sort(),
  colourBV: new Float32Array(stars.length),
  invented: false,
};
const marks = chartMarks(page, {
  blocks: [block],
  names: stars,
  segments: [],
  figures: [{ name: "Heron", centre: offsetDir(centre, 1, 3 * DEG) }],
  objects: [],
  anchor: stars[0]!.dir,
  target: { dir: offsetDir(centre, 2, 2 * DEG), object: null },
  ways: [],
  words: { anchor: "anchor", target: "target" },
});
const options = { measure: roughWidth, pxPerPagePx: 1, typeScale: 1, lit: null };
const view: fc.Arbitrary<SheetView> = fc.record({
  turnRad: fc.double({ min: -7, max: 7, noNaN: true }),
  flipped: fc.boolean(),
  scale: fc.constantFrom(1, 1, 2, 3.5),
  panX: fc.constant(0),
  panY: fc.constant(0),
});
const boxOf = ({ x, y, align, style, text }: TextMark) =>
  textBox(x, y, align, roughWidth(style, text), letterHeightPx(style));

describe("lettering of a sheet however it lies", () => {
  it("never meets other lettering or a larger dot, and stays within the frame", () => {
    fc.assert(
      fc.property(view, (lies) => {
        const texts = layLetters(page, marks, lies, options);
        const boxes = texts.map(boxOf);
        boxes.forEach((box, i) => {
          for (const other of boxes.slice(i + 1)) expect(boxesMeet(box, other)).toBe(false);
        });
        for (const { x, y } of marks.filter((mark) => mark.kind === "dot").filter(({ r }) => r > 1.4)) {
          const dot = screenFromPage(lies, 1, x, y);
          for (const { left, right, top, bottom } of boxes)
            expect(dot.x > left && dot.x < right && dot.y > top && dot.y < bottom).toBe(false);
        }
        const onPaper = { ...lies, scale: 1 };
        for (const { left, right, top, bottom } of boxes)
          for (const [x, y] of [
            [left, top],
            [right, top],
            [left, bottom],
            [right, bottom],
          ] as const) {
            const at = pageFromScreen(onPaper, 1, x, y);
            expect(Math.abs(at.x) <= 194 && Math.abs(at.y) <= 242).toBe(true);
          }
      }),
      { numRuns: 60 },
    );
  });
  it("puts each name beside its own star", () => {
    const lies = { ...PLAIN_VIEW, flipped: true, turnRad: -21 * DEG };
    const names = layLetters(page, marks, lies, options).filter(({ style }) => style === "number");
    expect(names.length).toBeGreaterThan(15);
    for (const name of names) {
      const box = boxOf(name);
      const dx = Math.max(box.left - name.of.x, 0, name.of.x - box.right);
      const dy = Math.max(box.top - name.of.y, 0, name.of.y - box.bottom);
      expect(Math.hypot(dx, dy)).toBeLessThan(dotRadiusPx(2, 8) + 8);
    }
  });
  it("gives the words of the hop a place before all names", () => {
    const words = (lies: SheetView) =>
      layLetters(page, marks, lies, options)
        .filter(({ style }) => style === "word")
        .map(({ text }) => text);
    for (let turn = 0; turn < 6; turn++)
      expect(words({ ...PLAIN_VIEW, turnRad: turn, flipped: turn % 2 === 1 })).toEqual(["anchor", "target"]);
  });
  it("writes the figures of the net at the edges that lie at the right and below, from in front and from behind", () => {
    for (const flipped of [false, true]) {
      const figures = layLetters(page, marks, { ...PLAIN_VIEW, flipped }, options).filter(
        ({ style }) => style === "gridFigure",
      );
      const decs = figures.filter(({ text }) => text.startsWith("+"));
      expect(decs.length).toBeGreaterThanOrEqual(4);
      for (const { x } of decs) expect(x).toBeCloseTo(175, 6);
      expect(figures.filter(({ text }) => text.includes("h")).length).toBeGreaterThanOrEqual(3);
    }
  });
  it("leaves out what the lamp does not light", () => {
    const lit = { x: 0, y: 0, radiusPx: 130 };
    const texts = layLetters(page, marks, PLAIN_VIEW, { ...options, lit });
    expect(texts.length).toBeGreaterThan(3);
    for (const text of texts) {
      const { left, right, top, bottom } = boxOf(text);
      expect(Math.hypot((left + right) / 2, (top + bottom) / 2)).toBeLessThanOrEqual(130);
    }
  });
  it("puts the hand's letters wherever they stand, lit or not", () => {
    const lit = { x: 0, y: 0, radiusPx: 60 };
    const letter = { x: 150, y: -180, r: 6, style: "word", text: "B" } as const;
    const laidAs = (tone?: "hand") =>
      layLetters(page, marks, PLAIN_VIEW, { ...options, lit }, [tone ? { ...letter, tone } : letter]);
    expect(laidAs().some(({ text }) => text === "B")).toBe(false);
    expect(laidAs("hand").find(({ text }) => text === "B")).toMatchObject({ tone: "hand", placed: true });
  });
});

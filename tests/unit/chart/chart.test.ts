import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DEG, dirFromRadec, offsetDir, separationRad } from "#core/celestial/vector.ts";
import { dotRadiusPx } from "#core/chart/content.ts";
import { barDeg } from "#core/chart/frame.ts";
import { chartMarks } from "#core/chart/marks.ts";
import { type ChartPage, projectionOf, ringRadiusPx } from "#core/chart/page.ts";
import { marksToSvg } from "#core/chart/svg.ts";
import type { Dir, StarBlock } from "#core/seams/index.ts";

const at = (raDeg: number, decDeg: number) => dirFromRadec(raDeg * DEG, decDeg * DEG);
const page = (centre: Dir): ChartPage => ({
  centre,
  widthPx: 424,
  heightPx: 520,
  marginPx: 18,
  pxPerDeg: 34,
  limitMag: 8,
});
const block = (stars: readonly (readonly [Dir, number])[], invented = false): StarBlock => ({
  key: { order: 3, pixel: 0, layer: 0 },
  count: stars.length,
  dirs: Float32Array.from(stars.flatMap(([dir]) => [...dir])),
  milliMag: Int16Array.from(stars, ([, magV]) => magV * 1000),
  colourBV: new Float32Array(stars.length),
  invented,
});
const content = (blocks: readonly StarBlock[]) => ({
  blocks,
  names: [],
  segments: [],
  figures: [],
  objects: [],
  anchor: null,
  target: null,
  ways: [],
  words: { anchor: "anchor", target: "target" },
});

describe("a page", () => {
  const anywhere = fc.tuple(
    fc.double({ min: 0, max: 360, noNaN: true }),
    fc.double({ min: -89, max: 89, noNaN: true }),
  );
  it("has north up and east to the left", () => {
    const { project } = projectionOf(page(at(300, 20)));
    const out = { x: 0, y: 0 };
    project(offsetDir(at(300, 20), 0, 2 * DEG), out);
    expect([Math.round(out.x), out.y < -60]).toEqual([0, true]);
    project(offsetDir(at(300, 20), 90 * DEG, 2 * DEG), out);
    expect([out.x < -60, Math.round(out.y)]).toEqual([true, 0]);
  });
  it("gives back the direction of every place on the paper", () => {
    fc.assert(
      fc.property(
        anywhere,
        fc.integer({ min: -212, max: 212 }),
        fc.integer({ min: -260, max: 260 }),
        ([ra, dec], x, y) => {
          const projection = projectionOf(page(at(ra, dec)));
          const out = { x: 0, y: 0 };
          expect(projection.project(projection.unproject(x, y), out)).toBe(true);
          expect(Math.hypot(out.x - x, out.y - y)).toBeLessThan(1e-6);
        },
      ),
    );
  });
  it("draws a field's ring through the stars that stand at the field's edge", () => {
    const centre = at(83, -5);
    const projection = projectionOf(page(centre));
    const out = { x: 0, y: 0 };
    for (const angle of [0, 73, 201]) {
      projection.project(offsetDir(centre, angle * DEG, 2.65 * DEG), out);
      expect(Math.hypot(out.x, out.y)).toBeCloseTo(ringRadiusPx(page(centre), 5.3), 3);
    }
  });
  it("has a frame whose bar is a degree at the scale of a finder", () => {
    expect(barDeg(page(at(0, 0)))).toBe(1);
    const bars = chartMarks(page(at(0, 0)), content([])).filter((mark) => mark.kind === "line" && mark.style === "bar");
    const lengths = bars.map((bar) =>
      bar.kind === "line" ? Math.hypot(bar.points[2]! - bar.points[0]!, bar.points[3]! - bar.points[1]!) : 0,
    );
    expect(Math.max(...lengths)).toBeCloseTo(34, 6);
  });
});

describe("what is printed", () => {
  it("a star one magnitude brighter has a dot 1.24 px wider", () => {
    expect(2 * dotRadiusPx(4, 8) - 2 * dotRadiusPx(5, 8)).toBeCloseTo(1.24, 9);
    expect(dotRadiusPx(8, 8)).toBeCloseTo(0.72, 9);
  });
  it("stars down to the page's limit, the faint before the bright, and none beyond", () => {
    const centre = at(120, 10);
    const stars = [3, 5.5, 7.9, 8.1].map((magV, i) => [offsetDir(centre, i, (i + 0.5) * DEG), magV] as const);
    const dots = chartMarks(page(centre), content([block(stars)])).filter((mark) => mark.kind === "dot");
    expect(dots.map(({ magV }) => magV)).toEqual([7.9, 5.5, 3]);
  });
  it("a pair that the naked eye does not part as one dot with one name on a page for it, as two on a hop's page", () => {
    const centre = at(120, 10);
    const pair = [
      { dir: centre, magV: 4, label: "α" },
      { dir: offsetDir(centre, 0, (2.5 / 60) * DEG), magV: 5, label: "β" },
    ];
    const printed = (byEye: true | undefined) => {
      const own = page(centre);
      const what = { ...content([block(pair.map(({ dir, magV }) => [dir, magV]))]), names: pair };
      const marks = chartMarks(byEye ? { ...own, byEye } : own, what);
      return {
        dots: marks.flatMap((mark) => (mark.kind === "dot" ? mark.magV : [])),
        names: marks.flatMap((mark) => (mark.kind === "text" && mark.style === "greek" ? mark.text : [])),
      };
    };
    expect(printed(undefined)).toEqual({ dots: [5, 4], names: ["α", "β"] });
    // 4 - 2.5 log10(1 + 10^-0.4).
    expect(printed(true)).toEqual({ dots: [3.636], names: ["α"] });
  });
  it("never a star that the generator filled in", () => {
    const centre = at(120, 10);
    const marks = chartMarks(page(centre), content([block([[centre, 4]], true)]));
    expect(marks.some(({ kind }) => kind === "dot")).toBe(false);
  });
  it("lettering that stays on the page and off the bright stars and other lettering", () => {
    const centre = at(120, 10);
    const stars = Array.from(
      { length: 30 },
      (_, i) => [offsetDir(centre, i * 2.4, (0.5 + (i % 7)) * DEG), 3 + (i % 4)] as const,
    );
    const names = stars.map(([dir, magV], i) => ({ dir, magV, label: String(10 + i) }));
    const marks = chartMarks(page(centre), { ...content([block(stars)]), names });
    const texts = marks.filter((mark) => mark.kind === "text" && mark.style === "number" && mark.placed);
    expect(texts.length).toBeGreaterThan(12);
    const dots = marks.filter((mark) => mark.kind === "dot");
    for (const text of texts)
      for (const dot of dots)
        if (text.kind === "text" && dot.kind === "dot")
          expect(Math.hypot(text.x - dot.x, text.y - dot.y)).toBeGreaterThan(1);
    const places = texts.map((text) => (text.kind === "text" ? `${text.x} ${text.y}` : ""));
    expect(new Set(places).size).toBe(places.length);
  });
  it("a net whose parallels carry their declination where it is true", () => {
    const centre = at(300, 20);
    const { unproject } = projectionOf(page(centre));
    const lines = chartMarks(page(centre), content([])).filter((mark) => mark.kind === "line" && mark.figure);
    const parallels = lines.filter((mark) => mark.kind === "line" && mark.figure!.edge === "right");
    expect(parallels.length).toBeGreaterThanOrEqual(3);
    for (const mark of parallels) {
      if (mark.kind !== "line") continue;
      const decDeg = Number(mark.figure!.text.replace("−", "-").replace("°", ""));
      for (let i = 0; i < mark.points.length; i += 2)
        expect(Math.asin(unproject(mark.points[i]!, mark.points[i + 1]!)[2]) / DEG).toBeCloseTo(decDeg, 6);
    }
  });
  it("a net that reaches the frame", () => {
    const lines = chartMarks(page(at(300, 20)), content([])).filter((mark) => mark.kind === "line" && mark.figure);
    for (const mark of lines) {
      if (mark.kind !== "line") continue;
      for (const i of [0, mark.points.length - 2])
        expect(Math.min(194 - Math.abs(mark.points[i]!), 242 - Math.abs(mark.points[i + 1]!))).toBeCloseTo(0, 2);
    }
  });
  it("is well-formed SVG whose words cannot break out", () => {
    const centre = at(10, 10);
    const marks = chartMarks(page(centre), { ...content([]), anchor: centre, words: { anchor: "<b>&", target: "" } });
    const svg = marksToSvg(page(centre), marks, "A page");
    expect(svg).toContain("&lt;b&gt;&amp;");
    expect(svg).not.toContain("<b>");
  });
  it("a page about the pole holds its stars in place", () => {
    const centre = at(40, 89.2);
    const projection = projectionOf(page(centre));
    const star = at(250, 87.5);
    const out = { x: 0, y: 0 };
    projection.project(star, out);
    expect(separationRad(projection.unproject(out.x, out.y), star)).toBeLessThan(1e-9);
    expect(() => chartMarks(page(centre), content([]))).not.toThrow();
  });
});

describe("names of a pair", () => {
  const named = (dir: Dir, magV: number, proper: string) => ({ dir, magV, proper, label: "α" });
  const printed = (apartArcmin: number) => {
    const middle = at(220, -60);
    const other = offsetDir(middle, 0, (apartArcmin / 60) * DEG);
    const names = [named(other, 1.3, "Second"), named(middle, 0, "First")];
    const marks = chartMarks(page(middle), { ...content([block([[middle, 0]])]), names });
    return marks.flatMap((mark) => (mark.kind === "text" && mark.style === "starName" ? [mark.text] : []));
  };
  it("is the brighter star's alone where both are one dot", () => {
    expect(printed(0.2)).toEqual(["First"]);
  });
  it("is each star's own where they stand apart", () => {
    expect(printed(60).sort()).toEqual(["First", "Second"]);
  });
});

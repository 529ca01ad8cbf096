import { describe, expect, it } from "vitest";
import { DEG, dirFromRadec, offsetDir } from "#core/celestial/vector.ts";
import { clockHour, describeSheet } from "#core/chart/describe.ts";
import { fieldRings, legendOf, rulerReading } from "#core/chart/legend.ts";
import { chartMarks } from "#core/chart/marks.ts";
import type { ChartPage } from "#core/chart/page.ts";
import { PLAIN_VIEW } from "#core/chart/sheetView.ts";
import type { SkyObject, StarBlock } from "#core/seams/index.ts";

const anchor = dirFromRadec(120 * DEG, 10 * DEG);
const page: ChartPage = { centre: anchor, widthPx: 424, heightPx: 520, marginPx: 18, pxPerDeg: 34, limitMag: 8 };
const north = offsetDir(anchor, 0, 2.65 * DEG);
const east = offsetDir(anchor, 90 * DEG, 4 * DEG);
const block: StarBlock = {
  key: { order: 3, pixel: 0, layer: 0 },
  count: 3,
  dirs: Float32Array.from([...anchor, ...east, ...offsetDir(anchor, 10 * DEG, 2.9 * DEG)]),
  milliMag: Int16Array.from([2600, 4100, 7000]),
  colourBV: new Float32Array(3),
  invented: false,
};
const cluster: SkyObject = {
  id: "cluster",
  names: ["the cluster"],
  kind: "openCluster",
  dir: north,
  magV: 6,
  majorArcmin: 20,
  minorArcmin: 20,
  axisDeg: 0,
  profile: "members",
  constellation: "",
  looks: "",
};
const marks = chartMarks(page, {
  blocks: [block],
  names: [{ dir: east, magV: 4.1, label: "12" }],
  segments: [],
  figures: [],
  objects: [],
  anchor,
  target: { dir: north, object: cluster },
  asterisms: [[anchor, east]],
  ways: [],
  words: { anchor: "anchor", target: "target" },
});

describe("a legend", () => {
  it("names only what the page uses", () => {
    const { dots, signs, lines, bar } = legendOf(page, marks);
    expect(dots.map(({ magV }) => magV)).toEqual([3, 4, 5, 6, 7, 8]);
    expect(signs).toEqual(["anchor", "openCluster"]);
    expect(lines).toEqual(["asterism"]);
    expect(bar).toEqual({ deg: 1, px: 34 });
  });
  it("has the rings of the fields that fit, widest first", () => {
    const rings = fieldRings(page, [{ fieldDeg: 1.1 }, { fieldDeg: 50 }, { fieldDeg: 5.3 }]);
    expect(rings.map(({ fieldDeg }) => fieldDeg)).toEqual([5.3, 1.1]);
    expect(rings[0]!.r).toBeCloseTo(90.1, 0);
  });
  it("reads distances in degrees and in fields", () => {
    const { deg, fields } = rulerReading(anchor, north, 5.3);
    expect(deg).toBeCloseTo(2.65, 9);
    expect(fields).toBeCloseTo(0.5, 9);
  });
});

describe("a sheet in words", () => {
  it("tells what is printed, nearest first, each by its way and distance from the anchor", () => {
    const told = describeSheet(page, marks, PLAIN_VIEW, 5.3);
    expect(told.map(({ what, name }) => [what, name])).toEqual([
      ["anchor", ""],
      ["target", ""],
      ["star", ""],
      ["star", "12"],
    ]);
    expect(told[1]).toMatchObject({ hour: 12, sign: "openCluster" });
    expect(told[1]!.fields).toBeCloseTo(0.5, 3);
    expect(told[3]).toMatchObject({ hour: 9, magV: 4.1 });
  });
  it("tells the ways as the sheet lies", () => {
    const behind = { ...PLAIN_VIEW, flipped: true };
    expect(describeSheet(page, marks, behind, 5.3).at(-1)!.hour).toBe(3);
    const upsideDown = { ...PLAIN_VIEW, turnRad: Math.PI };
    expect(describeSheet(page, marks, upsideDown, 5.3)[1]!.hour).toBe(6);
  });
  it("counts the hours of a clock", () => {
    expect([clockHour(0, -1), clockHour(1, 0), clockHour(0, 1), clockHour(-1, 0), clockHour(-0.1, -1)]).toEqual([
      12, 3, 6, 9, 12,
    ]);
  });
});

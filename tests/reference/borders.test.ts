import { describe, expect, test } from "vitest";
import { DEG, dot, separationRad } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { bordersWithin } from "#core/sky/boundaries/borderLines.ts";
import { COLUMNS, dirOfGrid, gridOfDir, ROWS } from "#core/sky/boundaries/grid.ts";
import { frameOfB1875, lookUpCell, traceBorders } from "#core/sky/boundaries/trace.ts";
import table from "../../shared/borders.json" with { type: "json" };

const { meridians, parallels, frame } = table;
const triples = (numbers: readonly number[]) =>
  Array.from({ length: numbers.length / 3 }, (_, i) => numbers.slice(3 * i, 3 * i + 3) as [number, number, number]);
const nameAt = lookUpCell();

/** Every line of one kind that a line of the other kind crosses, in order. */
const crossed = (lines: [number, number, number][], at: number) =>
  lines.filter(([, from, to]) => from <= at && at < to).map(([line]) => line);

describe("the table of borders against the look-up by place", () => {
  test("a line parts two constellations all along", () => {
    for (const [column, from, to] of triples(meridians))
      for (const row of [from, (from + to) >> 1, to - 1])
        expect(nameAt(column, row), `${column} ${row}`).not.toBe(nameAt((column + COLUMNS - 1) % COLUMNS, row));
    for (const [row, from, to] of triples(parallels))
      for (const column of [from, (from + to) >> 1, to - 1])
        expect(nameAt(column, row), `${column} ${row}`).not.toBe(nameAt(column, row - 1));
  });

  test("between two lines there is one constellation: along thirty parallels", () => {
    const lines = triples(meridians);
    for (let row = 143; row < ROWS; row += 288) {
      const edges = [...new Set([0, ...crossed(lines, row), COLUMNS])].sort((a, b) => a - b);
      edges.slice(1).forEach((to, i) => {
        const from = edges[i]!;
        const names = new Set<string>();
        for (let column = from; column < to; column += 24) names.add(nameAt(column, row));
        names.add(nameAt(to - 1, row));
        expect([...names], `row ${row}, columns ${from} to ${to}`).toHaveLength(1);
      });
    }
  });

  test("and along thirty meridians", () => {
    const lines = triples(parallels);
    for (let column = 287; column < COLUMNS; column += 576) {
      const edges = [...new Set([0, ...crossed(lines, column), ROWS])].sort((a, b) => a - b);
      edges.slice(1).forEach((to, i) => {
        const from = edges[i]!;
        const names = new Set<string>();
        for (let row = from; row < to; row += 24) names.add(nameAt(column, row));
        names.add(nameAt(column, to - 1));
        expect([...names], `column ${column}, rows ${from} to ${to}`).toHaveLength(1);
      });
    }
  });

  test("all 88 constellations touch a border", () => {
    const besideMeridians = triples(meridians).flatMap(([column, from, to]) =>
      [from, to - 1].flatMap((row) => [nameAt(column, row), nameAt((column + COLUMNS - 1) % COLUMNS, row)]),
    );
    const besideParallels = triples(parallels).flatMap(([row, from]) => [nameAt(from, row), nameAt(from, row - 1)]);
    expect(new Set([...besideMeridians, ...besideParallels]).size).toBe(88);
  });

  test("the frame is B1875's: it turns back and forth, and lies 1.6 degrees from ICRS at the equinox", () => {
    frameOfB1875().forEach((each, i) => {
      expect(frame[i]).toBeCloseTo(each, 9);
    });
    const dir = dirOfGrid(frame, 1234.5, 4321.25);
    const { column, row } = gridOfDir(frame, dir);
    expect(column).toBeCloseTo(1234.5, 6);
    expect(row).toBeCloseTo(4321.25, 6);
    // 125 years of 46.1" in right ascension and 20.0" in declination (precession of the IAU 1976, from memory).
    expect(separationRad(dirOfGrid(frame, 0, ROWS / 2), [1, 0, 0]) / DEG).toBeCloseTo(
      Math.hypot(125 * 46.1, 125 * 20.0) / 3600,
      1,
    );
  });
});

describe("lines to draw", () => {
  // Orion, Taurus, Gemini and Monoceros meet about here.
  const orion: Dir = [0, Math.cos(15 * DEG), Math.sin(15 * DEG)];

  test("of a circle: near it, points close to one another", () => {
    const lines = bordersWithin({ centre: orion, radiusRad: 12 * DEG });
    expect(lines.length).toBeGreaterThan(8);
    expect(lines.length).toBeLessThan(80);
    for (const points of lines) {
      const nearest = Math.max(...points.map((point) => dot(point, orion)));
      expect(nearest).toBeGreaterThan(Math.cos(45 * DEG));
      points.slice(1).forEach((to, i) => {
        expect(separationRad(points[i]!, to) / DEG).toBeLessThan(2.01);
      });
    }
  });

  test("of the whole sky: none is left out", () => {
    const all = bordersWithin({ centre: orion, radiusRad: Math.PI });
    expect(all.length).toBeGreaterThanOrEqual((meridians.length + parallels.length) / 3);
  });
});

test("the tracer finds a square's sides, also across right ascension 0", () => {
  const inside = (column: number, row: number) => row >= 100 && row < 150 && (column < 96 || column >= COLUMNS - 48);
  const { meridians: upright, parallels: level } = traceBorders((column, row) => (inside(column, row) ? "in" : "out"));
  expect(triples(upright)).toEqual([
    [96, 100, 150],
    [COLUMNS - 48, 100, 150],
  ]);
  expect(triples(level)).toEqual([
    [100, 0, 96],
    [100, COLUMNS - 48, COLUMNS],
    [150, 0, 96],
    [150, COLUMNS - 48, COLUMNS],
  ]);
});

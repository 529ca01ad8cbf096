/** Reading the reference tables of tests/reference/data and measuring against them. */
import { readFileSync } from "node:fs";
import { expect } from "vitest";
import { DEG, dirFromRadec, radecFromDir, separationRad } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";

/** The rows of a table, and the line that says where its values come from. */
export function readTable<Row>(name: string): { source: string; cases: readonly Row[] } {
  return JSON.parse(readFileSync(new URL(`./data/${name}.json`, import.meta.url), "utf8"));
}

export function dirDeg(raDeg: number, decDeg: number): Dir {
  return dirFromRadec(raDeg * DEG, decDeg * DEG);
}

export function radecDeg(dir: Dir): [raDeg: number, decDeg: number] {
  const { raRad, decRad } = radecFromDir(dir);
  return [raRad / DEG, decRad / DEG];
}

export function separationArcsec(a: Dir, b: Dir): number {
  return (separationRad(a, b) / DEG) * 3600;
}

/** The smaller way round between two angles, in the unit of the full turn. */
export function turnDistance(a: number, b: number, turn: number): number {
  const d = Math.abs(a - b) % turn;
  return Math.min(d, turn - d);
}

/** Every row must lie within its tolerance; a failure shows the row. */
export function expectAllWithin<Row>(
  rows: readonly Row[],
  deviation: (row: Row) => number,
  tolerance: number | ((row: Row) => number),
): void {
  expect(rows.length).toBeGreaterThan(0);
  for (const row of rows) {
    const limit = typeof tolerance === "number" ? tolerance : tolerance(row);
    expect(deviation(row), JSON.stringify(row)).toBeLessThanOrEqual(limit);
  }
}

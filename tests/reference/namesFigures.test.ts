/** Both ends of every line of every figure, checked against the star table and the constellations' borders. */
import { describe, expect, it } from "vitest";
import { constellationOf } from "#core/celestial/constellation.ts";
import { cross, DEG, dot, separationRad } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { catalogueNames } from "#core/sky/names/catalogueNames.ts";
import { constellations } from "#core/sky/names/constellations.ts";
import type { FigureSegment } from "#core/sky/names/types.ts";
import table from "#shared/figures.json";

const { stars, segments, figures } = catalogueNames();
const starAt = new Map(stars.map((star) => [star.dir, star]));
const shared: ReadonlyMap<string, readonly number[]> = new Map(Object.entries(table.sharedCorners));
const linesOf = (abbr: string) => segments.filter((line) => line.figure === abbr);

describe("figures", () => {
  it("are all 88, each with at least one line and its name among its stars", () => {
    expect(figures.map((figure) => figure.abbr).sort()).toEqual([...constellations().keys()].sort());
    for (const { abbr, centre } of figures) {
      const ends = linesOf(abbr).flatMap((line) => [line.from, line.to]);
      expect(ends.length, abbr).toBeGreaterThanOrEqual(2);
      expect(Math.min(...ends.map((end) => separationRad(end, centre) / DEG)), abbr).toBeLessThan(17);
    }
  });
  it("go from naked-eye star to naked-eye star within their constellation, but for the shared corners", () => {
    const strays = new Map<string, Set<number>>();
    for (const { from, to, figure } of segments) {
      for (const end of [from, to]) {
        const star = starAt.get(end);
        expect(star?.magV, `${figure} HIP ${star?.hip}`).toBeLessThanOrEqual(5.5);
        if (constellationOf(end).abbr !== figure)
          strays.set(figure, (strays.get(figure) ?? new Set()).add(star?.hip ?? 0));
      }
    }
    expect([...strays].map(([figure, hips]) => [figure, [...hips]])).toEqual([...shared]);
  });
  it("have no line twice, none of no length, none longer than 35 degrees", () => {
    const seen = new Set<string>();
    for (const { from, to, figure } of segments) {
      const key = [starAt.get(from)?.hip, starAt.get(to)?.hip].sort().join(" ");
      expect(seen.has(key), `${figure} ${key}`).toBe(false);
      seen.add(key);
      expect(from).not.toBe(to);
      expect(separationRad(from, to) / DEG, `${figure} ${key}`).toBeLessThan(35);
    }
  });
  it("cross no line of their own but in the cross", () => {
    const crossed = figures.filter(({ abbr }) => {
      const lines = linesOf(abbr);
      return lines.some((a, i) => lines.slice(0, i).some((b) => crosses(a, b)));
    });
    expect(crossed.map((figure) => figure.abbr)).toEqual(["Cru"]);
  });
});

/** Two great-circle arcs cross where each one's ends lie on either side of the other; a common end does not count. */
function crosses(a: FigureSegment, b: FigureSegment): boolean {
  if ([a.from, a.to].some((end) => end === b.from || end === b.to)) return false;
  const apart = (poleFrom: Dir, poleTo: Dir, p: Dir, q: Dir) => {
    const pole = cross(poleFrom, poleTo);
    return dot(pole, p) * dot(pole, q) < 0;
  };
  return apart(a.from, a.to, b.from, b.to) && apart(b.from, b.to, a.from, a.to);
}

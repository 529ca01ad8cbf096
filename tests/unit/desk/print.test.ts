/** The printed hop sheet: its night, its figures, its charts. */
import { describe, expect, it } from "vitest";
import { dirFromMas, offsetDir } from "#core/celestial/vector.ts";
import { projectionOf, ringRadiusPx } from "#core/chart/page.ts";
import { hopHeightMm, hopPrintPage, widePrintPage, wideRingDeg } from "../../../src/desk/print/charts.ts";
import { compassOf, placeWords, short } from "../../../src/desk/print/figures.ts";
import { bestMoment, nightOf, SUN, toneLines, toneMm } from "../../../src/desk/print/night.ts";
import { PAPER, pxOf } from "../../../src/desk/print/paper.ts";
import { compiledHop, FIELD_DAS, mas, type Place } from "../score/attempts.ts";

const HILL = { latDeg: 50, lonDeg: 0, heightM: 250 };
const M27 = dirFromMas({ raMas: 299.9 * 3_600_000, decMas: 22.72 * 3_600_000 });
const NIGHT = nightOf(HILL, M27, Date.UTC(2027, 7, 31, 21));

describe("the night of a hop sheet", () => {
  it("goes from before sunset until after sunrise", () => {
    const [first, last] = [NIGHT.moments[0]!, NIGHT.moments.at(-1)!];
    expect(first.sunDeg).toBeGreaterThan(0);
    expect(last.sunDeg).toBeGreaterThan(0);
    // Sunset and sunrise at 50 degrees north on the last of August are at about 18.45 and 5.15 (common almanac figures, from memory).
    const down = NIGHT.moments.filter(({ sunDeg }) => sunDeg < SUN.setDeg);
    expect(Math.abs(down[0]!.utcMs - Date.UTC(2027, 7, 31, 18, 45))).toBeLessThan(10 * 60_000);
    expect(Math.abs(down.at(-1)!.utcMs - Date.UTC(2027, 8, 1, 5, 15))).toBeLessThan(10 * 60_000);
  });
  it("has its best moment in the dark, where the target stands highest", () => {
    const best = bestMoment(NIGHT)!;
    expect(best.dark).toBe(true);
    expect(best.moment.sunDeg).toBeLessThan(SUN.darkDeg);
    // On the meridian a target stands at 90 degrees less the difference of latitude and declination.
    expect(best.moment.targetDeg).toBeCloseTo(90 - 50 + 22.8, 0);
  });
  it("says so where it is never dark, or where the target never rises", () => {
    const summer = nightOf({ ...HILL, latDeg: 58 }, M27, Date.UTC(2027, 5, 21, 23));
    expect(bestMoment(summer)?.dark).toBe(false);
    expect(
      bestMoment(nightOf(HILL, dirFromMas({ raMas: 0, decMas: -70 * 3_600_000 }), Date.UTC(2027, 7, 31))),
    ).toBeNull();
  });
  it("is toned by upright lines that stand the closer the lighter the sky", () => {
    expect([10, -3, -9, -15, -20].map(toneMm)).toEqual([0.5, 0.75, 1.2, 1.9, null]);
    const lines = toneLines(NIGHT, 173);
    const apart = new Set(lines.slice(1).map((mm, i) => Math.round(100 * (mm - lines[i]!)) / 100));
    for (const mm of [0.5, 0.75, 1.2, 1.9]) expect(apart).toContain(mm);
    expect(lines.some((mm) => mm > 60 && mm < 110)).toBe(false);
  });
});

describe("figures of a hop sheet", () => {
  it("write places as charts do", () => {
    expect(placeWords(299.9, 22.72)).toBe("19h 59.6m +22° 43′");
    expect(placeWords(359.9999, -0.5)).toBe("0h 00.0m −00° 30′");
  });
  it("name the nearest point of the compass", () => {
    expect([0, 44, 90, 181, 359].map(compassOf)).toEqual(["north", "north-east", "east", "south", "north"]);
  });
  it("have no decimals that say nothing", () => {
    expect([short(8), short(5.3), short(1.76, 2)]).toEqual(["8", "5.3", "1.76"]);
  });
});

describe("charts of a hop sheet", () => {
  const ways: readonly (readonly Place[])[] = [
    [
      [0, 0],
      [0, 0.6],
    ],
    [
      [0, 0],
      [1, 0.2],
      [2, 0.4],
      [3, 0],
    ],
  ];
  for (const way of ways)
    it(`hold the rings of all ${way.length} marks whole`, () => {
      const compiled = compiledHop(way);
      const page = hopPrintPage(compiled, [], way.length - 1);
      expect(page.widthPx).toBeCloseTo(pxOf(PAPER.rightMm), 6);
      expect(page.heightPx).toBeCloseTo(pxOf(hopHeightMm(way.length - 1)), 6);
      const { project, holds } = projectionOf(page);
      const at = { x: 0, y: 0 };
      for (const mark of way) {
        project(dirFromMas(mas(mark)), at);
        expect(holds(at, ringRadiusPx(page, FIELD_DAS / 36_000))).toBe(true);
      }
    });
  it("show the anchor in the middle of the wide one, with the sight's ring", () => {
    const compiled = compiledHop(ways[0]!);
    const page = widePrintPage(compiled, []);
    const at = { x: 1, y: 1 };
    projectionOf(page).project(dirFromMas(mas([0, 0])), at);
    expect(Math.hypot(at.x, at.y)).toBeLessThan(1e-6);
    expect(wideRingDeg(compiled)).toBe(3);
    projectionOf(page).project(offsetDir(page.centre, 0, 0.1), at);
    expect(at.y).toBeLessThan(0);
  });
});

import { describe, expect, it } from "vitest";
import { DEG, dirFromRadec } from "#core/celestial/vector.ts";
import { type PointOfLight, pointBlock } from "#core/field/pointBlock.ts";
import { rivalOf } from "#core/field/rival.ts";

/** Degrees east and north on the equator. */
const at = (eastDeg: number, northDeg: number) => dirFromRadec(eastDeg * DEG, northDeg * DEG);
const star = (eastDeg: number, northDeg: number, milliMag: number, colourBV = 0.5): PointOfLight => ({
  dir: at(eastDeg, northDeg),
  milliMag,
  colourBV,
});
const FROM = star(0, 0, 2000);
const MARK = star(0, 2, 5000);
const step = { from: FROM.dir, to: MARK.dir, fieldRad: 5 * DEG, limitMilliMag: 9500 };
const rivalAmong = (...others: PointOfLight[]) => rivalOf([pointBlock([FROM, MARK, ...others])], step);

describe("the star that is taken for a waymark", () => {
  it("is as bright, in reach of the step, and neither the waymark nor the one that one steps from", () => {
    expect(rivalAmong()).toBeNull();
    expect(rivalAmong(star(2, 0, 6000), star(2, 1, 4000), star(5, 0, 5400))).toBeNull();
    expect(rivalAmong(star(0.1, 2, 5400), star(0.1, 0, 5400))).toBeNull();
    expect(rivalAmong(star(2, 0, 5400), star(2, 1, 5400))?.dir).toEqual(pointBlockDir(2, 1));
  });

  it("is told by what an eye sees first: a figure from a single star, then brightness, company, colour", () => {
    const tellings = [
      rivalAmong(star(2, 0, 5400), star(0.1, 2, 7000)),
      rivalAmong(star(2, 0, 5400)),
      rivalAmong(star(2, 0, 4600)),
      rivalAmong(star(2, 0, 5100), star(2.1, 0, 7000)),
      rivalAmong(star(2, 0, 5100, 1.3)),
      rivalAmong(star(2, 0, 5100, -0.2)),
    ].map((rival) => rival?.telling);
    expect(tellings).toEqual(["alone", "fainter", "brighter", "accompanied", "redder", "whiter"]);
  });

  it("is not named where only its place tells it apart, or its colour and it is too faint for one", () => {
    expect(rivalAmong(star(2, 0, 5100))).toBeNull();
    const dim = { ...step, limitMilliMag: 7000 };
    expect(rivalOf([pointBlock([FROM, MARK, star(2, 0, 5100, 1.6)])], dim)).toBeNull();
  });
});

/** A direction as a block has it. */
function pointBlockDir(eastDeg: number, northDeg: number) {
  return [...pointBlock([star(eastDeg, northDeg, 0)]).dirs];
}

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

  it("is sought within three quarters of a field, and as bright to seven tenths of a magnitude", () => {
    expect(rivalAmong(star(3.7, 0, 5400))).not.toBeNull();
    expect(rivalAmong(star(3.85, 0, 5400))).toBeNull();
    expect(rivalAmong(star(2, 0, 5690))).not.toBeNull();
    expect(rivalAmong(star(2, 0, 5710))).toBeNull();
    // What stands within a twentieth of the field is the waymark itself.
    expect(rivalAmong(star(0.24, 2, 5400))).toBeNull();
    expect(rivalAmong(star(0.26, 2, 5400))).not.toBeNull();
  });

  it("is told by three tenths of a magnitude, by six tenths of B-V, by company within a twentieth of a field", () => {
    expect([5290, 5310].map((milliMag) => rivalAmong(star(2, 0, milliMag))?.telling)).toEqual([undefined, "fainter"]);
    expect([1.08, 1.12].map((bv) => rivalAmong(star(2, 0, 5100, bv))?.telling)).toEqual([undefined, "redder"]);
    const withCompany = (eastDeg: number, milliMag: number) =>
      rivalAmong(star(2, 0, 5100), star(2 + eastDeg, 0, milliMag))?.telling;
    expect([withCompany(0.24, 7000), withCompany(0.26, 7000)]).toEqual(["accompanied", undefined]);
    // Eight tenths of a magnitude over the limit of 9.5, and no fainter.
    expect([withCompany(0.1, 8690), withCompany(0.1, 8710)]).toEqual(["accompanied", undefined]);
  });

  it("shows its colour 2.2 mag over the limit, and no nearer to it", () => {
    const withLimit = (limitMilliMag: number) =>
      rivalOf([pointBlock([FROM, MARK, star(2, 0, 5100, 1.6)])], { ...step, limitMilliMag })?.telling;
    expect([withLimit(7310), withLimit(7290)]).toEqual(["redder", undefined]);
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

import { describe, it } from "vitest";
import { galacticFromIcrs, precessionFromIcrs } from "#core/celestial/frames.ts";
import { mulMatVec, transpose } from "#core/celestial/matrix.ts";
import { dirDeg, expectAllWithin, readTable, separationArcsec } from "./celestialTables.ts";

type Galactic = { dir: string; ra: number; dec: number; l: number; b: number };

// eraIcrs2g and eraG2icrs (ERFA 2.0.0).
describe("galactic coordinates against ERFA", () => {
  const { cases } = readTable<Galactic>("galactic");
  const back = transpose(galacticFromIcrs);

  it("turns every direction both ways", () => {
    // 1e-5": the table prints 1e-9 deg (4e-6"), and the matrix is the same.
    const forth = (c: Galactic) => separationArcsec(mulMatVec(galacticFromIcrs, dirDeg(c.ra, c.dec)), dirDeg(c.l, c.b));
    expectAllWithin(cases, forth, 1e-5);
    expectAllWithin(cases, (c) => separationArcsec(mulMatVec(back, dirDeg(c.l, c.b)), dirDeg(c.ra, c.dec)), 1e-5);
  });
});

type Precession = {
  ra: number;
  dec: number;
  epoch: number;
  ra_mean: number;
  dec_mean: number;
  ra_b1875: number;
  dec_b1875: number;
  ra_b1875_fk4: number;
  dec_b1875_fk4: number;
};

/** B1875.0 = JD 2405889.25855 TT. */
const B1875 = 2000 + (2405889.25855 - 2451545) / 365.25;

// eraPmat06 (frame bias and IAU 2006 precession, ERFA 2.0.0); astropy 5.2.1 FK4NoETerms for the last columns.
describe("precession against ERFA", () => {
  const { cases } = readTable<Precession>("precession_frames");

  it("reaches the mean equator and equinox of the date", () => {
    // 0.03": the frame bias (0.023") is left out; the angles are those of the same theory.
    expectAllWithin(
      cases,
      (c) =>
        separationArcsec(mulMatVec(precessionFromIcrs(c.epoch), dirDeg(c.ra, c.dec)), dirDeg(c.ra_mean, c.dec_mean)),
      0.03,
    );
  });

  it("reaches B1875, the frame of the constellation boundaries", () => {
    const m = precessionFromIcrs(B1875);
    const at = (c: Precession) => mulMatVec(m, dirDeg(c.ra, c.dec));
    // 0.03" as above; the older frame itself lies 0.17" away.
    expectAllWithin(cases, (c) => separationArcsec(at(c), dirDeg(c.ra_b1875, c.dec_b1875)), 0.03);
    expectAllWithin(cases, (c) => separationArcsec(at(c), dirDeg(c.ra_b1875_fk4, c.dec_b1875_fk4)), 0.2);
  });
});

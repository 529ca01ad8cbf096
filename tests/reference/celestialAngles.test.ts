import { describe, it } from "vitest";
import { applyProperMotion } from "#core/celestial/properMotion.ts";
import { DEG, offsetDir, positionAngleRad, separationRad } from "#core/celestial/vector.ts";
import { dirDeg, expectAllWithin, readTable, separationArcsec, turnDistance } from "./celestialTables.ts";

type Pair = {
  ra1: number;
  dec1: number;
  ra2: number;
  dec2: number;
  sep: number;
  pa: number | null;
  pa_tol: number | null;
};
type Directed = Pair & { pa: number; pa_tol: number };

// eraSeps and eraPas (ERFA 2.0.0).
describe("separation and position angle against ERFA", () => {
  const { cases } = readTable<Pair>("separation_position_angle");
  const directed = cases.filter((c): c is Directed => c.pa !== null);
  const ends = (c: Pair) => [dirDeg(c.ra1, c.dec1), dirDeg(c.ra2, c.dec2)] as const;

  it("gives every separation", () => {
    // 1e-9 deg: trigonometry alone; the table prints 1e-12.
    expectAllWithin(cases, (c) => Math.abs(separationRad(...ends(c)) / DEG - c.sep), 1e-9);
  });

  it("gives every position angle that is defined", () => {
    // 1e-8 deg + 5e-14 / sin(separation): the angle is ill-conditioned near 0 and 180 degrees.
    expectAllWithin(
      directed,
      (c) => turnDistance(positionAngleRad(...ends(c)) / DEG, c.pa, 360),
      (c) => c.pa_tol,
    );
  });

  it("walks from the first point to the second", () => {
    // 1e-9 deg of rounding, and what the printed position angle (1e-9 deg) allows.
    expectAllWithin(
      directed,
      (c) => separationRad(offsetDir(ends(c)[0], c.pa * DEG, c.sep * DEG), ends(c)[1]) / DEG,
      3e-9,
    );
  });
});

type Moved = {
  ra: number;
  dec: number;
  pm_ra_cosdec_mas: number;
  pm_dec_mas: number;
  epoch_from: number;
  epoch_to: number;
  ra2: number;
  dec2: number;
};

// eraPmsafe with radial velocity 0 (ERFA 2.0.0).
describe("proper motion against ERFA", () => {
  it("moves every star to its later place", () => {
    // 0.01": the vector form and ERFA's space motion differ by less than 1 mas.
    expectAllWithin(
      readTable<Moved>("proper_motion").cases,
      (c) => {
        const from = dirDeg(c.ra, c.dec);
        const later = applyProperMotion(from, c.pm_ra_cosdec_mas, c.pm_dec_mas, c.epoch_to - c.epoch_from);
        return separationArcsec(later, dirDeg(c.ra2, c.dec2));
      },
      0.01,
    );
  });
});

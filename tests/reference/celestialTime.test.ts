import { describe, it } from "vitest";
import { greenwichApparentSiderealDeg, greenwichMeanSiderealDeg, julianDate } from "#core/celestial/time.ts";
import { expectAllWithin, readTable, turnDistance } from "./celestialTables.ts";

type Row = { utc: string; jd_utc: number; gmst_hours: number; gast_hours: number };

// eraGmst06 and eraGst06a (ERFA 2.0.0), UT1 = UTC.
describe("sidereal time against ERFA", () => {
  const { cases } = readTable<Row>("sidereal_time");
  const seconds = (deg: number, hours: number) => turnDistance(deg * 240, hours * 3600, 86400);

  it("gives mean sidereal time", () => {
    // 0.00005 s: the same formula, with UTC for TT in its polynomial (7e-6 s).
    expectAllWithin(cases, (c) => seconds(greenwichMeanSiderealDeg(Date.parse(c.utc)), c.gmst_hours), 0.00005);
  });

  it("gives apparent sidereal time", () => {
    // 0.02 s: a nutation series cut to a few terms is good to about 0.01 s (0.15").
    expectAllWithin(cases, (c) => seconds(greenwichApparentSiderealDeg(Date.parse(c.utc)), c.gast_hours), 0.02);
  });

  it("gives the Julian date of the clock reading", () => {
    // 1e-6 d, the table's digits; on a day with a leap second ERFA stretches the day by up to 1 s (1.2e-5 d).
    const tolerance = (c: Row) => (c.utc.startsWith("2016-12-31") ? 1.2e-5 : 1e-6);
    expectAllWithin(cases, (c) => Math.abs(julianDate(Date.parse(c.utc)) - c.jd_utc), tolerance);
  });
});

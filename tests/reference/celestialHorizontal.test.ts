import { describe, it } from "vitest";
import {
  altAzFromDir,
  dirFromAltAz,
  equatorialOfDateFromIcrs,
  horizonFromIcrs,
  hourAngleFromDir,
  northPoleOfDate,
  zenithDir,
} from "#core/celestial/frames.ts";
import { parallacticAngleRad } from "#core/celestial/parallactic.ts";
import { cross, DEG, dot } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { dirDeg, expectAllWithin, readTable, separationArcsec, turnDistance } from "./celestialTables.ts";

type Row = {
  ra: number;
  dec: number;
  utc: string;
  lat: number;
  lon: number;
  alt: number;
  az: number;
  alt_apparent: number;
  az_apparent: number;
  dec_true: number;
  ha_true: number;
  parallactic: number;
  parallactic_icrs: number;
};

// ERFA 2.0.0: eraPnm06a, eraGst06a, eraHd2ae; apparent: eraAtco13; parallactic: eraHd2pa, eraPas.
describe("horizon and hour angle against ERFA", () => {
  const { cases } = readTable<Row>("horizontal");
  const site = (c: Row) => ({ latDeg: c.lat, lonDeg: c.lon, heightM: 0 });
  const horizon = (c: Row) => horizonFromIcrs(site(c), Date.parse(c.utc));
  /** Altitude and azimuth as a direction, so that the zenith is no trap. */
  const placed = (c: Row): Dir => {
    const { altRad, azRad } = altAzFromDir(horizon(c), dirDeg(c.ra, c.dec));
    return dirDeg(azRad / DEG, altRad / DEG);
  };

  it("gives altitude and azimuth, true equator and equinox of date", () => {
    // 0.15": the short nutation series of astronomy-engine (0.12" seen) and the frame bias (0.02").
    expectAllWithin(cases, (c) => separationArcsec(placed(c), dirDeg(c.az, c.alt)), 0.15);
  });

  it("is off from the apparent place by no more than aberration", () => {
    // Annual aberration 20.5" (20.8" at perihelion), diurnal 0.3", and deflection near the Sun.
    expectAllWithin(cases, (c) => separationArcsec(placed(c), dirDeg(c.az_apparent, c.alt_apparent)), 21.2);
  });

  it("finds the direction again from altitude and azimuth", () => {
    expectAllWithin(
      cases,
      (c) => separationArcsec(dirFromAltAz(horizon(c), c.alt * DEG, c.az * DEG), dirDeg(c.ra, c.dec)),
      0.15,
    );
  });

  it("gives hour angle and declination of date", () => {
    // 0.15" as above.
    expectAllWithin(
      cases,
      (c) => {
        const e = equatorialOfDateFromIcrs(site(c), Date.parse(c.utc));
        const { hourAngleRad, decRad } = hourAngleFromDir(e, dirDeg(c.ra, c.dec));
        return separationArcsec(dirDeg(hourAngleRad / DEG, decRad / DEG), dirDeg(c.ha_true, c.dec_true));
      },
      0.15,
    );
  });

  // 5e-5 deg / min(cos(alt), cos(dec)): 0.15" on the sky (4e-5 deg) grows without bound near zenith and pole.
  const conditioned = (c: Row) => 5e-5 / Math.min(Math.cos(c.alt * DEG), Math.cos(c.dec * DEG));

  it("gives the parallactic angle from ICRS north", () => {
    expectAllWithin(
      cases,
      (c) => {
        const q = parallacticAngleRad(dirDeg(c.ra, c.dec), zenithDir(horizon(c))) / DEG;
        return turnDistance(q, c.parallactic_icrs, 360);
      },
      conditioned,
    );
  });

  it("gives the parallactic angle from the pole of date", () => {
    // Angle at the star between the great circles to the pole of date and to the zenith.
    expectAllWithin(
      cases,
      (c) => {
        const h = horizon(c);
        const star = dirDeg(c.ra, c.dec);
        const pole = northPoleOfDate(h, c.lat);
        const zenith = zenithDir(h);
        const q = Math.atan2(dot(star, cross(zenith, pole)), dot(cross(star, pole), cross(star, zenith)));
        return turnDistance(q / DEG, c.parallactic, 360);
      },
      conditioned,
    );
  });
});

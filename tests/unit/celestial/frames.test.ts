import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BODY_NAMES, bodyDir, moonDir, sunDir } from "#core/celestial/bodies.ts";
import { constellationOf } from "#core/celestial/constellation.ts";
import {
  altAzFromDir,
  dirFromAltAz,
  dirFromHourAngle,
  eclipticFromIcrs,
  equatorialOfDateFromIcrs,
  galacticFromIcrs,
  horizonFromIcrs,
  hourAngleFromDir,
  northPoleOfDate,
  precessionFromIcrs,
  zenithDir,
} from "#core/celestial/frames.ts";
import { mulMat, mulMatVec, transpose } from "#core/celestial/matrix.ts";
import { parallacticAngleRad } from "#core/celestial/parallactic.ts";
import { localSiderealDeg } from "#core/celestial/time.ts";
import { cross, DEG, dirFromRadec, dot, radecFromDir, separationRad, TWO_PI } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { aDir, anAngle, turnBetween } from "./arbitrary.ts";

const SITE = { latDeg: 52, lonDeg: 13, heightM: 100 };
const MIDNIGHT = Date.UTC(2026, 9, 15, 23);
const H = horizonFromIcrs(SITE, MIDNIGHT);
const E = equatorialOfDateFromIcrs(SITE, MIDNIGHT);

function determinant(m: Float64Array): number {
  const row = (i: number): Dir => [m[i]!, m[i + 1]!, m[i + 2]!];
  return dot(cross(row(0), row(3)), row(6));
}

describe("rotations", () => {
  it.each([
    ["horizon", H, 1],
    ["equatorial of date", E, -1],
    ["galactic", galacticFromIcrs, 1],
    ["ecliptic", eclipticFromIcrs, 1],
    ["precession", precessionFromIcrs(2050), 1],
  ] as const)("%s keeps lengths and its handedness", (_, m, hand) => {
    expect(determinant(m)).toBeCloseTo(hand, 12);
    const identity = mulMat(m, transpose(m));
    for (let i = 0; i < 9; i++) expect(identity[i]).toBeCloseTo(i % 4 === 0 ? 1 : 0, 12);
  });
});

describe("horizon", () => {
  it("comes back from altitude and azimuth", () => {
    fc.assert(
      fc.property(anAngle(-1.57, 1.57), anAngle(0, TWO_PI), (altRad, azRad) => {
        const back = altAzFromDir(H, dirFromAltAz(H, altRad, azRad));
        expect(Math.abs(back.altRad - altRad)).toBeLessThan(1e-12);
        expect(turnBetween(back.azRad, azRad) * Math.cos(altRad)).toBeLessThan(1e-12);
        expect(back.azRad).toBeLessThan(TWO_PI);
      }),
    );
  });

  it("has the zenith overhead, at the sidereal time in right ascension of date", () => {
    expect(altAzFromDir(H, zenithDir(H)).altRad).toBeCloseTo(Math.PI / 2, 7);
    const ofDate = mulMatVec(precessionFromIcrs(2026.79), zenithDir(H));
    // Nutation, left out of the mean frame, is some 15" at most.
    expect(turnBetween(radecFromDir(ofDate).raRad, localSiderealDeg(MIDNIGHT, SITE.lonDeg) * DEG)).toBeLessThan(1e-4);
  });

  it("has the pole of date due north, as high as the latitude, near the pole of J2000", () => {
    const pole = northPoleOfDate(H, SITE.latDeg);
    expect(altAzFromDir(H, pole).altRad / DEG).toBeCloseTo(52, 9);
    // Precession moves the pole by 20" a year.
    expect((separationRad(pole, [0, 0, 1]) / DEG) * 3600).toBeCloseTo(537, -1);
  });

  it("has azimuth 90 in the east: there stars rise", () => {
    const east = dirFromAltAz(H, 0, Math.PI / 2);
    expect(altAzFromDir(horizonFromIcrs(SITE, MIDNIGHT + 600_000), east).altRad).toBeGreaterThan(0.01);
  });
});

describe("hour angle", () => {
  it("comes back from the direction", () => {
    fc.assert(
      fc.property(anAngle(-3.14, 3.14), anAngle(-1.57, 1.57), (hourAngleRad, decRad) => {
        const back = hourAngleFromDir(E, dirFromHourAngle(E, hourAngleRad, decRad));
        expect(Math.abs(back.decRad - decRad)).toBeLessThan(1e-12);
        expect(turnBetween(back.hourAngleRad, hourAngleRad) * Math.cos(decRad)).toBeLessThan(1e-12);
      }),
    );
  });

  it("is 0 on the meridian and grows by an hour in a sidereal hour", () => {
    const south = dirFromAltAz(H, 0.5, Math.PI);
    expect(hourAngleFromDir(E, south).hourAngleRad).toBeCloseTo(0, 10);
    const later = equatorialOfDateFromIcrs(SITE, MIDNIGHT + 3_600_000 / 1.00273791);
    expect(hourAngleFromDir(later, south).hourAngleRad / DEG).toBeCloseTo(15, 4);
  });
});

it("has the zenith at a positive position angle west of the meridian, at a negative one east of it", () => {
  const zenith = zenithDir(H);
  const signed = (azDeg: number) => {
    const q = parallacticAngleRad(dirFromAltAz(H, 0.6, azDeg * DEG), zenith);
    return q > Math.PI ? q - TWO_PI : q;
  };
  expect(signed(220)).toBeGreaterThan(0.2);
  expect(signed(140)).toBeLessThan(-0.2);
  fc.assert(
    fc.property(aDir, (dir) => {
      expect(parallacticAngleRad(dir, zenith)).toBeLessThan(TWO_PI);
    }),
  );
});

describe("bodies", () => {
  it("keeps the Sun on the ecliptic and the planets near it", () => {
    for (const body of BODY_NAMES) {
      const [, , z] = mulMatVec(eclipticFromIcrs, bodyDir(body, MIDNIGHT));
      expect(Math.abs(Math.asin(z)) / DEG).toBeLessThan(body === "sun" ? 0.01 : 8);
    }
  });

  it("has the Sun high at noon, low at midnight", () => {
    const noon = Date.UTC(2026, 5, 21, 11, 10);
    expect(altAzFromDir(horizonFromIcrs(SITE, noon), sunDir(noon)).altRad / DEG).toBeCloseTo(61.4, 0);
    expect(altAzFromDir(H, sunDir(MIDNIGHT)).altRad).toBeLessThan(-0.6);
  });

  it("lowers the Moon by its parallax", () => {
    const at = Date.UTC(2026, 9, 26, 1);
    const h = horizonFromIcrs(SITE, at);
    const geocentric = altAzFromDir(h, bodyDir("moon", at));
    const seen = altAzFromDir(h, moonDir(SITE, at));
    const expected = 0.95 * Math.cos(seen.altRad);
    expect((geocentric.altRad - seen.altRad) / DEG).toBeGreaterThan(expected - 0.08);
    expect((geocentric.altRad - seen.altRad) / DEG).toBeLessThan(expected + 0.08);
    expect(turnBetween(geocentric.azRad, seen.azRad) / DEG).toBeLessThan(0.02);
  });
});

it("names a constellation in full, as the IAU spells it", () => {
  expect(constellationOf([0, 0, 1])).toEqual({ abbr: "UMi", name: "Ursa Minor" });
  const inAntlia = dirFromRadec(155 * DEG, -33 * DEG);
  expect(constellationOf(inAntlia)).toEqual({ abbr: "Ant", name: "Antlia" });
  const inBootes = dirFromRadec(214 * DEG, 19 * DEG);
  expect(constellationOf(inBootes).name).toBe("Boötes");
});

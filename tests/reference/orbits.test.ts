/** Worked examples of Meeus (1998), Astronomical Algorithms, their numbers from memory; ephemerides of the Minor Planet Center. */
import { describe, expect, test } from "vitest";
import { DEG, dirFromRadec, separationRad } from "#core/celestial/vector.ts";
import { bodiesOf, type LessonNight } from "#core/lesson/bodies.ts";
import { InputError } from "#core/seams/errors.ts";
import { magnitudeOf } from "#core/sky/orbits/magnitude.ts";
import { anomalyOf, heliocentricPlace, orbitPlace } from "#core/sky/orbits/twoBody.ts";

describe("anomaly and distance", () => {
  // Examples 34.a (first row) and 35.a with the table of its page.
  test.each([
    [1.487469, 1, 112.5642, 66.78862, 2.133911],
    [0.921326, 1, 138.4783, 102.74426, 2.364192],
    [0.1, 0.987, 254.9, 164.50029, 4.063777],
    [0.123456, 0.99997, -30.47, 221.9119, 0.965053],
    [3.363943, 1.05731, 1237.1, 109.40598, 10.668551],
  ])("q %f, e %f, %f days", (perihelionAu, eccentricity, days, degrees, au) => {
    const { anomalyRad, distanceAu } = anomalyOf({ perihelionAu, eccentricity }, days);
    expect((anomalyRad / DEG + 360) % 360).toBeCloseTo(degrees, 4);
    expect(distanceAu).toBeCloseTo(au, 5);
  });
  test("goes over from ellipse by parabola to hyperbola without a step", () => {
    const at = (eccentricity: number) => anomalyOf({ perihelionAu: 0.9, eccentricity }, 150).anomalyRad;
    for (const near of [1e-5, 1e-7, 0.99e-8]) {
      expect(Math.abs(at(1 - near) - at(1))).toBeLessThan(near * 3 + 1e-7);
      expect(Math.abs(at(1 + near) - at(1))).toBeLessThan(near * 3 + 1e-7);
    }
  });
  test("a round orbit runs evenly, and comes back after its year", () => {
    const { anomalyRad } = anomalyOf({ perihelionAu: 1, eccentricity: 0 }, 365.2568983 / 4);
    expect(anomalyRad / DEG).toBeCloseTo(90, 5);
    const orbit = { perihelionAu: 0.5, eccentricity: 0.6 };
    expect(anomalyOf(orbit, 100).anomalyRad).toBeCloseTo(
      anomalyOf(orbit, 100 + 365.2568983 * 1.25 ** 1.5).anomalyRad,
      6,
    );
  });
  test("refuses what is no orbit", () => {
    expect(() => anomalyOf({ perihelionAu: 0, eccentricity: 1 }, 1)).toThrow(InputError);
    expect(() => anomalyOf({ perihelionAu: 1, eccentricity: Number.NaN }, 1)).toThrow(InputError);
  });
});

describe("comet Encke on 1990 October 6.0 TD (example 33.a)", () => {
  const encke = {
    perihelionJd: 2448193.04502,
    perihelionAu: 2.2091404 * (1 - 0.8502196),
    eccentricity: 0.8502196,
    inclinationDeg: 11.94524,
    nodeDeg: 334.75006,
    argumentDeg: 186.23352,
  };
  test("stands where the book has it", () => {
    const [x, y, z] = heliocentricPlace(encke, 2448170.5 - encke.perihelionJd);
    expect(Math.hypot(x, y, z)).toBeCloseTo(0.6524867, 4);
    const { dir, earthAu } = orbitPlace(encke, Date.UTC(1990, 9, 6) - 57_000);
    expect(earthAu).toBeCloseTo(0.8243, 3);
    expect(separationRad(dir, dirFromRadec(158.558965 * DEG, 19.158496 * DEG)) / DEG).toBeLessThan(10 / 3600);
  });
});

/** A lesson's night at the middle of the Earth, nearly: what is far shows no parallax to speak of. */
const night = (time: string, body: Partial<LessonNight["bodies"][number]>): LessonNight => ({
  time,
  place: { name: "Hill", latDeg: 50, lonDeg: 0, heightM: 0, skyMagPerArcsec2: 21 },
  bodies: [{ name: "It", kind: "comet", ...body } as LessonNight["bodies"][number]],
});
const RA_HOUR = 15 * DEG;

describe("places of lessons' bodies beside published ephemerides", () => {
  // Minor Planet Center: elements of (1) Ceres (MPO 492748, epoch 2020 May 31.0 TT) and its place for 2020 June 17.0 UT.
  test("a minor planet by its mean anomaly", () => {
    const [ceres] = bodiesOf(
      night("2020-06-17T00:00:00Z", {
        kind: "minorPlanet",
        epoch: "2020-05-31T00:00:00Z",
        semiMajorAu: 2.7676569,
        eccentricity: 0.0775571,
        inclinationDeg: 10.58862,
        nodeDeg: 80.28698,
        argumentDeg: 73.73161,
        meanAnomalyDeg: 162.68631,
        absoluteMag: 3.4,
        slope: 0.12,
      }),
    );
    // The hours have four decimals, half of the last is 2.7"; parallax at 2.4 au is 3.7" at most.
    const published = dirFromRadec(23.1437 * RA_HOUR, -17.323 * DEG);
    expect(separationRad(ceres!.dir, published) / DEG).toBeLessThan(8 / 3600);
  });
  // JPL Horizons, sample output kept with astroquery's tests: elements and ephemeris of (1) Ceres for 2000 January 1.0 UT,
  // by two solutions of the orbit.
  test("a minor planet by its perihelion, its distances and its magnitude", () => {
    const place = orbitPlace(
      {
        perihelionJd: 2451516.163117752,
        perihelionAu: 2.549670133,
        eccentricity: 0.07837505768,
        inclinationDeg: 10.58336087,
        nodeDeg: 80.49436516,
        argumentDeg: 73.92278853,
      },
      Date.UTC(2000, 0, 1),
    );
    expect(separationRad(place.dir, dirFromRadec(188.7028 * DEG, 9.09829 * DEG)) / DEG).toBeLessThan(2 / 3600);
    expect(place.sunAu).toBeCloseTo(2.551099, 5);
    expect(place.earthAu).toBeCloseTo(2.263151, 5);
    expect(magnitudeOf({ kind: "minorPlanet", absoluteMag: 3.53, slope: 0.12 }, place)).toBeCloseTo(8.459, 3);
  });
  // Minor Planet Center: elements of C/1995 O1 (MPC 106342, epoch 2020 Feb. 24) and its place for 2020 May 31.0 UT.
  test("a comet by its perihelion, 23 years after it", () => {
    const [comet] = bodiesOf(
      night("2020-05-31T00:00:00Z", {
        epoch: "2020-02-24T00:00:00Z",
        perihelionAu: 0.916241,
        eccentricity: 0.994928,
        inclinationDeg: 88.9908,
        nodeDeg: 283.3593,
        argumentDeg: 130.6448,
        perihelion: "1997-03-29T15:11:57Z",
        totalMag: -2,
        slope: 10,
      }),
    );
    const published = dirFromRadec((23 + 59 / 60 + 16.6 / 3600) * RA_HOUR, -(84 + 46 / 60 + 58 / 3600) * DEG);
    expect(separationRad(comet!.dir, published) / DEG).toBeLessThan(2 / 3600);
  });
});

describe("brightness of bodies", () => {
  const full = { sunAu: 2, earthAu: 1, observerAu: 1 };
  test("opposite the Sun a minor planet has H and the distances alone", () => {
    const law = { kind: "minorPlanet", absoluteMag: 5, slope: 0.15 } as const;
    expect(magnitudeOf(law, full)).toBeCloseTo(5 + 5 * Math.log10(2), 4);
  });
  /** By how much a phase dims, mag. */
  const dimming = (slope: number, phaseDeg: number) => {
    const [earthAu, sunAu] = [1.5, 2.4];
    const observerAu = Math.sqrt(earthAu ** 2 + sunAu ** 2 - 2 * earthAu * sunAu * Math.cos(phaseDeg * DEG));
    const law = { kind: "minorPlanet", absoluteMag: 0, slope } as const;
    return magnitudeOf(law, { sunAu, earthAu, observerAu }) - 5 * Math.log10(3.6);
  };
  // sbpy, its test of the H, G system with Bowell's full phase functions (H 3.34, G 0.12): ours are the short ones.
  test.each([
    [18, 4.313146],
    [36, 4.86456],
    [54, 5.380803],
    [72, 5.933699],
    [90, 6.590874],
  ])("its phase of %i degrees dims it as published", (phaseDeg, mag) => {
    expect(Math.abs(dimming(0.12, phaseDeg) - (mag - 3.34))).toBeLessThan(0.002);
  });
  test("its phase dims it less where G is large", () => {
    expect(dimming(0.4, 20)).toBeLessThan(dimming(0.15, 20) - 0.2);
  });
  test("a comet fades with both distances", () => {
    const law = { kind: "comet", totalMag: 6, slope: 10 } as const;
    expect(magnitudeOf(law, { sunAu: 1, earthAu: 1, observerAu: 1 })).toBe(6);
    expect(magnitudeOf(law, { sunAu: 10, earthAu: 10, observerAu: 1 })).toBeCloseTo(21, 9);
  });
});

test("a site's parallax shifts a near body by the Earth's radius over its distance", () => {
  const orbit = {
    perihelionJd: 2461650,
    perihelionAu: 1.05,
    eccentricity: 0.4,
    inclinationDeg: 2,
    nodeDeg: 340,
    argumentDeg: 0,
  };
  const utcMs = Date.UTC(2027, 7, 31, 21);
  const middle = orbitPlace(orbit, utcMs);
  const sites = [0, 60, 120, 180, 240, 300].map((lonDeg) =>
    orbitPlace(orbit, utcMs, { latDeg: 0, lonDeg, heightM: 0 }),
  );
  // 8.794" at 1 au (IAU 1976); the largest of six sites lies within 30 degrees of it.
  const shifts = sites.map(({ dir }) => (separationRad(dir, middle.dir) / DEG) * 3600);
  const most = 8.794 / middle.earthAu;
  expect(Math.max(...shifts)).toBeLessThan(1.02 * most);
  expect(Math.max(...shifts)).toBeGreaterThan(0.85 * most);
});

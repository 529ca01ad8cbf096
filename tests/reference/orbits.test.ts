/** Worked examples of Meeus (1998), Astronomical Algorithms; their numbers from memory. */
import { describe, expect, test } from "vitest";
import { DEG, dirFromRadec, separationRad } from "#core/celestial/vector.ts";
import { InputError } from "#core/seams/errors.ts";
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

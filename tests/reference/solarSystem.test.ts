import { describe, expect, test } from "vitest";
import { bodyDir } from "#core/celestial/bodies.ts";
import { DEG, dirFromMas, separationRad } from "#core/celestial/vector.ts";
import { solarSystemAt } from "#core/sky/solar/solarSystem.ts";

const greenwich = { latDeg: 51.48, lonDeg: 0, heightM: 50 };
const at = (utcMs: number) => {
  const { bodies, moons } = solarSystemAt(greenwich, utcMs);
  return { body: (name: string) => bodies.find((each) => each.name === name)!, bodies, moons };
};

describe("the Solar System at an instant", () => {
  test("lit part and bright limb of the Moon, 1992 April 12.0 TD (Meeus 1998, example 48.a)", () => {
    const { body } = at(Date.UTC(1992, 3, 12) - 59_000);
    // The book's are geocentric and of the equinox of date: k 0.6786, angle 285.0.
    expect(Math.abs(body("moon").litPermille - 679)).toBeLessThan(6);
    expect(Math.abs(body("moon").brightLimbDeg - 285)).toBeLessThan(1.5);
  });
  test("lit part of Venus, 1992 December 20.0 TD (Meeus 1998, example 41.a)", () => {
    const { body } = at(Date.UTC(1992, 11, 20) - 59_000);
    expect(Math.abs(body("venus").litPermille - 647)).toBeLessThan(2);
    expect(body("venus").milliMag / 1000).toBeCloseTo(-4.2, 0);
  });
  test("ring and pole of Saturn, 1992 December 16.0 TD (Meeus 1998, example 45.a)", () => {
    const { body } = at(Date.UTC(1992, 11, 16) - 59_000);
    // The book's are geocentric, of the equinox of date: B +16.442, P 6.741.
    expect(Math.abs(Math.asin(body("saturn").tiltPermille / 1000) / DEG - 16.44)).toBeLessThan(0.1);
    expect(Math.abs(body("saturn").poleDeg - 6.74)).toBeLessThan(0.2);
  });
  test("pole of Jupiter, 1992 December 16.0 TD (Meeus 1998, example 43.a)", () => {
    const { body } = at(Date.UTC(1992, 11, 16) - 59_000);
    // Planetocentric declination of the Earth -2.48, position angle of the pole 24.80.
    expect(Math.abs(Math.asin(body("jupiter").tiltPermille / 1000) / DEG + 2.48)).toBeLessThan(0.1);
    expect(Math.abs(body("jupiter").poleDeg - 24.8)).toBeLessThan(0.2);
  });
  test("keeps sizes and magnitudes within what handbooks give", () => {
    const range = {
      sun: [1886, 1953],
      moon: [1735, 2050],
      mercury: [4.4, 13.1],
      venus: [9.5, 67],
      mars: [3.4, 25.8],
      jupiter: [30.4, 50.2],
      saturn: [14.4, 20.8],
      uranus: [3.3, 4.1],
      neptune: [2.1, 2.4],
    } as const;
    const mags = {
      sun: [-26.9, -26.5],
      moon: [-12.9, 0],
      mercury: [-2.6, 7.3],
      venus: [-5, -2.9],
      mars: [-3, 1.9],
      jupiter: [-3, -1.6],
      saturn: [-0.6, 1.4],
      uranus: [5.3, 6.1],
      neptune: [7.6, 8.1],
    } as const;
    for (let month = 0; month < 40; month++) {
      for (const { name, diameterMas, milliMag, raMas, decMas } of at(Date.UTC(2026, month, 7, 5)).bodies) {
        expect(diameterMas / 1000, name).toBeGreaterThan(range[name][0]);
        expect(diameterMas / 1000, name).toBeLessThan(range[name][1]);
        expect(milliMag / 1000, name).toBeGreaterThan(mags[name][0]);
        expect(milliMag / 1000, name).toBeLessThan(mags[name][1]);
        for (const whole of [diameterMas, milliMag, raMas, decMas]) expect(Number.isInteger(whole)).toBe(true);
      }
    }
  });
  test("parallax is the only thing between the middle of the Earth and the site", () => {
    const utcMs = Date.UTC(2027, 4, 3, 22);
    for (const { name, ...mas } of at(utcMs).bodies)
      expect(separationRad(dirFromMas(mas), bodyDir(name, utcMs)) / DEG, name).toBeLessThan(
        name === "moon" ? 1.02 : 0.01,
      );
  });
  test("Jupiter's moons, 1992 December 16.0 UT (Meeus 1998, example 44.b)", () => {
    const { moons, body } = at(Date.UTC(1992, 11, 16));
    const radiusMas = body("jupiter").diameterMas / 2;
    // X and Y of the book in radii of Jupiter, west and along its axis north; the square of both does not know the axis.
    const book = {
      Io: [-3.4503, 0.2137],
      Europa: [7.4418, 0.2752],
      Ganymede: [1.2011, 0.59],
      Callisto: [7.072, 1.029],
    };
    for (const { name, eastMas, northMas } of moons) {
      const [x, y] = book[name] as [number, number];
      expect(Math.abs(Math.hypot(eastMas, northMas) / radiusMas - Math.hypot(x, y)), name).toBeLessThan(0.03);
      expect(Math.sign(-eastMas), name).toBe(Math.sign(x));
    }
  });
  test("a moon of Jupiter keeps to its orbit and is now before, now behind", () => {
    const radii = { Io: 6, Europa: 9.6, Ganymede: 15.2, Callisto: 26.7 };
    const before = new Set<string>();
    for (let hours = 0; hours < 400; hours += 7) {
      const { moons, body } = at(Date.UTC(2026, 10, 1, hours));
      const radiusMas = body("jupiter").diameterMas / 2;
      for (const { name, eastMas, northMas, isBefore, milliMag } of moons) {
        expect(Math.hypot(eastMas, northMas) / radiusMas).toBeLessThan(radii[name]);
        expect(milliMag).toBeGreaterThan(4300);
        expect(milliMag).toBeLessThan(6800);
        before.add(`${name} ${isBefore}`);
      }
    }
    expect(before.size).toBe(8);
  });
});

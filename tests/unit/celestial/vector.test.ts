import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  cross,
  DAS_RAD,
  DEG,
  dirFromRadec,
  dot,
  MAS_RAD,
  normalise,
  offsetDir,
  positionAngleRad,
  radecFromDir,
  separationRad,
  slerpDir,
  TWO_PI,
} from "#core/celestial/vector.ts";
import { aDir, anAngle, turnBetween } from "./arbitrary.ts";

describe("right ascension and declination", () => {
  it("come back from the vector", () => {
    fc.assert(
      fc.property(anAngle(0, TWO_PI), anAngle(-89.999 * DEG, 89.999 * DEG), (raRad, decRad) => {
        const back = radecFromDir(dirFromRadec(raRad, decRad));
        expect(turnBetween(back.raRad, raRad) * Math.cos(decRad)).toBeLessThan(1e-15);
        expect(Math.abs(back.decRad - decRad)).toBeLessThan(5e-16);
        expect(back.raRad).toBeGreaterThanOrEqual(0);
        expect(back.raRad).toBeLessThan(TWO_PI);
      }),
    );
  });

  it("are 0 and a right angle at the poles, and go into the given object", () => {
    const out = { raRad: 9, decRad: 9 };
    expect(radecFromDir([0, 0, -1], out)).toBe(out);
    expect(out).toEqual({ raRad: 0, decRad: -Math.PI / 2 });
    expect(radecFromDir([1, -1e-20, 0]).raRad).toBe(0);
  });
});

describe("separation and position angle", () => {
  it("are symmetric and zero for one and the same", () => {
    fc.assert(
      fc.property(aDir, aDir, (a, b) => {
        expect(separationRad(a, b)).toBe(separationRad(b, a));
        expect(separationRad(a, a)).toBeLessThan(1e-16);
      }),
    );
  });

  it("say where offsetDir went", () => {
    fc.assert(
      fc.property(aDir, anAngle(0, TWO_PI), anAngle(1e-6, 3.1), (from, angle, distance) => {
        const to = offsetDir(from, angle, distance);
        expect(Math.abs(separationRad(from, to) - distance)).toBeLessThan(2e-15);
        const slack = 1e-14 / (Math.sin(distance) * Math.max(1e-6, Math.hypot(from[0], from[1])));
        expect(turnBetween(positionAngleRad(from, to), angle)).toBeLessThan(slack);
      }),
    );
  });

  it("count from north through east", () => {
    const here = dirFromRadec(1, 0.5);
    expect(positionAngleRad(here, dirFromRadec(1, 0.6))).toBeCloseTo(0, 12);
    expect(positionAngleRad(here, dirFromRadec(1.0001, 0.5)) / DEG).toBeCloseTo(90, 2);
    expect(positionAngleRad(here, dirFromRadec(1, 0.4)) / DEG).toBeCloseTo(180, 12);
  });

  it("take north at a pole as the meridian of right ascension 0", () => {
    expect(separationRad(offsetDir([0, 0, 1], Math.PI, 0.1), dirFromRadec(0, Math.PI / 2 - 0.1))).toBeLessThan(1e-15);
  });
});

describe("great circles", () => {
  it("are walked at an even pace", () => {
    fc.assert(
      fc.property(aDir, anAngle(0, TWO_PI), anAngle(0, 3), anAngle(0, 1), (a, angle, distance, t) => {
        const b = offsetDir(a, angle, distance);
        const between = slerpDir(a, b, t);
        expect(Math.abs(separationRad(a, between) - t * distance)).toBeLessThan(1e-14);
        expect(Math.abs(separationRad(between, b) - (1 - t) * distance)).toBeLessThan(1e-14);
      }),
    );
  });

  it("stay put between equal directions", () => {
    const a = dirFromRadec(2, -1);
    expect(separationRad(slerpDir(a, a, 0.3), a)).toBeLessThan(1e-15);
  });
});

it("has right-handed products and unit length", () => {
  expect(cross([1, 0, 0], [0, 1, 0])).toEqual([0, 0, 1]);
  expect(dot([1, 2, 3], [4, 5, 6])).toBe(32);
  expect(normalise([0, 3, 4])).toEqual([0, 0.6, 0.8]);
});

it("counts 3600 arcseconds to the degree", () => {
  expect(DAS_RAD * 36_000).toBeCloseTo(DEG, 15);
  expect(MAS_RAD * 3_600_000).toBeCloseTo(DEG, 15);
});

import { describe, expect, test } from "vitest";
import { constellationOf } from "#core/celestial/constellation.ts";
import { DEG, radecFromDir, separationRad } from "#core/celestial/vector.ts";
import { DataFileError } from "#core/seams/errors.ts";
import type { Dir, ObjectKind, SkyObject } from "#core/seams/index.ts";
import { plainName } from "#core/sky/names/letters.ts";
import { catalogueObjects, objectOfRow } from "#core/sky/objects.ts";

const objects = catalogueObjects();
/**
 * Mean surface brightness of the brighter objects of each kind, V per square arcsecond, 5 and 95 %: quantiles of the open
 * NGC/IC catalogue (OpenNGC, CC BY-SA 4.0), objects to V 11.5.
 */
const SURFACE: Partial<Record<ObjectKind, readonly [number, number]>> = {
  openCluster: [18.1, 22.7],
  globularCluster: [19.3, 22.6],
  planetaryNebula: [12.8, 21.4],
  emissionNebula: [17, 24.8],
  reflectionNebula: [17, 24.8],
  supernovaRemnant: [17, 24.8],
  galaxy: [20.9, 23.1],
};
/** Spread wide and faint, or a few brilliant stars close together. */
const EXTREMES = new Set(["M101", "NGC246", "NGC6152", "NGC3293", "IC2581", "NGC6231", "NGC2362"]);
/** Right ascension in minutes of time, mean equinox of 1860; precession of Meeus (1998, Astronomical Algorithms, 21.2). */
function minutesOf1860(dir: Dir): number {
  const t = -1.4;
  const zeta = (2306.2181 * t + 0.30188 * t * t) * (DEG / 3600);
  const z = (2306.2181 * t + 1.09468 * t * t) * (DEG / 3600);
  const theta = (2004.3109 * t - 0.42665 * t * t) * (DEG / 3600);
  const { raRad, decRad } = radecFromDir(dir);
  const a = Math.cos(decRad) * Math.sin(raRad + zeta);
  const b = Math.cos(theta) * Math.cos(decRad) * Math.cos(raRad + zeta) - Math.sin(theta) * Math.sin(decRad);
  return (((Math.atan2(a, b) + z) / DEG + 720) % 360) * 4;
}
const surface = ({ magV, majorArcmin, minorArcmin }: SkyObject) =>
  magV + 2.5 * Math.log10((Math.PI / 4) * majorArcmin * minorArcmin * 3600);

describe("the objects of the catalogue sky", () => {
  test("lie in the constellations that handbooks say", () => {
    expect(objects.map(({ id, dir }) => `${id} ${constellationOf(dir).abbr}`)).toEqual(
      objects.map(({ id, constellation }) => `${id} ${constellation}`),
    );
  });

  test("hold all of Messier's list, and as many again of both hemispheres", () => {
    const messier = objects.flatMap(({ names }) => names.filter((name) => /^M \d+$/.test(name)));
    expect(new Set(messier)).toEqual(new Set(Array.from({ length: 110 }, (_, i) => `M ${i + 1}`)));
    expect(objects.length).toBeGreaterThanOrEqual(300);
    const southern = objects.filter(({ dir, names }) => dir[2] < -0.5 && !names.some((name) => messier.includes(name)));
    expect(southern.length).toBeGreaterThanOrEqual(90);
    const kinds = new Set(objects.map(({ kind }) => kind));
    for (const kind of [...Object.keys(SURFACE), "darkNebula", "asterism"]) expect(kinds).toContain(kind);
  });

  test("of the New General Catalogue stand in its order, by right ascension of 1860", () => {
    const listed = objects
      .flatMap(({ names, dir }) => {
        const number = names.map((name) => /^NGC (\d+)$/.exec(name)?.[1]).find((found) => found !== undefined);
        return number === undefined ? [] : [{ number: Number(number), minutes: minutesOf1860(dir) }];
      })
      .sort((one, other) => one.number - other.number);
    expect(listed.length).toBeGreaterThan(330);
    const back = listed.slice(1).filter(({ minutes }, i) => minutes < listed[i]!.minutes - 0.6);
    // NGC 188, five degrees from the pole, was placed 1.4 minutes short: NGC 205 comes after it and lies before.
    expect(back.map(({ number }) => number)).toEqual([205]);
  });

  test("come once, under names of their own, no two at one place", () => {
    const names = objects.flatMap((object) => object.names.map(plainName));
    expect(new Set(names).size).toBe(names.length);
    objects.forEach((object, i) => {
      for (const other of objects.slice(i + 1))
        expect(separationRad(object.dir, other.dir) / DEG, `${object.id} ${other.id}`).toBeGreaterThan(0.05);
    });
  });

  test.each(objects.map((object) => [object.id, object] as const))(
    "%s is of its kind's surface brightness",
    (id, object) => {
      expect(object.looks).toMatch(/^[A-Z].{20,130}\.$/);
      const range = SURFACE[object.kind];
      if (!range) return;
      // Middle nine tenths, widened by 0.6 mag (M 104 is the brightest galaxy), by 1.5 for known extremes.
      const more = EXTREMES.has(id) ? 1.5 : 0.6;
      expect(surface(object)).toBeGreaterThan(range[0] - more);
      expect(surface(object)).toBeLessThan(range[1] + more);
    },
  );

  test("hold a row to what it must be", () => {
    const row = {
      id: "X1",
      names: ["X 1"],
      kind: "galaxy",
      raDeg: 10,
      decDeg: 20,
      magV: 9,
      majorArcmin: 4,
      minorArcmin: 2,
      axisDeg: 30,
      constellation: "Psc",
      looks: "A smudge.",
    };
    expect(objectOfRow(row).kind).toBe("galaxy");
    const faults = [
      { kind: "planet" },
      { raDeg: 360 },
      { decDeg: Number.NaN },
      { minorArcmin: 5 },
      { names: [] },
      { magV: null },
    ];
    for (const fault of faults) expect(() => objectOfRow({ ...row, ...fault })).toThrow(DataFileError);
  });
});

import { describe, expect, test } from "vitest";
import { constellationOf } from "#core/celestial/constellation.ts";
import { DEG, separationRad } from "#core/celestial/vector.ts";
import { DataFileError } from "#core/seams/errors.ts";
import type { ObjectKind, SkyObject } from "#core/seams/index.ts";
import { plainName } from "#core/sky/names/letters.ts";
import { catalogueObjects, objectOfRow } from "#core/sky/objects.ts";

const objects = catalogueObjects();
/** Constellation of each, from handbooks. */
const HOME: Readonly<Record<string, string>> = {
  Lyr: "M57",
  Her: "M13 NGC6207",
  Vul: "M27 NGC6830",
  Sge: "M71",
  Peg: "M15",
  Cen: "NGC5139 NGC5128",
  And: "M31 M32 M110",
  Tuc: "NGC362 NGC104 NGC292",
  Sct: "M11 M26 NGC6712",
  Vir: "M104",
  Tau: "M1 M45",
  Lep: "M79",
  CVn: "M51 NGC5195 M3",
  Gem: "NGC2392 NGC2420",
  Tri: "M33",
  Cep: "NGC188",
  Leo: "M66 M65 NGC3628",
  UMa: "M81 M82 NGC3077 NGC2976",
  Scl: "NGC253 NGC288",
  Cet: "NGC247",
  Vel: "NGC3132",
  Per: "NGC869 NGC884 NGC957",
  Cas: "Stock2",
  Cru: "NGC4755",
  Ori: "M42 M43 NGC1981",
  Cnc: "M44",
};
/**
 * Mean surface brightness of the brighter objects of each kind, V per square arcsecond, 5 and 95 %: quantiles of the open
 * NGC/IC catalogue (OpenNGC, CC BY-SA 4.0), objects to V 11.5.
 */
const SURFACE: Partial<Record<ObjectKind, readonly [number, number]>> = {
  openCluster: [18.1, 22.7],
  globularCluster: [19.3, 22.6],
  planetaryNebula: [12.8, 21.4],
  emissionNebula: [17, 24.8],
  supernovaRemnant: [17, 24.8],
  galaxy: [20.9, 23.1],
};
const surface = ({ magV, majorArcmin, minorArcmin }: SkyObject) =>
  magV + 2.5 * Math.log10((Math.PI / 4) * majorArcmin * minorArcmin * 3600);

describe("the objects of the catalogue sky", () => {
  test("lie in the constellations where handbooks have them", () => {
    const found = Object.fromEntries(objects.map(({ id, dir }) => [id, constellationOf(dir).abbr]));
    const wanted = Object.entries(HOME).flatMap(([abbr, ids]) => ids.split(" ").map((id) => [id, abbr]));
    expect(found).toEqual(Object.fromEntries(wanted));
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
    (_, object) => {
      const [bright, faint] = SURFACE[object.kind]!;
      // A few known extremes lie a little outside: the middle nine tenths are widened by 0.6 mag (M 104 is the brightest).
      expect(surface(object)).toBeGreaterThan(bright - 0.6);
      expect(surface(object)).toBeLessThan(faint + 0.6);
      expect(object.looks).toMatch(/^[A-Z].{20,130}\.$/);
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

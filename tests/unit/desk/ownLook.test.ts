/** One's own catalogue: nights to look round in, places to begin at, and whether a way has stars enough. */
import { readFileSync } from "node:fs";
import { describe, expect, it, test } from "vitest";
import { moonDir, sunDir } from "#core/celestial/bodies.ts";
import { altAzFromDir, horizonFromIcrs } from "#core/celestial/frames.ts";
import { DEG, dirFromRadec } from "#core/celestial/vector.ts";
import { checkLesson } from "#core/lesson/format.ts";
import { toHopSpec } from "#core/lesson/hopSpec.ts";
import { realLookups } from "#core/lesson/realLookups.ts";
import { lookupOf } from "#core/lesson/skyLookup.ts";
import type { Dir, Resident, StarBlock } from "#core/seams/index.ts";
import { catalogueNames } from "#core/sky/names/catalogueNames.ts";
import { catalogueObjects } from "#core/sky/objects.ts";
import { lookLesson, nightFor, skyOfLook } from "../../../src/desk/import/lookLesson.ts";
import { brightestPlace, namedPlace } from "../../../src/desk/import/lookPlaces.ts";
import { ENOUGH_STARS, fewestStars } from "../../../src/desk/import/thinWay.ts";
import type { OpenSky } from "../../../src/desk/play/openSky.ts";

const at = (raDeg: number, decDeg: number) => dirFromRadec(raDeg * DEG, decDeg * DEG);

/** A sky whose catalogue has these stars alone. */
function skyWith(stars: readonly (readonly [dir: Dir, milliMag: number])[]): OpenSky {
  const sorted = stars.toSorted((a, b) => a[1] - b[1]);
  const block: StarBlock = {
    key: { order: 0, pixel: 0, layer: 0 },
    count: sorted.length,
    dirs: Float32Array.from(sorted.flatMap(([dir]) => [...dir])),
    milliMag: Int16Array.from(sorted, ([, milliMag]) => milliMag),
    colourBV: new Float32Array(sorted.length),
    invented: false,
  };
  const resident: Resident = { blocks: [block], missing: [], complete: true, version: 1 };
  return {
    source: { ref: { kind: "imported", skyVersion: 1 }, resident: () => resident, want: async () => {} },
    names: catalogueNames(),
    objects: catalogueObjects(),
    places: [],
    bordersWithin: async () => [],
    glow: async () => undefined,
    failures: () => [],
    retry: () => undefined,
  };
}

test("every place stands high in a dark, moonless night of its half of the sky", () => {
  for (let raDeg = 0; raDeg < 360; raDeg += 30)
    for (const decDeg of [-89, -60, -33, -5, 8, 20, 50, 75, 90]) {
      const { place, time } = nightFor(at(raDeg, decDeg));
      const utcMs = Date.parse(time);
      const horizon = horizonFromIcrs(place, utcMs);
      const altitudeDeg = (dir: Dir) => altAzFromDir(horizon, dir).altRad / DEG;
      const where = `${raDeg} ${decDeg} ${time}`;
      expect(altitudeDeg(sunDir(utcMs)), where).toBeLessThan(-12);
      expect(altitudeDeg(moonDir(place, utcMs)), where).toBeLessThan(0);
      expect(altitudeDeg(at(raDeg, decDeg)), where).toBeGreaterThan(30);
      expect(altitudeDeg(at(raDeg, decDeg)), where).toBeLessThan(80);
    }
});

describe("a look round", () => {
  const place = { name: "Our Lamp", dir: at(279, 38) };
  it("is a hop of no length to nothing that could be seen", () => {
    const lesson = lookLesson(place);
    const sky = skyOfLook(skyWith([]), place);
    const lookup = lookupOf(sky.source.ref, sky.names, sky.objects, sky.places);
    const spec = toHopSpec(lesson, 0, { sky: () => lookup });
    expect(spec.anchor).toEqual(spec.targets[0]!.dir);
    expect(spec.ways[0]!.marks[0]!.name).toBe("Our Lamp");
    expect(sky.objects.at(-1)).toMatchObject({ magV: 99, dir: place.dir });
  });
  it("begins at the brightest star, under its own name where it has one", async () => {
    const sky = skyWith([
      [at(10, 10), 6000],
      [at(279, 38), 1500],
    ]);
    const own = [{ dir: at(279.001, 38), magV: 1.5, label: "Our Lamp" }];
    const named = await brightestPlace(sky, own);
    expect(named!.name).toBe("Our Lamp");
    expect(named!.dir[2]).toBeCloseTo(Math.sin(38 * DEG), 6);
    expect((await brightestPlace(sky, []))!.name).toBe("The brightest star");
    expect(await brightestPlace(skyWith([]), own)).toBeNull();
  });
  it("or at a name: the catalogue's own, else the sky's", () => {
    const own = [{ dir: at(5, 5), magV: 6, label: "Vega", proper: "Vega" }];
    expect(namedPlace("vega", skyWith([]), own)!.dir).toEqual(at(5, 5));
    expect(namedPlace("vega", skyWith([]), [])!.name).toBe("Vega");
    expect(namedPlace("m 31", skyWith([]), [])!.name).toBe("M 31");
    expect(namedPlace("nobody", skyWith([]), own)).toBeNull();
  });
});

describe("whether a way has stars to hop by", () => {
  const text = readFileSync(new URL("../../../lessons/3-03.yaml", import.meta.url), "utf8");
  const lesson = checkLesson("3-03.yaml", text, realLookups).lesson!;
  const GAMMA = at(299.69, 19.49);
  const TARGET = at(299.9, 22.72);
  const about = (of: Dir, count: number, milliMag: number) =>
    Array.from({ length: count }, (_, i): [Dir, number] => {
      const angle = i * 2.4;
      const [x, y, z] = of;
      return [[x + 0.02 * Math.cos(angle), y + 0.02 * Math.sin(angle), z] as Dir, milliMag];
    });
  test.each([
    ["none", [], 0],
    ["only about the anchor", about(GAMMA, 12, 7000), 0],
    ["enough about both", [...about(GAMMA, 12, 7000), ...about(TARGET, 7, 8000)], 7],
    ["below what the finder shows", [...about(GAMMA, 12, 7000), ...about(TARGET, 7, 12_000)], 0],
  ] as const)("%s", async (_, stars, least) => {
    const fewest = await fewestStars(lesson, skyWith(stars));
    if (least === 0) expect(fewest).toBeLessThan(ENOUGH_STARS);
    else expect(fewest).toBeGreaterThanOrEqual(least);
  });
});

/** Comets and minor planets of a lesson in the field, on the chart and in the search. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { sunDir } from "#core/celestial/bodies.ts";
import { DEG, positionAngleRad, separationRad } from "#core/celestial/vector.ts";
import { signPath } from "#core/chart/signs.ts";
import { objectLook } from "#core/field/objectLook.ts";
import { emptyField, seenField } from "#core/field/seenField.ts";
import { bodiesOf } from "#core/lesson/bodies.ts";
import { checkLesson } from "#core/lesson/format.ts";
import { realLookups } from "#core/lesson/realLookups.ts";
import { gearById } from "#core/optics/gear.ts";
import type { Dir, Resident, StarBlock, StarSource } from "#core/seams/index.ts";
import { answersTo, whatWords } from "../../../src/desk/search/answers.ts";
import { searchedSkies } from "../../../src/desk/search/searched.ts";

const text = readFileSync(new URL("../lesson/comet.yaml", import.meta.url), "utf8");
const lesson = checkLesson("comet.yaml", text, realLookups).lesson!;
const bodies = bodiesOf(lesson);
const [comet, planet] = bodies as [(typeof bodies)[0], (typeof bodies)[0]];
const seeing = realLookups.seeing(lesson);

const star: StarBlock = {
  key: { order: 1, pixel: 3, layer: 0 },
  count: 1,
  dirs: Float32Array.from(planet.dir),
  milliMag: Int16Array.of(3000),
  colourBV: Float32Array.of(0.5),
  invented: false,
};
const resident: Resident = { blocks: [star], missing: [], complete: true, version: 7 };
const source: StarSource = {
  ref: { kind: "catalogue", skyVersion: 1 },
  resident: () => resident,
  want: async () => {},
};
const look = (pointing: Dir, gear: string, objects = bodies, out = emptyField()) =>
  seenField({ pointing, gear: gearById(gear), source, seeing, objects }, out);

describe("in the field", () => {
  it("a minor planet is one point more among the stars, in glass and to the eye", () => {
    for (const gear of ["finder-9x50", "eye"]) {
      const { blocks } = look(planet.dir, gear);
      expect(blocks.length).toBe(2);
      expect(blocks[0]).toBe(star);
      expect(blocks[1]).toMatchObject({ count: 1, moves: true, invented: false });
      expect(separationRad([...blocks[1]!.dirs] as unknown as Dir, planet.dir)).toBeLessThan(1e-6);
      expect(blocks[1]!.milliMag[0]).toBe(Math.round(1000 * planet.magV));
    }
  });
  it("the list of blocks stays the same while nothing changes, and goes back without bodies", () => {
    const out = emptyField();
    const { blocks } = look(planet.dir, "finder-9x50", bodies, out);
    expect(look(planet.dir, "finder-9x50", bodies, out).blocks).toBe(blocks);
    expect(look(planet.dir, "finder-9x50", [], out).blocks).toBe(resident.blocks);
  });
  it("a comet is a glow with a bright middle", () => {
    const { objects } = look(comet.dir, "newton200-48x");
    expect(objects.map(({ object }) => object)).toEqual([comet]);
    expect(objectLook(comet, 1, 13).form).toBe("coma");
    // Its heart is 1.3 mag over what is judged (fitted by eye, no source).
    expect(objectLook(comet, 1, 13).cut).toBeCloseTo(10 ** (-0.4 * 2.3), 9);
  });
});

it("a comet's tail points away from the Sun", () => {
  const sunRad = positionAngleRad(comet.dir, sunDir(Date.parse(lesson.time)));
  expect(Math.cos(comet.axisDeg * DEG - sunRad)).toBeLessThan(-0.999);
});

describe("on the chart", () => {
  it("the strokes of a comet's sign leave its head on the tail's side: north up, east left", () => {
    const ends = (axisRad: number) =>
      [...signPath({ sign: "comet", r: 10, axisRad, flat: 1 }).matchAll(/L(\S+) (\S+?)(?=M|$)/g)].map((end) => [
        Number(end[1]),
        Number(end[2]),
      ]);
    const north = ends(0);
    expect(north.length).toBe(2);
    for (const [x, y] of north) expect([Math.abs(x!) < 10, y! < -15]).toEqual([true, true]);
    for (const [x, y] of ends(Math.PI / 2)) expect([x! < -15, Math.abs(y!) < 10]).toEqual([true, true]);
  });
  it("a minor planet's sign is of no other kind", () => {
    const path = signPath({ sign: "minorPlanet", r: 6, axisRad: 0, flat: 1 });
    expect(path).toMatch(/^M0 -6L3.6 0L0 6L-3.6 0Z$/);
  });
});

describe("in the search", () => {
  const skies = searchedSkies(lesson, [], [], [], bodies);
  it.each([
    ["comet whin", "Comet Whin", "comet in Hercules, magnitude 6.3"],
    ["heathr", "Heather", "minor planet in Aquarius, magnitude"],
  ])("%s is found", (query, name, what) => {
    const [best] = answersTo(query, skies);
    expect(best!.match.name).toBe(name);
    expect(whatWords(best!)).toContain(what);
  });
  it("not where another lesson is hopped", () => {
    expect(answersTo("comet whin", searchedSkies({ sky: "catalogue" }, [], []))).toEqual([]);
  });
});

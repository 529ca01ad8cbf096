import { readFileSync } from "node:fs";
import { describe, expect, it, test } from "vitest";
import { DEG, separationRad } from "#core/celestial/vector.ts";
import { bodiesOf } from "#core/lesson/bodies.ts";
import { checkLesson } from "#core/lesson/format.ts";
import { toHopSpec } from "#core/lesson/hopSpec.ts";
import { realLookups } from "#core/lesson/realLookups.ts";
import { smallLookups } from "./smallSky.ts";
import { SOUND } from "./sound.ts";

const COMET = readFileSync(new URL("comet.yaml", import.meta.url), "utf8");
const { lesson, findings } = checkLesson("comet.yaml", COMET, realLookups);
const [comet, planet] = bodiesOf(lesson!);

describe("a lesson with a comet and a minor planet of its own", () => {
  it("has no finding over the real sky", () => {
    expect(findings).toEqual([]);
  });

  it("has both as objects of its sky, under their names in any spelling", () => {
    const sky = realLookups.sky(lesson!);
    expect(sky.find("comet whin")?.object).toEqual(comet);
    expect(sky.find("HEATHER")?.object).toEqual(planet);
    expect(sky.objects.slice(-2)).toEqual([comet, planet]);
    expect([...sky.names()].slice(-2)).toEqual(["Comet Whin", "Heather"]);
  });

  it("leaves the sky of other lessons alone", () => {
    expect(realLookups.sky({ ...lesson!, bodies: [] }).find("Comet Whin")).toBeUndefined();
  });

  it("makes the comet the target of the hop, as wide as its coma", () => {
    const [target] = toHopSpec(lesson!, 0, realLookups).targets;
    expect(target).toMatchObject({ objectId: comet!.id, sizeDas: 8 * 600 });
  });

  it("judges the comet as a glow and the minor planet as a star", () => {
    const seeing = realLookups.seeing(lesson!);
    expect(seeing.object(comet!.id, "newton200-48x").band).toBe("seen");
    const { marginMilliMag } = seeing.object(planet!.id, "finder-9x50");
    const { avertedMilliMag } = seeing.star(planet!.dir, 0.7, "finder-9x50");
    expect(Math.abs(marginMilliMag - (avertedMilliMag - 1000 * planet!.magV))).toBeLessThan(30);
  });

  it("has the comet's tail away from the Sun, and its place of that night", () => {
    expect(comet).toMatchObject({ kind: "comet", profile: "coma", majorArcmin: 8, minorArcmin: 8 });
    const [later] = bodiesOf({ ...lesson!, time: "2027-09-01T21:00:00Z" });
    const movedDeg = separationRad(comet!.dir, later!.dir) / DEG;
    expect(movedDeg).toBeGreaterThan(0.3);
    expect(movedDeg).toBeLessThan(2);
  });

  it("gives a comet of unknown coma the usual size at its distance", () => {
    const [whole] = bodiesOf({ ...lesson!, bodies: [{ ...lesson!.bodies[0]!, comaArcmin: undefined }] });
    // 200,000 km at 1 au are 4.6' (their ratio); this one is nearer.
    expect(whole!.majorArcmin).toBeGreaterThan(4.6);
    expect(whole!.majorArcmin).toBeLessThan(20);
  });
});

describe("what an author can get wrong about a body is found at its line", () => {
  const lines = SOUND.split("\n");
  const line = (text: string) => lines.findIndex((each) => each.includes(text)) + 1;
  const HEATHER = line("name: Heather");
  test.each([
    ["perihelionAu: 0.92", "perihelionAu: 0", "FW013", line("perihelionAu: 0.92")],
    ["perihelionAu: 0.92", "perihelionAu: -1", "FW013", line("perihelionAu: 0.92")],
    ["perihelionAu: 0.92", "perihelionAu: .nan", "FW012", line("perihelionAu: 0.92")],
    ["perihelionAu: 0.92", "perihelionAu: .inf", "FW012", line("perihelionAu: 0.92")],
    ["eccentricity: 1\n", "eccentricity: 10.5\n", "FW013", line("eccentricity: 1")],
    ["eccentricity: 1\n", "eccentricity: -0.1\n", "FW013", line("eccentricity: 1")],
    ["inclinationDeg: 45", "inclinationDeg: 181", "FW013", line("inclinationDeg: 45")],
    ["perihelion: 2027", "perihelion: 9027", "FW013", line("perihelion: 2027")],
    ["perihelion: 2027-10-20T20:00:00Z", "perihelion: 20 Oct 2027", "FW013", line("perihelion: 2027")],
    ["kind: comet", "kind: commet", "FW014", line("kind: comet")],
    ["    totalMag: 6.5\n", "    totalMag: 6.5\n    slope: 41\n", "FW013", line("totalMag: 6.5") + 1],
    ["absoluteMag: 6 }", "absoluteMag: 6, slope: 15 }", "FW044", HEATHER],
    ["absoluteMag: 6 }", "absoluteMag: 6, comaArcmin: 4 }", "FW044", HEATHER],
    ["absoluteMag: 6 }", "}", "FW044", HEATHER],
    ["semiMajorAu: 2.36", "semiMajorAu: 2.36, perihelionAu: 2.1", "FW043", HEATHER],
    ["meanAnomalyDeg: 80", "meanAnomalyDeg: 80, perihelion: 2027-05-01T00:00:00Z", "FW043", HEATHER],
    ["meanAnomalyDeg: 80, ", "", "FW043", HEATHER],
    ["eccentricity: 0.09", "eccentricity: 1.2", "FW043", HEATHER],
    ["name: Heather", "name: Whin", "FW045", HEATHER],
    ["name: Heather", "name: Bright", "FW045", HEATHER],
  ])("%s as %s: %s", (from, to, code, at) => {
    expect(SOUND).toContain(from);
    const checked = checkLesson("t.yaml", SOUND.replace(from, to), smallLookups);
    expect(checked.lesson).toBeUndefined();
    expect(checked.findings.map((each) => [each.code, each.line])).toContainEqual([code, at]);
  });

  it("says NaN where there is none but NaN", () => {
    const { findings: found } = checkLesson("t.yaml", SOUND.replace("0.92", ".nan"), smallLookups);
    expect(found[0]?.message).toBe("bodies[1].perihelionAu is NaN; it should be a number");
  });

  test.each([
    ["a needle of an ellipse", "perihelionAu: 0.001", "eccentricity: 0.9999999"],
    ["a grazing hyperbola", "perihelionAu: 0.001", "eccentricity: 10"],
    ["a far circle", "perihelionAu: 100", "eccentricity: 0"],
  ])("places %s within a moment", (_, perihelion, eccentricity) => {
    for (const year of ["1900", "2027", "2199"]) {
      const text = SOUND.replace("perihelionAu: 0.92", perihelion)
        .replace("eccentricity: 1\n", `${eccentricity}\n`)
        .replace("perihelion: 2027", `perihelion: ${year}`);
      const began = process.cpuUsage();
      const checked = checkLesson("t.yaml", text, smallLookups);
      expect(process.cpuUsage(began).user / 1000).toBeLessThan(200);
      const [body] = bodiesOf(checked.lesson!);
      expect(body!.dir.every(Number.isFinite)).toBe(true);
      expect(Math.abs(body!.magV)).toBeLessThanOrEqual(30);
    }
  });
});

import { describe, expect, test } from "vitest";
import { bandOf, plainSeeing } from "#core/eye/limits.ts";
import { GEAR } from "#core/optics/gear.ts";
import { InputError } from "#core/seams/errors.ts";
import type { Dir } from "#core/seams/index.ts";
import { catalogueObjects } from "#core/sky/objects.ts";
import { practiceFacts } from "#core/sky/practice/practiceSky.ts";

const ANYWHERE: Dir = [1, 0, 0];
const country = plainSeeing({}, catalogueObjects());
const limitOf = (seeing: ReturnType<typeof plainSeeing>, gear: string) =>
  seeing.star(ANYWHERE, 0.7, gear).avertedMilliMag;

describe("plain seeing", () => {
  test("gives each instrument its own limit under a country sky, and 1.5 mag less to a stare", () => {
    for (const gear of GEAR.values()) {
      const { avertedMilliMag, directMilliMag } = country.star(ANYWHERE, 0.7, gear.id);
      expect(avertedMilliMag).toBe(Math.round(gear.plainLimitMag * 1000));
      expect(directMilliMag).toBe(avertedMilliMag - 1500);
    }
    expect(() => country.star(ANYWHERE, 0.7, "spyglass")).toThrow(InputError);
  });

  test("reaches less deep in town and deeper on the mountain, as the course counts on", () => {
    const under = (sky: number) => plainSeeing({ skyMagPerArcsec2: sky }, []);
    const finder = [19.6, 20.8, 21.5].map((sky) => limitOf(under(sky), "finder-9x50") / 1000);
    for (const [i, mag] of [9.4, 9.8, 10.1].entries()) expect(Math.abs(finder[i]! - mag)).toBeLessThan(0.1);
    expect(limitOf(under(19.6), "eye") / 1000).toBeCloseTo(5.3, 1);
  });

  test("lets a slider set a limit, for its instrument alone", () => {
    const set = plainSeeing({ skyMagPerArcsec2: 18, limitMag: { "finder-9x50": 8.25 } }, []);
    expect(limitOf(set, "finder-9x50")).toBe(8250);
    expect(limitOf(set, "binocular-10x50")).toBe(9600 - 1120);
  });

  test("calls a margin seen, edge or not", () => {
    expect([401, 400, 0, -400, -401].map(bandOf)).toEqual(["seen", "edge", "edge", "edge", "not"]);
    expect(country.object("no such thing", "finder-9x50").band).toBe("not");
  });

  // Margins worked out by the full model (Crumey 2014, MNRAS 442, 2600, with the profile of each) for a 50 mm finder of 8x,
  // 2.0 field factor, between a sky of 20 and one of 21.5.
  test.each([
    ["M31", 1.54],
    ["M42", 1.92],
    ["M13", 2.63],
    ["M57", 0.76],
    ["M27", 1.32],
    ["M81", 0.62],
    ["M82", 0.14],
    ["M1", 0.58],
    ["M51", -0.06],
    ["M33", 0.44],
  ])("puts %s in a finder within half a magnitude of the full model", (id, margin) => {
    expect(Math.abs(country.object(id, "finder-9x50").marginMilliMag / 1000 - margin)).toBeLessThan(0.55);
  });

  test("shows every target of the course in the instrument of its lesson", () => {
    const lessons: [string, string, number][] = [
      ["M57 M13 M27 M15 M11 M104 M1 M51", "newton200-48x", 20.8],
      ["M31 M33 NGC362", "newton150-30x", 20.8],
      ["M66 M65", "newton150-30x", 20.8],
      ["NGC188 NGC2392", "newton200-48x", 20.8],
      ["NGC869 NGC884 M44 M45 NGC4755", "binocular-10x50", 20.8],
      ["M81 M3", "catadioptric200-62x", 20.8],
      ["NGC5139 NGC5128 NGC253 NGC3132", "catadioptric200-62x", 21.5],
    ];
    for (const [ids, gear, sky] of lessons) {
      const seeing = plainSeeing({ skyMagPerArcsec2: sky }, catalogueObjects());
      for (const id of ids.split(" ")) expect(seeing.object(id, gear).band, `${id} ${gear}`).toBe("seen");
    }
    // Not to be had in the finder, so says the lesson.
    expect(country.object("M51", "finder-9x50").band).not.toBe("seen");
    expect(country.object("M31", "eye").band).not.toBe("not");
    expect(country.object("M51", "eye").band).toBe("not");
  });

  test("shows the practice cluster in binoculars and its galaxy in a telescope", () => {
    const { cluster, galaxy } = practiceFacts("sallow");
    const seeing = plainSeeing({}, [cluster, galaxy]);
    expect(seeing.object(cluster.id, "binocular-10x50").marginMilliMag).toBeGreaterThan(1500);
    expect(seeing.object(galaxy.id, "newton200-48x").band).toBe("seen");
    expect(seeing.object(galaxy.id, "eye").band).toBe("not");
  });

  test("never shows less with a deeper sky, nor of a brighter thing", () => {
    const [deep, bright] = [22, 18].map((sky) => plainSeeing({ skyMagPerArcsec2: sky }, catalogueObjects()));
    for (const { id } of catalogueObjects()) {
      for (const gear of GEAR.keys()) {
        const { marginMilliMag } = deep!.object(id, gear);
        expect(Number.isInteger(marginMilliMag)).toBe(true);
        expect(marginMilliMag).toBeGreaterThan(bright!.object(id, gear).marginMilliMag);
      }
    }
  });
});

import { describe, expect, it } from "vitest";
import { DEG, dirFromMas, separationRad } from "#core/celestial/vector.ts";
import { bodiesInView } from "#core/field/bodies.ts";
import { withFurther } from "#core/field/withFurther.ts";
import { gearById } from "#core/optics/gear.ts";
import type { Resident, StarBlock, StarSource } from "#core/seams/index.ts";
import { asOneStar } from "#core/sky/closePairs/asOneStar.ts";
import { solarSystemAt } from "#core/sky/solar/solarSystem.ts";

const SITE = { latDeg: 50, lonDeg: 0, heightM: 250 };
/** Jupiter near opposition, 2027-02-11 (Meeus 1998, chapter 36: oppositions of Jupiter; date from memory). */
const AT_MS = Date.UTC(2027, 1, 11, 22);
const system = solarSystemAt(SITE, AT_MS);
const body = (name: string) => system.bodies.find((one) => one.name === name)!;

describe("bodies in a view", () => {
  it("are stars to the naked eye, all but the Moon, and the Sun is never there", () => {
    const { points, discs } = bodiesInView(system, gearById("eye"));
    expect(discs.map(({ name }) => name)).toEqual(["moon"]);
    expect(points.count).toBe(7 + 4);
    const mags = [...points.milliMag];
    expect(mags).toEqual(mags.toSorted((a, b) => a - b));
    for (let i = 0; i < points.count; i++) {
      const dir = [...points.dirs.slice(3 * i, 3 * i + 3)] as [number, number, number];
      expect(separationRad(dir, dirFromMas(body("sun")))).toBeGreaterThan(0.5 * DEG);
    }
  });

  it("Jupiter is a disc at 100 times and has its moons beside it, a star in a finder", () => {
    const high = bodiesInView(system, { ...gearById("eye"), fieldDeg: 0.5 });
    const jupiter = high.discs.find(({ name }) => name === "jupiter")!;
    // Equatorial diameter at opposition: 44" to 50" (handbooks, from memory).
    expect((jupiter.diameterRad / DEG) * 3600).toBeGreaterThan(43);
    expect((jupiter.diameterRad / DEG) * 3600).toBeLessThan(51);
    expect(jupiter.look.litShare).toBeGreaterThan(0.99);
    const near = Array.from({ length: high.points.count }, (_, i) => {
      const dir = [...high.points.dirs.slice(3 * i, 3 * i + 3)] as [number, number, number];
      return separationRad(dir, jupiter.dir) / DEG;
    }).filter((deg) => deg < 0.25);
    expect(near.length, "four moons within a quarter of a degree").toBe(4);
    expect(bodiesInView(system, { ...gearById("eye"), fieldDeg: 5.3 }).discs.map(({ name }) => name)).toEqual(["moon"]);
  });

  it("Saturn is a disc as soon as its ring is wide enough, and stands by its pole; the Moon by its lit limb", () => {
    // Ring A is 2.27 times as wide as the disc: 42" where the disc is 18".
    const at = (fieldDeg: number) => bodiesInView(system, { ...gearById("eye"), fieldDeg }).discs;
    const saturn = at(1.1).find(({ name }) => name === "saturn")!;
    expect(saturn.diameterRad / DEG, "the disc alone would be a star").toBeLessThan(1.1 / 120);
    expect(saturn.axisRad / DEG).toBeCloseTo(body("saturn").poleDeg, 6);
    expect(saturn.look.form).toBe("ringed");
    expect(at(1.1).find(({ name }) => name === "moon")!.axisRad / DEG).toBeCloseTo(body("moon").brightLimbDeg, 6);
    expect(at(3).map(({ name }) => name)).toEqual(["moon"]);
  });

  it("stay apart from stars and from each other, however close: what joins stars leaves them alone", () => {
    const { points } = bodiesInView(system, gearById("eye"));
    const { moves: _, ...stars } = points;
    expect(asOneStar([stars])[0]!.count, "Jupiter and its nearest moons, were they stars").toBeLessThan(points.count);
    const field = [points];
    expect(asOneStar(field)[0]).toBe(points);
  });

  it("a planet is a disc from a hundred and twentieth of the field on: 21 arcsec in an eyepiece of 0.7 degrees", () => {
    const shown = (diameterArcsec: number) => {
      const [mars] = [{ ...body("mars"), diameterMas: 1000 * diameterArcsec }];
      return bodiesInView({ bodies: [mars], moons: [] }, { ...gearById("eye"), fieldDeg: 0.7 }).discs.length;
    };
    expect([shown(20.7), shown(21.3)]).toEqual([0, 1]);
  });

  it("planets and Jupiter's moons have their own colours (Mallama et al. 2017, Icarus 282, 19, from memory)", () => {
    const bvOf = (name: string) =>
      bodiesInView({ bodies: [body(name)], moons: [] }, gearById("eye")).points.colourBV[0]!;
    const names = ["mercury", "venus", "mars", "jupiter", "saturn", "uranus", "neptune"];
    expect(names.map((name) => Number(bvOf(name).toFixed(2)))).toEqual([0.97, 0.8, 1.43, 0.87, 1.01, 0.51, 0.39]);
    const moons = bodiesInView({ bodies: [], moons: system.moons }, gearById("eye")).points;
    expect([...moons.colourBV].map((bv) => Number(bv.toFixed(2)))).toEqual([0.95, 0.95, 0.95, 0.95]);
  });

  it("the Moon's disc is half a degree wide, lit towards the Sun", () => {
    const moon = bodiesInView(system, gearById("eye")).discs[0]!;
    expect(moon.look.litShare).toBeCloseTo(body("moon").litPermille / 1000, 9);
    expect(moon.axisRad).toBeCloseTo(body("moon").brightLimbDeg * DEG, 9);
    expect(moon.diameterRad / DEG).toBeGreaterThan(0.48);
    expect(moon.diameterRad / DEG).toBeLessThan(0.58);
    const sun = dirFromMas(body("sun"));
    const flat = Math.hypot(moon.dir[0], moon.dir[1]);
    const east = [-moon.dir[1] / flat, moon.dir[0] / flat, 0] as const;
    const towardsEast = sun[0] * east[0] + sun[1] * east[1];
    expect(Math.sign(Math.sin(moon.axisRad))).toBe(Math.sign(towardsEast));
  });
});

describe("a source with further stars", () => {
  const block = (count: number): StarBlock => ({
    key: { order: 0, pixel: 0, layer: 0 },
    count,
    dirs: new Float32Array(3 * count),
    milliMag: new Int16Array(count),
    colourBV: new Float32Array(count),
    invented: false,
  });
  it("shows them beside its own, and hands the same answer out while neither changes", () => {
    let own: Resident = { blocks: [block(3)], missing: [], complete: true, version: 1 };
    const source: StarSource = {
      ref: { kind: "catalogue" } as StarSource["ref"],
      resident: () => own,
      want: async () => undefined,
    };
    let further: StarBlock | null = null;
    const shown = withFurther(source, () => further);
    const cone = { centre: [1, 0, 0] as const, radiusRad: 0.1 };
    const first = shown.resident(cone, 6);
    expect(shown.resident(cone, 6)).toBe(first);
    further = block(2);
    const second = shown.resident(cone, 6);
    expect(second.blocks).toEqual([...own.blocks, further]);
    expect(second.version).not.toBe(first.version);
    expect(shown.resident(cone, 6)).toBe(second);
    own = { ...own, version: 2, blocks: [block(5)] };
    expect(shown.resident(cone, 6).blocks[0]!.count).toBe(5);
  });
});

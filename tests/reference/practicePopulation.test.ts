/** Objects of practice skies beside the quantiles of OpenNGC (M. Verga, CC BY-SA 4.0) in `shared/populations.json`. */
import { describe, expect, test } from "vitest";
import { combinedMag } from "#core/celestial/magnitude.ts";
import { DEG, dot, separationRad } from "#core/celestial/vector.ts";
import type { SkyObject } from "#core/seams/index.ts";
import { frameOf } from "#core/sky/practice/frame.ts";
import { membersOf } from "#core/sky/practice/members.ts";
import { planOf } from "#core/sky/practice/plan.ts";
import { practiceConstellations, practiceFacts, practiceObjects } from "#core/sky/practice/practiceSky.ts";
import { seedOf } from "#core/sky/practice/seed.ts";
import table from "#shared/populations.json" with { type: "json" };

const SEEDS = ["sallow", "lantern", "heath"];
const wild = (seed: string) => practiceObjects(seed).slice(2);
const all = SEEDS.flatMap((seed) => wild(seed).map((object) => ({ seed, object })));
const absLatDeg = (seed: string, { dir }: SkyObject) =>
  Math.abs(Math.asin(dot(dir, frameOf(seedOf(seed)).galacticPole))) / DEG;
const share = (values: readonly number[], below: number) =>
  values.filter((value) => value <= below).length / values.length;
const SHARES = [0.05, 0.25, 0.5, 0.75, 0.95];
const kinds = Object.keys(table.kinds) as (keyof typeof table.kinds)[];
const surface = ({ magV, majorArcmin, minorArcmin }: SkyObject) =>
  magV + 2.5 * Math.log10((Math.PI / 4) * majorArcmin * minorArcmin * 3600);

describe.each(kinds)("%s", (kind) => {
  const own = all.filter(({ object }) => object.kind === kind);
  const real = table.kinds[kind];
  /** Three standard errors of a share, and what rounding to a tenth moves. */
  const slack = (at: number) => 3 * Math.sqrt((at * (1 - at)) / own.length) + 0.03;

  test("is as frequent, as bright and as large as in the real sky", () => {
    expect(own.length).toBe(SEEDS.length * real.count);
    SHARES.forEach((at, i) => {
      const mags = own.map(({ object }) => object.magV);
      const sizes = own.map(({ object }) => object.majorArcmin);
      // Few objects have the same magnitude at two of the shares: so many are as bright as that, or brighter.
      const asBright = SHARES[real.magV.lastIndexOf(real.magV[i]!)]!;
      const off = Math.abs(share(mags, real.magV[i]! + 0.05) - asBright);
      expect(off, `V ${at}`).toBeLessThan(slack(asBright) + 0.03);
      // Listed sizes stand on tenths, often many on one value.
      expect(Math.abs(share(sizes, real.majorArcmin[i]! * 1.02) - at), `size ${at}`).toBeLessThan(slack(at) + 0.03);
    });
  });

  // Six remnants say nothing of how size and light go together.
  if (real.count < 10) return;
  test("has the real sky's surface brightness in the middle and mostly between its outer twentieths", () => {
    const values = own.map(({ object }) => surface(object)).sort((a, b) => a - b);
    expect(Math.abs(values[values.length >> 1]! - real.magPerArcsec2[2]!)).toBeLessThan(0.9);
    expect(share(values, real.magPerArcsec2[4]!) - share(values, real.magPerArcsec2[0]!)).toBeGreaterThan(0.7);
  });
});

describe("places", () => {
  const median = (kind: SkyObject["kind"]) => {
    const values = all.filter(({ object }) => object.kind === kind).map(({ seed, object }) => absLatDeg(seed, object));
    return values.sort((a, b) => a - b)[values.length >> 1]!;
  };

  test("galaxies stand away from the plane, clusters and nebulae along it", () => {
    expect(median("galaxy")).toBeGreaterThan(46);
    expect(median("galaxy")).toBeLessThan(60);
    expect(median("openCluster")).toBeLessThan(3.5);
    expect(median("emissionNebula")).toBeLessThan(2.5);
    expect(median("planetaryNebula")).toBeLessThan(14);
    expect(median("darkNebula")).toBeLessThan(5);
  });

  test("half of the globular clusters stand within 32 degrees of the middle of the galaxy", () => {
    const angles = all
      .filter(({ object }) => object.kind === "globularCluster")
      .map(({ seed, object }) => separationRad(object.dir, frameOf(seedOf(seed)).galacticCentre) / DEG);
    expect(share(angles, 32)).toBeGreaterThan(0.47);
    expect(share(angles, 20)).toBeLessThan(0.5);
  });

  test("each has a number of its own, the constellation that it lies in, and none stands where the first hops go", () => {
    for (const seed of SEEDS) {
      const at = practiceConstellations(seed);
      const anchor = practiceFacts(seed).anchor.dir;
      const objects = practiceObjects(seed);
      expect(new Set(objects.map(({ id }) => id)).size).toBe(objects.length);
      for (const { dir, constellation } of objects) expect(constellation).toBe(at(dir));
      for (const { dir } of wild(seed)) expect(separationRad(dir, anchor) / DEG).toBeGreaterThan(9);
    }
  });
});

test("the members of an open cluster give its light together, within its circle", () => {
  const { wild: objects, seed } = planOf("heath");
  objects.forEach((object, i) => {
    if (object.kind !== "openCluster") return;
    const members = membersOf(seed.hash, i, object);
    for (const { dir } of members)
      expect(separationRad(dir, object.dir) / DEG).toBeLessThanOrEqual(object.majorArcmin / 120 + 1e-4);
    // Of faint clusters the faintest members are beyond the sky's depth.
    if (object.magV < 9)
      expect(combinedMag(members.map(({ milliMag }) => milliMag / 1000))).toBeCloseTo(object.magV, 1);
  });
});

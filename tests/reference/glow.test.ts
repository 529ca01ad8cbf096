import { readFile } from "node:fs/promises";
import { describe, expect, test } from "vitest";
import { cross, DEG, dirFromRadec, normalise } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { createCatalogueSource } from "#core/sky/catalogue/catalogueSource.ts";
import { catalogueGlow, catalogueGlowBeyond } from "#core/sky/glow/catalogueGlow.ts";
import { GALACTIC_POLE, type GlowMuAt } from "#core/sky/glow/glowMap.ts";
import { measureGlow } from "#core/sky/glow/measureGlow.ts";
import { practiceGlow, practiceGlowBeyond } from "#core/sky/glow/practiceGlow.ts";
import { dirOfGalacticPlace } from "#core/sky/practice/density.ts";
import { planOf } from "#core/sky/practice/plan.ts";
import table from "../../shared/glow.json" with { type: "json" };

/** Direction of galactic longitude 0, ICRS (The Hipparcos and Tycho Catalogues 1997, vol. 1, sect. 1.5.3). */
const CENTRE = dirFromRadec(266.4051 * DEG, -28.93617 * DEG);
/** One tenth-magnitude star a square degree, mag/arcsec2. */
const S10_MU = 27.78;

const second = normalise(cross(GALACTIC_POLE, CENTRE));
const first = cross(second, GALACTIC_POLE);
function galactic(lDeg: number, bDeg: number): Dir {
  const [x, y, z] = [
    Math.cos(bDeg * DEG) * Math.cos(lDeg * DEG),
    Math.cos(bDeg * DEG) * Math.sin(lDeg * DEG),
    Math.sin(bDeg * DEG),
  ];
  const axis = (i: 0 | 1 | 2) => x * first[i] + y * second[i] + z * GALACTIC_POLE[i];
  return [axis(0), axis(1), axis(2)];
}
const s10 = (mu: number) => 10 ** (-0.4 * (mu - S10_MU));
const LONGITUDES = Array.from({ length: 72 }, (_, i) => 5 * i);
const meanS10 = (glow: GlowMuAt, bDeg: number) =>
  LONGITUDES.reduce((sum, l) => sum + s10(glow(galactic(l, bDeg))), 0) / LONGITUDES.length;

/**
 * Published: 30 S10(V) at the poles, 160 to 640 in the plane by longitude (P. Schlyter, Radiometry and photometry in
 * astronomy, 2017, after handbooks). Those hold the stars brighter than V 6.5 and light scattered by dust too, which this map
 * has not: some 15 to 30 % (from memory).
 */
describe("the Milky Way's light against handbook values", () => {
  const glow = catalogueGlow();

  test("the poles", () => {
    for (const bDeg of [-90, 90]) {
      expect(s10(glow(galactic(0, bDeg)))).toBeGreaterThan(0.65 * 30);
      expect(s10(glow(galactic(0, bDeg)))).toBeLessThan(30);
    }
  });

  test("the plane: the mean lies between the faintest and the brightest place, and no place is brighter than they", () => {
    expect(meanS10(glow, 0)).toBeGreaterThan(160);
    expect(meanS10(glow, 0)).toBeLessThan(400);
    for (const l of LONGITUDES) expect(s10(glow(galactic(l, 0)))).toBeLessThan(640);
  });

  test("it falls from the plane to the poles by a factor of 5 to 20", () => {
    const means = [0, 10, 20, 30, 60, 90].map((b) => (meanS10(glow, b) + meanS10(glow, -b)) / 2);
    for (let i = 1; i < means.length; i++) expect(means[i]).toBeLessThan(means[i - 1]!);
    expect(means[0]! / means.at(-1)!).toBeGreaterThan(5);
    expect(means[0]! / means.at(-1)!).toBeLessThan(20);
  });

  // What anybody sees under a dark sky (common practice, no source).
  test("clouds are bright, rifts dark", () => {
    const [sagittarius, cygnus, carina] = [galactic(2, -4), galactic(75, 1), galactic(287, 0)];
    const [rift, taurus] = [galactic(27, 5), galactic(172, -12)];
    for (const bright of [sagittarius, cygnus, carina])
      for (const dark of [rift, taurus]) expect(s10(glow(bright))).toBeGreaterThan(2 * s10(glow(dark)));
  });

  test("a night's own measure holds the poles' light: there nothing is added, in the plane nearly all", () => {
    expect(s10(catalogueGlowBeyond()(galactic(0, 90)))).toBeLessThan(3);
    expect(s10(catalogueGlowBeyond()(galactic(75, 1)))).toBeGreaterThan(0.85 * s10(glow(galactic(75, 1))));
  });
});

describe("the same of a practice sky", () => {
  const glow = practiceGlow("heath");
  const { frame } = planOf("heath");
  const { galacticPole } = frame;

  test("its pole and plane shine like the catalogue sky's", () => {
    const plane = LONGITUDES.map((lonDeg) => s10(glow(dirOfGalacticPlace(frame, { latDeg: 0, lonDeg }))));
    const mean = plane.reduce((sum, each) => sum + each, 0) / plane.length;
    expect(s10(glow(galacticPole))).toBeGreaterThan(0.8 * meanS10(catalogueGlow(), 90));
    expect(s10(glow(galacticPole))).toBeLessThan(1.25 * meanS10(catalogueGlow(), 90));
    expect(mean).toBeGreaterThan(0.8 * meanS10(catalogueGlow(), 0));
    expect(mean).toBeLessThan(1.25 * meanS10(catalogueGlow(), 0));
  });

  test("lanes and clouds make it uneven along the plane, as it is in the catalogue sky", () => {
    const spread = (of: GlowMuAt, at: (l: number) => Dir) => {
      const mus = LONGITUDES.map((l) => of(at(l)));
      const mean = mus.reduce((sum, mu) => sum + mu, 0) / mus.length;
      return Math.sqrt(mus.reduce((sum, mu) => sum + (mu - mean) ** 2, 0) / mus.length);
    };
    const real = spread(catalogueGlow(), (l) => galactic(l, 0));
    const grown = spread(practiceGlowBeyond("heath", true), (lonDeg) =>
      dirOfGalacticPlace(frame, { latDeg: 0, lonDeg }),
    );
    expect(grown).toBeGreaterThan(0.6 * real);
    expect(grown).toBeLessThan(1.6 * real);
  });
});

test("the table is what the tiles give", async () => {
  const fetchFile = async (name: string) => new Uint8Array(await readFile(`assets/sky/${name}`)).buffer;
  const source = createCatalogueSource({ fetchFile, capBytes: Number.POSITIVE_INFINITY });
  const whole = { centre: [0, 0, 1] as Dir, radiusRad: Math.PI };
  await source.want(source.resident(whole, 12).missing, 0, new AbortController().signal);
  const bytes = measureGlow(source.resident(whole, 12).blocks);
  expect(Buffer.from(bytes).toString("base64")).toBe(table.map);
});

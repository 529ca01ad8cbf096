import { readFile } from "node:fs/promises";
import { expect, test } from "vitest";
import { DEG, dirFromRadec, separationRad } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { createCatalogueSource } from "#core/sky/catalogue/catalogueSource.ts";
import { type FoundStar, starsWithin } from "#core/sky/catalogue/starsWithin.ts";
import reference from "./data/cones.json" with { type: "json" };

const ARCSEC_RAD = DEG / 3600;
const EDGE_RAD = ARCSEC_RAD;
const EDGE_MAG = 0.02;
/** The bound on a stored place, with the rounding of the reference (1e-5 degree) on top. */
const PLACE_RAD = 0.63 * ARCSEC_RAD;

const source = createCatalogueSource({
  fetchFile: async (name) => {
    const bytes = await readFile(new URL(`../../assets/sky/${name}`, import.meta.url));
    return bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer;
  },
});

type Wanted = { readonly dir: Dir; readonly magV: number };
const alike = (star: FoundStar, wanted: Wanted) =>
  Math.abs(star.milliMag / 1000 - wanted.magV) < 0.0056 && separationRad(star.dir, wanted.dir) < PLACE_RAD;

test.each(reference.cones)(
  "cone at $raDeg $decDeg, radius $radiusDeg, to V $limitMag: the catalogue's stars, no more and no less",
  async (cone) => {
    const centre = dirFromRadec(cone.raDeg * DEG, cone.decDeg * DEG);
    const radiusRad = cone.radiusDeg * DEG;
    const { missing } = source.resident({ centre, radiusRad }, cone.limitMag);
    await source.want(missing, 0, new AbortController().signal);
    const resident = source.resident({ centre, radiusRad }, cone.limitMag);
    expect(resident.complete).toBe(true);
    const wanted = cone.stars.map(([ra, dec, magV]) => ({ dir: dirFromRadec(ra! * DEG, dec! * DEG), magV: magV! }));
    const left = starsWithin(resident, centre, radiusRad, Math.round(cone.limitMag * 1000));
    expect(left.length).toBeGreaterThan(240);
    for (const star of wanted) {
      const at = left.findIndex((found) => alike(found, star));
      if (at >= 0) left.splice(at, 1);
      const well = separationRad(star.dir, centre) < radiusRad - EDGE_RAD && star.magV < cone.limitMag - EDGE_MAG;
      if (well) expect(at, `star at ${star.dir}, V ${star.magV}`).toBeGreaterThanOrEqual(0);
    }
    expect(left).toEqual([]);
  },
);

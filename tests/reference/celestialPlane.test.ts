import { describe, expect, it } from "vitest";
import { nuniq, pixelCentre, pixelOf } from "#core/celestial/healpix.ts";
import { mulMatVec } from "#core/celestial/matrix.ts";
import {
  equalArea,
  equidistant,
  gnomonic,
  orthographic,
  type Projection,
  stereographic,
} from "#core/celestial/projection.ts";
import { DEG } from "#core/celestial/vector.ts";
import { dirDeg, expectAllWithin, readTable, separationArcsec } from "./celestialTables.ts";

type Mapped = {
  proj: "TAN" | "STG" | "ARC" | "ZEA" | "SIN";
  ra0: number;
  dec0: number;
  ra: number;
  dec: number;
  x_east: number | null;
  y_north: number | null;
};

const PROJECTIONS: Record<Mapped["proj"], Projection> = {
  TAN: gnomonic,
  STG: stereographic,
  ARC: equidistant,
  ZEA: equalArea,
  SIN: orthographic,
};

// wcslib 7.12 through astropy.wcs 5.2.1, after Calabretta & Greisen 2002.
describe("projections against wcslib", () => {
  const { cases } = readTable<Mapped>("projections");
  const onMap = cases.filter((c) => c.x_east !== null);
  /** East, north and outward parts of the direction at the chart's centre. */
  const local = (c: Mapped) => {
    const a = c.ra0 * DEG;
    const d = c.dec0 * DEG;
    const [sa, ca, sd, cd] = [Math.sin(a), Math.cos(a), Math.sin(d), Math.cos(d)];
    return mulMatVec([-sa, ca, 0, -sd * ca, -sd * sa, cd, cd * ca, cd * sa, sd], dirDeg(c.ra, c.dec));
  };

  it("puts every point where it belongs", () => {
    expectAllWithin(
      onMap,
      (c) => {
        const out: number[] = [];
        expect(PROJECTIONS[c.proj].project(...local(c), out)).toBe(true);
        return Math.hypot(out[0]! / DEG - c.x_east!, out[1]! / DEG - c.y_north!);
      },
      // Closed formulas: 1e-8 deg of rounding and printing, or 1e-9 of the distance towards the open edges.
      (c) => Math.max(1e-8, 2e-9 * Math.hypot(c.x_east!, c.y_north!)),
    );
  });

  it("leaves out what lies off the map", () => {
    const off = cases.filter((c) => c.x_east === null);
    expectAllWithin(off, (c) => (PROJECTIONS[c.proj].project(...local(c), []) ? 1 : 0), 0);
  });

  it("brings every point back to the sky", () => {
    expectAllWithin(
      onMap,
      (c) => {
        const back: number[] = [];
        expect(PROJECTIONS[c.proj].unproject(c.x_east! * DEG, c.y_north! * DEG, back)).toBe(true);
        return separationArcsec([back[0]!, back[1]!, back[2]!], local(c));
      },
      // The printed plane position (1e-9 deg = 4e-6"), stretched where the map shrinks towards its edge.
      5e-5,
    );
  });
});

type Pixel = { op: "ang2pix" | "pix2ang"; nside: number; ra: number; dec: number; pix_nest: number };

// healpy 1.16.1 (ang2pix, pix2ang, nest).
describe("HEALPix against healpy", () => {
  const { cases } = readTable<Pixel>("healpix");
  const order = (c: Pixel) => Math.log2(c.nside);

  it("numbers every direction", () => {
    // Exact: no direction lies within 1" of a pixel's edge.
    const rows = cases.filter((c) => c.op === "ang2pix");
    expectAllWithin(rows, (c) => Math.abs(pixelOf(order(c), dirDeg(c.ra, c.dec)) - c.pix_nest), 0);
  });

  it("finds every centre", () => {
    // 1e-8 deg, the table's digits being 1e-10.
    const rows = cases.filter((c) => c.op === "pix2ang");
    const off = (c: Pixel) => separationArcsec(pixelCentre(order(c), c.pix_nest), dirDeg(c.ra, c.dec)) / 3600;
    expectAllWithin(rows, off, 1e-8);
    expectAllWithin(rows, (c) => Math.abs(pixelOf(order(c), pixelCentre(order(c), c.pix_nest)) - c.pix_nest), 0);
  });

  it("joins order and pixel into one number", () => {
    // uniq = 4 nside^2 + pixel (Multi-Order Coverage map, IVOA recommendation 1.1, 2019).
    expectAllWithin(cases, (c) => Math.abs(nuniq(order(c), c.pix_nest) - (4 * c.nside * c.nside + c.pix_nest)), 0);
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { equatorialOfDateFromIcrs, horizonFromIcrs } from "#core/celestial/frames.ts";
import { DEG, dot, separationRad } from "#core/celestial/vector.ts";
import {
  acrossAxis1,
  acrossAxis2,
  axesFromDir,
  clampAxis2,
  dirFromAxes,
  dirOutOfLine,
  poseFromAxes,
  tubeRollRad,
  wrapAxis1,
} from "#core/optics/mount.ts";
import type { MountKind } from "#core/seams/index.ts";

const SITE = { latDeg: 50, lonDeg: 0, heightM: 250 };
const UTC = Date.UTC(2027, 9, 29, 20);
const FRAMES = { altazimuth: horizonFromIcrs(SITE, UTC), equatorial: equatorialOfDateFromIcrs(SITE, UTC) };
const mounts = fc.constantFrom<MountKind>("altazimuth", "equatorial");
const axis1 = fc.double({ min: -3.1, max: 3.1, noNaN: true });
const axis2 = fc.double({ min: -1.5, max: 1.5, noNaN: true });

describe("mounts", () => {
  it("give the axes back that a direction was made of", () => {
    fc.assert(
      fc.property(mounts, axis1, axis2, (mount, a1, a2) => {
        const axes = axesFromDir(mount, FRAMES[mount], dirFromAxes(mount, FRAMES[mount], a1, a2));
        expect(wrapAxis1("equatorial", axes.axis1Rad - a1)).toBeCloseTo(0, 9);
        expect(axes.axis2Rad).toBeCloseTo(a2, 9);
      }),
    );
  });

  it("move the view by the cosine of axis 2 when axis 1 is pushed, the way that acrossAxis1 says", () => {
    fc.assert(
      fc.property(mounts, axis1, axis2, (mount, a1, a2) => {
        const frame = FRAMES[mount];
        const [from, to] = [dirFromAxes(mount, frame, a1, a2), dirFromAxes(mount, frame, a1 + 1e-5, a2)];
        expect(separationRad(from, to) / 1e-5).toBeCloseTo(Math.cos(a2), 5);
        const way = acrossAxis1(mount, frame, a1);
        expect(dot(way, [to[0] - from[0], to[1] - from[1], to[2] - from[2]]) / 1e-5).toBeCloseTo(Math.cos(a2), 5);
        expect(dot(way, acrossAxis2(mount, frame, a1, a2))).toBeCloseTo(0, 9);
      }),
    );
    const at = (alt: number, az: number) => dirFromAxes("altazimuth", FRAMES.altazimuth, az * DEG, alt * DEG);
    expect(separationRad(at(85, 0), at(85, 10)) / DEG).toBeLessThan(0.9);
  });

  it("keep axis 1 within a turn", () => {
    expect(wrapAxis1("altazimuth", -DEG) / DEG).toBeCloseTo(359, 9);
    expect(wrapAxis1("altazimuth", -1e-300)).toBe(0);
    expect(wrapAxis1("equatorial", 350 * DEG) / DEG).toBeCloseTo(-10, 9);
    expect(wrapAxis1("equatorial", 181 * DEG) / DEG).toBeCloseTo(-179, 9);
    expect(wrapAxis1("equatorial", 179 * DEG) / DEG).toBeCloseTo(179, 9);
  });

  it("keep axis 2 on its scale", () => {
    expect(clampAxis2("altazimuth", 2) / DEG).toBeCloseTo(90, 12);
    expect(clampAxis2("altazimuth", -1) / DEG).toBeCloseTo(-5, 12);
    expect(clampAxis2("equatorial", -1)).toBe(-1);
    expect(clampAxis2("equatorial", -2) / DEG).toBeCloseTo(-90, 12);
  });

  it("carry a finder out of line by the set amount, right and up", () => {
    const frame = FRAMES.altazimuth;
    const tube = dirFromAxes("altazimuth", frame, 1, 0.7);
    const finder = dirOutOfLine("altazimuth", frame, 1, 0.7, [12_000, 9_000]);
    expect(separationRad(tube, finder) / DEG).toBeCloseTo(15_000 / 36_000, 4);
    expect(dot(finder, acrossAxis1("altazimuth", frame, 1)) / DEG).toBeCloseTo(12_000 / 36_000, 4);
    expect(dirOutOfLine("altazimuth", frame, 1, 0.7, [0, 0])).toEqual(tube);
  });

  it("hold the tube upright to the horizon, or to the pole", () => {
    const [horizon, equator] = [FRAMES.altazimuth, FRAMES.equatorial];
    const zenith = dirFromAxes("altazimuth", horizon, 0, Math.PI / 2);
    const tube = dirFromAxes("altazimuth", horizon, 1, 0.7);
    expect(tubeRollRad("altazimuth", tube, zenith, acrossAxis2("altazimuth", horizon, 1, 0.7))).toBe(0);
    // The parallactic angle at latitude 50, hour angle 60 degrees, declination 20 (textbook: tan q = sin H / (tan lat cos dec - sin dec cos H)).
    const east = dirFromAxes("equatorial", equator, 60 * DEG, 20 * DEG);
    const rollRad = tubeRollRad("equatorial", east, zenith, acrossAxis2("equatorial", equator, 60 * DEG, 20 * DEG));
    const below = Math.tan(50 * DEG) * Math.cos(20 * DEG) - Math.sin(20 * DEG) * Math.cos(60 * DEG);
    expect(Math.abs(rollRad) / DEG).toBeCloseTo(Math.atan2(Math.sin(60 * DEG), below) / DEG, 1);
  });

  it("write a pose in whole tenths of an arcsecond", () => {
    expect(poseFromAxes("equatorial", -DEG, 2 * DEG)).toEqual({
      mount: "equatorial",
      axis1Das: -36_000,
      axis2Das: 72_000,
    });
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { equatorialOfDateFromIcrs, horizonFromIcrs, zenithDir } from "#core/celestial/frames.ts";
import { gearById } from "#core/optics/gear.ts";
import { acrossAxis2, dirFromAxes, tubeRollRad } from "#core/optics/mount.ts";
import { imageOrientation } from "#core/optics/orientation.ts";
import type { Gear, LightPath, Orientation, Stance } from "#core/seams/index.ts";
import { type Build, cross, dot, lightFrom, minus, plus, scaled, seenAt, unit, type Vec } from "./rays.ts";

const DEG = Math.PI / 180;
const ZENITH: Vec = [0, 0, 1];
const BUILDS: readonly (readonly [LightPath, Build])[] = [
  ["direct", "galilean"],
  ["halfTurn", "keplerian"],
  ["newtonian", "newtonian"],
  ["mirrorDiagonal", "mirrorDiagonal"],
  ["erectingDiagonal", "roofDiagonal"],
];

const gearOf = (path: LightPath, clockDeg: number): Gear => ({ ...gearById("newton200-48x"), path, clockDeg });

/** The picture's place of a direct-view offset: flip, then turn clockwise. */
function placed({ parity, rotationRad }: Orientation, [x, y]: readonly [number, number]): readonly [number, number] {
  const [c, s] = [Math.cos(rotationRad), Math.sin(rotationRad)];
  return [parity * x * c + y * s, -parity * x * s + y * c];
}

/** Largest angle by which the orientation misses the traced picture, degrees, over stars all round the axis. */
function missDeg(o: Orientation, build: Build, forward: Vec, out: Vec, zenith: Vec, stance: Stance): number {
  const up = unit(minus(zenith, scaled(forward, dot(zenith, forward))));
  const right = cross(forward, up);
  let worst = 0;
  for (const clock of [10, 130, 250]) {
    const offset = [Math.sin(clock * DEG), Math.cos(clock * DEG)] as const;
    const star = plus(forward, plus(scaled(right, offset[0] * 1e-3), scaled(up, offset[1] * 1e-3)));
    const { light, axis } = lightFrom(build, forward, out, star);
    const seen = seenAt(light, axis, stance === "upright" ? zenith : forward);
    const said = placed(o, offset);
    const miss = Math.atan2(said[0] * seen[1] - said[1] * seen[0], said[0] * seen[0] + said[1] * seen[1]);
    worst = Math.max(worst, Math.abs(miss / DEG));
  }
  return worst;
}

describe("imageOrientation", () => {
  for (const [path, build] of BUILDS) {
    for (const stance of ["upright", "withEyepiece"] as const) {
      if (stance === "withEyepiece" && (path === "direct" || path === "halfTurn")) continue;
      it(`agrees with traced rays: ${path}, ${stance}`, () => {
        let checked = 0;
        for (let altDeg = 1; altDeg <= 89; altDeg += 4) {
          const forward: Vec = [0, Math.cos(altDeg * DEG), Math.sin(altDeg * DEG)];
          const top: Vec = [0, -Math.sin(altDeg * DEG), Math.cos(altDeg * DEG)];
          for (let clockDeg = -176.5; clockDeg <= 180; clockDeg += 7) {
            const out = plus(scaled(top, Math.cos(clockDeg * DEG)), scaled([1, 0, 0], Math.sin(clockDeg * DEG)));
            const o = imageOrientation(gearOf(path, clockDeg), altDeg * DEG, 0, stance);
            expect(missDeg(o, build, forward, out, ZENITH, stance)).toBeLessThan(1e-6);
            checked++;
          }
        }
        expect(checked).toBe(23 * 51);
      });
    }
  }

  it("carries the eyepiece round with the tube on an equatorial mount", () => {
    const site = { latDeg: 50, lonDeg: 0, heightM: 0 };
    const utcMs = Date.UTC(2027, 9, 29, 20);
    const zenith = zenithDir(horizonFromIcrs(site, utcMs));
    const frame = equatorialOfDateFromIcrs(site, utcMs);
    for (const hourAngle of [-75, -30, 5, 60]) {
      for (const dec of [-10, 20, 70]) {
        const forward = dirFromAxes("equatorial", frame, hourAngle * DEG, dec * DEG);
        const top = acrossAxis2("equatorial", frame, hourAngle * DEG, dec * DEG);
        const altRad = Math.asin(dot(forward, zenith));
        const roll = tubeRollRad("equatorial", forward, zenith, top);
        for (const [path, build] of BUILDS) {
          for (const clockDeg of [-90, 30, 90]) {
            const side = cross(forward, top);
            const out = plus(scaled(top, Math.cos(clockDeg * DEG)), scaled(side, Math.sin(clockDeg * DEG)));
            const o = imageOrientation(gearOf(path, clockDeg), altRad, roll, "upright");
            expect(missDeg(o, build, forward, out, zenith, "upright")).toBeLessThan(1e-6);
          }
        }
      }
    }
  });

  it("is undone by turning back and flipping back", () => {
    const altitudes = fc.double({ min: 0, max: 90, noNaN: true });
    const clocks = fc.double({ min: -180, max: 180, noNaN: true });
    const offsets = fc.tuple(fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: -1, max: 1, noNaN: true }));
    fc.assert(
      fc.property(fc.constantFrom(...BUILDS), altitudes, clocks, offsets, ([path], altDeg, clockDeg, offset) => {
        const o = imageOrientation(gearOf(path, clockDeg), altDeg * DEG, 0, "upright");
        const [x, y] = placed(o, offset);
        const [bx, by] = placed({ parity: 1, rotationRad: -o.rotationRad }, [x, y]);
        expect(o.parity * bx).toBeCloseTo(offset[0], 12);
        expect(by).toBeCloseTo(offset[1], 12);
      }),
    );
  });
});

/** The sheet agrees with the field when every star about the pointing stands in the same direction on both. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DEG, dirFromRadec, offsetDir } from "#core/celestial/vector.ts";
import { agreeingView, agreement, wrappedRad } from "#core/chart/agreement.ts";
import { type ChartPage, projectionOf } from "#core/chart/page.ts";
import { PLAIN_VIEW, screenFromPage } from "#core/chart/sheetView.ts";
import { GEAR } from "#core/optics/gear.ts";
import { imageOrientation } from "#core/optics/orientation.ts";
import { viewFromIcrs } from "#core/optics/viewFrame.ts";
import type { Dir } from "#core/seams/index.ts";

const gears = [...GEAR.values()];
const anywhere = fc
  .tuple(fc.double({ min: 0, max: 360, noNaN: true }), fc.double({ min: -85, max: 85, noNaN: true }))
  .map(([ra, dec]) => dirFromRadec(ra * DEG, dec * DEG));
const angle = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });
const pageAt = (centre: Dir): ChartPage => ({
  centre,
  widthPx: 424,
  heightPx: 520,
  marginPx: 18,
  pxPerDeg: 34,
  limitMag: 8,
});
/** A gear somewhere under a sky: its view, pointing and zenith being anywhere and not the same. */
const scene = fc.record({
  gear: fc.constantFrom(...gears),
  pointing: anywhere,
  zenithAngle: angle,
  zenithDistance: fc.double({ min: 5 * DEG, max: 85 * DEG, noNaN: true }),
  rollRad: angle,
  stance: fc.constantFrom("upright" as const, "withEyepiece" as const),
});
type Scene = typeof scene extends fc.Arbitrary<infer T> ? T : never;
const viewOf = ({ gear, pointing, zenithAngle, zenithDistance, rollRad, stance }: Scene) => {
  const zenith = offsetDir(pointing, zenithAngle, zenithDistance);
  const orientation = imageOrientation(gear, Math.PI / 2 - zenithDistance, rollRad, stance);
  return { m: viewFromIcrs(pointing, zenith, orientation, new Float64Array(9)), orientation };
};
/** Clockwise from the top of the field. */
const directionInView = (m: Float64Array, [x, y, z]: Dir) =>
  Math.atan2(m[0]! * x + m[1]! * y + m[2]! * z, m[3]! * x + m[4]! * y + m[5]! * z);
/** Clockwise from the top of the screen, from the pointing's place to the star's. */
const directionOnSheet = (page: ChartPage, view: typeof PLAIN_VIEW, pointing: Dir, star: Dir) => {
  const { project } = projectionOf(page);
  const out = { x: 0, y: 0 };
  const place = (dir: Dir) => {
    project(dir, out);
    return screenFromPage(view, 1.3, out.x, out.y);
  };
  const [from, to] = [place(pointing), place(star)];
  return Math.atan2(to.x - from.x, from.y - to.y);
};

describe("the sheet that agrees", () => {
  it("shows every star of a page about the pointing in the direction that the field shows it", () => {
    fc.assert(
      fc.property(scene, angle, fc.double({ min: 0.05, max: 5, noNaN: true }), (where, starAngle, distanceDeg) => {
        const { m, orientation } = viewOf(where);
        const page = pageAt(where.pointing);
        const wanted = agreeingView(page, m);
        expect(wanted.flipped).toBe(orientation.parity === -1);
        const star = offsetDir(where.pointing, starAngle, distanceDeg * DEG);
        const onSheet = directionOnSheet(page, { ...PLAIN_VIEW, ...wanted }, where.pointing, star);
        expect(Math.abs(wrappedRad(onSheet - directionInView(m, star)))).toBeLessThan(1e-6);
      }),
      { numRuns: 400 },
    );
  });
  it("does so about a pointing at the side of the page, where north leans", () => {
    fc.assert(
      fc.property(
        scene,
        angle,
        fc.double({ min: 0, max: 6, noNaN: true }),
        angle,
        (where, side, awayDeg, starAngle) => {
          const { m } = viewOf(where);
          const page = pageAt(offsetDir(where.pointing, side, awayDeg * DEG));
          const view = { ...PLAIN_VIEW, ...agreeingView(page, m) };
          // A pair about the pointing: what the page bends, it bends alike on both sides.
          const [a, b] = [0, Math.PI].map((turn) => offsetDir(where.pointing, starAngle + turn, 1e-4)) as [Dir, Dir];
          const onSheet = directionOnSheet(page, view, b, a);
          expect(Math.abs(wrappedRad(onSheet - directionInView(m, a)))).toBeLessThan(1e-6);
        },
      ),
      { numRuns: 400 },
    );
  });
  it("is said to agree within three degrees and on the same side only", () => {
    const wanted = { turnRad: 3.1, flipped: true };
    expect(agreement({ turnRad: 3.1 + 2.9 * DEG, flipped: true }, wanted).agrees).toBe(true);
    expect(agreement({ turnRad: 3.1 + 3.1 * DEG - 6 * Math.PI, flipped: true }, wanted).agrees).toBe(false);
    expect(agreement({ turnRad: 3.1, flipped: false }, wanted)).toMatchObject({ sameSide: false, agrees: false });
    expect(agreement({ turnRad: -3.1, flipped: true }, wanted).leftRad).toBeCloseTo(6.2 - 2 * Math.PI, 12);
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DEG, dirFromRadec } from "#core/celestial/vector.ts";
import type { ChartPage } from "#core/chart/page.ts";
import {
  clampedView,
  MOST_SCALE,
  PLAIN_VIEW,
  pageFromScreen,
  pannedBy,
  type SheetView,
  screenFromPage,
  zoomedAbout,
} from "#core/chart/sheetView.ts";

const page: ChartPage = {
  centre: dirFromRadec(5 * DEG, 5 * DEG),
  widthPx: 424,
  heightPx: 520,
  marginPx: 18,
  pxPerDeg: 34,
  limitMag: 8,
};
const coordinate = fc.double({ min: -200, max: 200, noNaN: true });
const view: fc.Arbitrary<SheetView> = fc.record({
  turnRad: fc.double({ min: -9, max: 9, noNaN: true }),
  flipped: fc.boolean(),
  scale: fc.double({ min: 1, max: MOST_SCALE, noNaN: true }),
  panX: coordinate,
  panY: coordinate,
});
const near = (a: { x: number; y: number }, b: { x: number; y: number }) =>
  expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeLessThan(1e-9);

describe("a sheet that lies somehow", () => {
  it("flips first, then turns clockwise", () => {
    const lies = { ...PLAIN_VIEW, flipped: true, turnRad: 90 * DEG };
    // A place at the right goes to the left when flipped, and a quarter clockwise from there is the top.
    near(screenFromPage(lies, 2, 10, 0), { x: 0, y: -20 });
  });
  it("gives back the place on the page", () => {
    fc.assert(
      fc.property(view, coordinate, coordinate, (lies, x, y) => {
        const screen = screenFromPage(lies, 1.2, x, y);
        near(pageFromScreen(lies, 1.2, screen.x, screen.y), { x, y });
      }),
    );
  });
  it("comes nearer about the place under the finger, as long as the page reaches", () => {
    const lies = { ...PLAIN_VIEW, flipped: true, turnRad: 1 };
    const nearer = zoomedAbout(page, lies, 1, 60, -40, 2.5);
    const [before, after] = [pageFromScreen(lies, 1, 60, -40), pageFromScreen(nearer, 1, 60, -40)];
    near(before, after);
    expect(nearer.scale).toBe(2.5);
  });
  it("follows the finger when moved", () => {
    const lies = { ...PLAIN_VIEW, flipped: true, turnRad: -0.6, scale: 3 };
    const held = pageFromScreen(lies, 1, 5, 5);
    near(pageFromScreen(pannedBy(page, lies, 1, 30, 12), 1, 35, 17), held);
  });
  it("never shows what is beyond the frame", () => {
    fc.assert(
      fc.property(view, (lies) => {
        const { scale, panX, panY } = clampedView(page, lies);
        expect(Math.abs(panX) + 194 / scale).toBeLessThanOrEqual(194 + 1e-9);
        expect(Math.abs(panY) + 242 / scale).toBeLessThanOrEqual(242 + 1e-9);
      }),
    );
    expect(clampedView(page, { ...PLAIN_VIEW, scale: 0.2, panX: 50 })).toEqual(PLAIN_VIEW);
  });
});

import { expect, test } from "vitest";
import {
  LIMIT_PEAK,
  lightOfValue,
  luminanceOf,
  PEAK_DEX_PER_MAG,
  pxPerMmOf,
  screenReach,
  spanDeg,
  spanPx,
  valueOfLight,
  valueOfLuminance,
} from "../../../src/stage/screenLight.ts";

/** IEC 61966-2-1: both pieces meet at 0.04045; 8-bit values worked out from the formula by hand. */
test("display values give the light of sRGB, and back", () => {
  expect(lightOfValue(0)).toBe(0);
  expect(lightOfValue(1)).toBeCloseTo(1, 12);
  expect(lightOfValue(0.04045)).toBeCloseTo(0.0031308, 6);
  expect(lightOfValue(128 / 255)).toBeCloseTo(0.21586, 5);
  expect(lightOfValue(10 / 255)).toBeCloseTo(0.0030353, 6);
  for (let code = 0; code <= 255; code++) expect(255 * valueOfLight(lightOfValue(code / 255))).toBeCloseTo(code, 3);
});

test("red alone has 21 % of white's luminance; amber more; each is found again", () => {
  expect(luminanceOf("red", 1)).toBeCloseTo(0.2126, 6);
  expect(luminanceOf("amber", 1)).toBeCloseTo(0.2126 + 0.7152 * 0.21404, 4);
  for (const lamp of ["normal", "red", "amber"] as const)
    for (const value of [0.02, 0.1, 0.4, 0.66])
      expect(valueOfLuminance(lamp, luminanceOf(lamp, value))).toBeCloseTo(value, 6);
  expect(valueOfLuminance("red", 0.5)).toBe(1);
});

test("a star at the limit just has the least value that shows, and the brightest stay", () => {
  for (const code of [1, 12, 40, 68]) expect(screenReach(lightOfValue(code / 255), "normal", 1).lift).toBe(1);
  for (const code of [75, 96, 120, 132]) {
    const { lift, hiddenMag, least } = screenReach(lightOfValue(code / 255), "normal", 1);
    expect(255 * LIMIT_PEAK ** lift).toBeCloseTo(code, 3);
    expect(hiddenMag).toBe(0);
    expect(255 * least).toBeCloseTo(code, 3);
  }
});

test("beyond the lift the star that just shows is as far over the limit as is said", () => {
  for (const code of [140, 200, 255]) {
    const { lift, hiddenMag, least } = screenReach(lightOfValue(code / 255), "normal", 1);
    expect(hiddenMag).toBeGreaterThan(0);
    expect(least).toBe(0);
    expect(255 * (LIMIT_PEAK * 10 ** (PEAK_DEX_PER_MAG * hiddenMag)) ** lift).toBeCloseTo(code, 3);
  }
});

test("the worse the screen, the more it lifts and hides; a lamp never shows more than white", () => {
  let before = screenReach(0, "normal", 1);
  for (let code = 1; code <= 255; code++) {
    const luminance = lightOfValue(code / 255);
    const now = screenReach(luminance, "normal", 1);
    const red = screenReach(luminance, "red", 170 / 255);
    expect(now.lift).toBeLessThanOrEqual(before.lift);
    expect(now.hiddenMag).toBeGreaterThanOrEqual(before.hiddenMag);
    expect(red.hiddenMag).toBeGreaterThanOrEqual(now.hiddenMag);
    before = now;
  }
});

/** ISO/IEC 7810: ID-1 is 85.60 mm wide. */
test("a card tells the scale, the scale and the distance how large things look", () => {
  expect(pxPerMmOf(342.4)).toBeCloseTo(4, 12);
  expect(spanDeg(2 * 600 * 4 * Math.tan((25 * Math.PI) / 180), 4, 600)).toBeCloseTo(50, 10);
  expect(spanPx(10, 4, 600)).toBeCloseTo(419.95, 1);
  expect(spanDeg(spanPx(33, 3.2, 350), 3.2, 350)).toBeCloseTo(33, 10);
});

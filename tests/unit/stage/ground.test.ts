import { describe, expect, it } from "vitest";
import {
  farHeightDeg,
  nearOutline,
  SKYLINE_ROWS,
  SKYLINE_SAMPLES,
  SKYLINE_TOP_DEG,
  skylineTexels,
  WINDOW,
} from "../../../src/stage/skyline.ts";
import { createTwilight, twilightOf } from "../../../src/stage/twilight.ts";

const DEG = Math.PI / 180;
const around = Array.from({ length: 3600 }, (_, i) => i / 10);

describe("skyline", () => {
  it("stays between the solid ground below and the top of the drawn band, and closes in the north", () => {
    for (const azimuth of around) {
      const { ground, crownTo } = nearOutline(azimuth);
      expect(ground).toBeGreaterThan(1.2);
      expect(Math.max(ground, crownTo, farHeightDeg(azimuth))).toBeLessThan(9.2);
    }
    expect(nearOutline(359.999).ground).toBeCloseTo(nearOutline(0).ground, 2);
    expect(farHeightDeg(359.999)).toBeCloseTo(farHeightDeg(0), 2);
  });

  it("has its window in the wall of a house", () => {
    for (const off of [-WINDOW.halfWidthDeg, WINDOW.halfWidthDeg]) {
      expect(nearOutline(WINDOW.azimuthDeg + off).ground).toBeGreaterThan(WINDOW.heightDeg + WINDOW.halfHeightDeg);
    }
  });

  it("shows sky between hedge and crown beside a trunk", () => {
    const gaps = around
      .map(nearOutline)
      .filter((outline) => outline.crownTo > 0 && outline.crownFrom > outline.ground + 0.2);
    expect(gaps.length).toBeGreaterThan(50);
  });

  it("packs heights to a thousandth of a degree", () => {
    const texels = skylineTexels();
    expect(texels).toHaveLength(SKYLINE_SAMPLES * SKYLINE_ROWS * 4);
    for (const i of [0, 777, 2048, 4095]) {
      const azimuth = (360 * i) / SKYLINE_SAMPLES;
      const height = (offset: number) =>
        ((texels[i * 4 + offset]! * 256 + texels[i * 4 + offset + 1]!) * SKYLINE_TOP_DEG) / 65535;
      expect(height(0)).toBeCloseTo(nearOutline(azimuth).ground, 3);
      expect(height(2)).toBeCloseTo(farHeightDeg(azimuth), 3);
    }
  });
});

describe("twilight", () => {
  const sky = [13 / 255, 20 / 255, 30 / 255] as const;
  const at = (sunDeg: number) => {
    const out = createTwilight();
    twilightOf(out, sky, { horizonFromIcrs: [], sunAltitudeRad: sunDeg * DEG, sunAzimuthRad: 0 });
    return out;
  };
  it("is the sky alone by night, without warm light", () => {
    const night = at(-30);
    sky.forEach((value, c) => {
      expect(night.high[c]).toBeCloseTo(value, 6);
    });
    expect([...night.warm]).toEqual([0, 0, 0]);
    expect([...night.far]).not.toEqual([...night.near]);
  });
  it("grows steadily as the Sun comes up", () => {
    let [pale, warm] = [0, -1];
    for (let sun = -18; sun <= -6; sun += 1) {
      const now = at(sun);
      expect(now.pale[1]).toBeGreaterThan(pale);
      expect(now.warm[0]).toBeGreaterThan(warm);
      [pale, warm] = [now.pale[1]!, now.warm[0]!];
    }
  });
});

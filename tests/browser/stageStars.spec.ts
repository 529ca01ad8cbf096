/** Where stars stand and how much light they give, against figures worked out here without the stage's own code. */
import { expect } from "@playwright/test";
import type { Orientation } from "#core/seams/index.ts";
import { lightOfValue, screenReach } from "../../src/stage/screenLight.ts";
import { standing } from "./play/starLaw.ts";
import type { SceneSpec } from "./stage/page.ts";
import { LAYOUT, PLAIN_VIEW, SIDE_CSS_PX, seeded, type TestStar } from "./stage/scene.ts";
import { drawPicture, lightOf, measure, openStage, type Picture, test } from "./stage/stagePage.ts";

const DEG = Math.PI / 180;
const MIDDLE = SIDE_CSS_PX / 2;
const RADIUS = LAYOUT.fieldRadiusCssPx;
type Vec = readonly [number, number, number];

const combine = (a: number, u: Vec, b: number, v: Vec, c: number, w: Vec): Vec => [
  a * u[0] + b * v[0] + c * w[0],
  a * u[1] + b * v[1] + c * w[1],
  a * u[2] + b * v[2] + c * w[2],
];
const cross = (a: Vec, b: Vec): Vec => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
/** Looking at RA 310, Dec 40 with the zenith somewhere up left: no axis is in a handy place. */
const FORWARD: Vec = [
  Math.cos(40 * DEG) * Math.cos(310 * DEG),
  Math.cos(40 * DEG) * Math.sin(310 * DEG),
  Math.sin(40 * DEG),
];
const SIDE: Vec = (() => {
  const raw = cross(FORWARD, [0.2, 0.5, 0.84]);
  const length = Math.hypot(...raw);
  return [raw[0] / length, raw[1] / length, raw[2] / length];
})();
const UP = cross(SIDE, FORWARD);

/** Flip x first, then turn the picture clockwise. */
const viewMatrix = ({ parity, rotationRad }: Orientation): number[] => {
  const [c, s] = [Math.cos(rotationRad), Math.sin(rotationRad)];
  const right = combine(parity * c, SIDE, s, UP, 0, FORWARD);
  const up = combine(-parity * s, SIDE, c, UP, 0, FORWARD);
  return [...right, ...up, ...FORWARD];
};
/** A star so far from the centre, so many degrees clockwise from the zenith's side in the direct view. */
const starAt = (distanceRad: number, clockRad: number, magV: number, colourBV = 0.6): TestStar => [
  ...combine(
    Math.sin(distanceRad) * Math.sin(clockRad),
    SIDE,
    Math.sin(distanceRad) * Math.cos(clockRad),
    UP,
    Math.cos(distanceRad),
    FORWARD,
  ),
  magV,
  colourBV,
];

const INSTRUMENTS = [
  { name: "finder", projection: "gnomonic", plane: (rad: number) => Math.tan(rad), fieldRad: 5.3 * DEG },
  { name: "eyepiece", projection: "gnomonic", plane: (rad: number) => Math.tan(rad), fieldRad: 0.35 * DEG },
  { name: "eye", projection: "stereographic", plane: (rad: number) => 2 * Math.tan(rad / 2), fieldRad: 90 * DEG },
] as const;
const ORIENTATIONS: readonly Orientation[] = [
  { parity: 1, rotationRad: 0 },
  { parity: 1, rotationRad: Math.PI },
  { parity: -1, rotationRad: 0 },
  { parity: -1, rotationRad: 110 * DEG },
  { parity: 1, rotationRad: 73 * DEG },
];

test.describe("places", () => {
  for (const instrument of INSTRUMENTS) {
    test(`${instrument.name}: centroids stand within 0.3 px in each orientation`, async ({ page, stageAddress }) => {
      await openStage(page, stageAddress);
      const random = seeded(11);
      // Rings of stars far enough apart that no two share a square.
      const places = Array.from({ length: 24 }, (_, i) => ({
        distanceRad: (instrument.fieldRad / 2) * (0.15 + (0.75 * (i + random() * 0.5)) / 24),
        clockRad: 2.39996 * i,
        magV: 7.2 + 2 * random(),
      }));
      const stars = places.map((place) => starAt(place.distanceRad, place.clockRad, place.magV));
      const edge = instrument.plane(instrument.fieldRad / 2);
      let worst = 0;
      for (const orientation of ORIENTATIONS) {
        const spec: SceneSpec = {
          viewFromIcrs: viewMatrix(orientation),
          projection: instrument.projection,
          planeRadius: edge,
        };
        const sky = await drawPicture(page, spec);
        const picture = await drawPicture(page, { ...spec, stars });
        for (const { distanceRad, clockRad } of places) {
          const clock = orientation.parity * clockRad + orientation.rotationRad;
          const radius = (RADIUS * instrument.plane(distanceRad)) / edge;
          const [x, y] = [MIDDLE + radius * Math.sin(clock), MIDDLE + radius * Math.cos(clock)];
          const found = measure(picture, sky, x, y, 5);
          worst = Math.max(worst, Math.hypot(found.x - x, found.y - y));
        }
      }
      test.info().annotations.push({ type: "worst centroid", description: `${worst.toFixed(4)} px` });
      expect(worst).toBeLessThan(0.3);
    });
  }
});

/** The law of a star's light over d = limit - V, in display values by distance in px. */
const profileOf = (d: number, lift = 1): { radius: number; at: (r: number) => number } => {
  const f = 0.27 * 10 ** (0.248 * d);
  const peak = Math.min(1, f ** lift);
  const core = 2.7 * 0.82 * Math.max(1, f ** 0.36);
  const q = d - 2.6;
  const glare = q > 0 ? 7 + 7.5 * q : 0;
  const alpha = 0.05 + 0.045 * q;
  const star = (t: number) => (t < 1 ? standing(d) * peak * (0.75 * (1 - t * t) ** 4 + 0.25 * (1 - t * t)) : 0);
  const glow = (g: number) => (g < 1 ? Math.min(0.4, 1.5 * alpha) * (1 - g) ** 3 : 0);
  return { radius: Math.max(core, glare), at: (r) => star(r / core) + (glare > 0 ? glow(r / glare) : 0) };
};
/** Light over a sky of that display value, summed over the whole plane. */
const fluxOf = (d: number, sky: number, lift = 1): number => {
  const { radius, at } = profileOf(d, lift);
  const steps = 4000;
  let flux = 0;
  for (let i = 0; i < steps; i++) {
    const r = ((i + 0.5) * radius) / steps;
    flux += 2 * Math.PI * r * (radius / steps) * (lightOf(Math.min(1, sky + at(r))) - lightOf(sky));
  }
  return flux;
};
/** The sky's green at a distance from the centre: whole to .7 of the radius, down by a tenth to .82. */
const skyAt = (distancePx: number): number =>
  (34 / 255) * (1 - (0.1 * Math.max(0, distancePx - 0.7 * RADIUS)) / (0.12 * RADIUS));
/** Twenty places, each elsewhere within its pixel, far enough apart for the widest glare. */
const PIXEL_PLACES = Array.from({ length: 20 }, (_, i) => ({
  x: MIDDLE - 200 + 80 * (i % 5) + ((i * 0.618034) % 1),
  y: MIDDLE - 150 + 80 * Math.floor(i / 5) + ((i * 0.754878 + 0.3) % 1),
}));

test.describe("light", () => {
  test("flux is the law's for each star, wherever in the pixel it stands", async ({ page, stageAddress }) => {
    await openStage(page, stageAddress);
    const plane = Math.tan(2.65 * DEG);
    const base: SceneSpec = { viewFromIcrs: viewMatrix({ parity: 1, rotationRad: 0 }), planeRadius: plane };
    const empty = await drawPicture(page, base);
    const starOn = (x: number, y: number, magV: number): TestStar => {
      const [u, v] = [((x - MIDDLE) * plane) / RADIUS, ((y - MIDDLE) * plane) / RADIUS];
      // Green of B-V .4 is within 4 % of white, so that one channel tells the flux.
      return starAt(Math.atan(Math.hypot(u, v)), Math.atan2(u, v), magV, 0.4);
    };
    for (const d of [0, 0.8, 1.6, 2.3, 2.55, 3.2, 4.8]) {
      const stars = PIXEL_PLACES.map(({ x, y }) => starOn(x, y, 9.6 - d));
      const picture = await drawPicture(page, { ...base, stars });
      let [worst, sum, centroid] = [0, 0, 0];
      for (const { x, y } of PIXEL_PLACES) {
        const found = measure(picture, empty, x, y, profileOf(d).radius + 2);
        const error = found.flux / fluxOf(d, skyAt(Math.hypot(x - MIDDLE, y - MIDDLE))) - 1;
        worst = Math.max(worst, Math.abs(error));
        sum += error;
        centroid = Math.max(centroid, Math.hypot(found.x - x, found.y - y));
      }
      const mean = sum / PIXEL_PLACES.length;
      const percent = (value: number) => `${(100 * value).toFixed(2)} %`;
      const description = `d ${d}: worst ${percent(worst)}, mean ${percent(mean)}, centroid ${centroid.toFixed(3)} px`;
      test.info().annotations.push({ type: "flux", description });
      expect(worst, description).toBeLessThan(0.1);
      expect(Math.abs(mean), description).toBeLessThan(0.03);
      expect(centroid, description).toBeLessThan(0.3);
    }
  });

  test("where nothing moves, stars go out softly to the edge below the limit", async ({ page, stageAddress }) => {
    await openStage(page, stageAddress);
    const sky = await drawPicture(page, {});
    const shown = async (magV: number): Promise<number> => {
      const picture: Picture = await drawPicture(page, { stars: [[1, 0, 0, magV, 0.6]] });
      return measure(picture, sky, MIDDLE, MIDDLE, 4).flux;
    };
    expect(await shown(9.6 + 0.41)).toBe(0);
    const [below, atLimit, over] = [await shown(9.6 + 0.19), await shown(9.6), await shown(8.6)];
    expect(below).toBeGreaterThan(0);
    expect(atLimit).toBeGreaterThan(below);
    expect(over).toBeGreaterThan(atLimit);
  });

  test("a lift of 1 leaves a star's light as it is; less makes a star at the limit brighter, and leaves its order", async ({
    page,
    stageAddress,
  }) => {
    await openStage(page, stageAddress);
    const sky = await drawPicture(page, {});
    const shown = async (magV: number, how: SceneSpec) => {
      const picture: Picture = await drawPicture(page, { stars: [[1, 0, 0, magV, 0.6]], ...how });
      return measure(picture, sky, MIDDLE, MIDDLE, 4).flux;
    };
    expect(await shown(9.6, { starLift: 1 })).toBe(await shown(9.6, {}));
    const lifted = await shown(9.6, { starLift: 0.5 });
    expect(lifted / (await shown(9.6, {})) / (fluxOf(0, 34 / 255, 0.5) / fluxOf(0, 34 / 255))).toBeCloseTo(1, 1);
    expect(await shown(8.6, { starLift: 0.5 })).toBeGreaterThan(lifted);
  });

  test("on a screen whose least is known a still star at the limit has it, however wide its image; out of focus it sinks", async ({
    page,
    stageAddress,
  }) => {
    await openStage(page, stageAddress);
    const black = { skyRgb: [0, 0, 0] as const };
    const heart = async (magV: number, how: SceneSpec) => {
      // In the middle of a pixel.
      const half = (0.5 / RADIUS) * PLAIN_VIEW.planeRadius;
      const picture = await drawPicture(page, { ...black, stars: [[1, -half, half, magV, 0.6]], ...how });
      return picture.channel(MIDDLE, MIDDLE, 1);
    };
    for (const code of [40, 68, 96, 130]) {
      const { lift: starLift, least: starLeast } = screenReach(lightOfValue(code / 255), "normal", 1);
      const fitted = { starLift, starLeast };
      const least = code - 2;
      for (const starWidthRad of [0, 8e-4, 2e-3]) {
        expect(await heart(9.6, { ...fitted, starWidthRad }), `${code}, ${starWidthRad}`).toBeGreaterThan(least);
        expect(await heart(9.6 + 0.2, { ...fitted, starWidthRad })).toBeLessThan(least);
      }
      expect(await heart(9.6, { ...fitted, defocus: 3 })).toBeLessThan(least);
    }
  });

  test("air and aperture spread a star's image: wider, and thinner by as much", async ({ page, stageAddress }) => {
    await openStage(page, stageAddress);
    const plane = Math.tan(2.65 * DEG);
    const stars: TestStar[] = [[1, 0, 0, 9.6 - 1, 0.4]];
    const lightOfStar = async (widthPx: number) => {
      const spec = { starWidthRad: (widthPx * plane) / RADIUS };
      const [sky, picture] = [await drawPicture(page, spec), await drawPicture(page, { ...spec, stars })];
      const added = (x: number, y: number) => picture.channel(x, y, 1) - sky.channel(x, y, 1);
      let [sum, spread] = [0, 0];
      for (let x = -12; x < 12; x++) {
        for (let y = -12; y < 12; y++) {
          const light = added(MIDDLE + x, MIDDLE + y);
          sum += light;
          spread += light * ((x + 0.5) ** 2 + (y + 0.5) ** 2);
        }
      }
      return { sum, spread: spread / sum };
    };
    const [point, disc] = [await lightOfStar(0), await lightOfStar(3)];
    expect(Math.abs(disc.sum / point.sum - 1)).toBeLessThan(0.08);
    // The core is 2 px wide at half its brightness, and widths add as squares.
    expect(Math.abs(disc.spread / point.spread / (1 + (3 / 2) ** 2) - 1)).toBeLessThan(0.15);
  });

  test("two bright stars that the eye parts stand apart, and run together where it does not", async ({
    page,
    stageAddress,
  }) => {
    await openStage(page, stageAddress);
    const plane = Math.tan(2.65 * DEG);
    const apartPx = 6;
    const sides = [-1, 1].map((side) => Math.atan((((side * apartPx) / 2) * plane) / RADIUS));
    const stars = sides.map((away) => starAt(Math.abs(away), away < 0 ? -Math.PI / 2 : Math.PI / 2, 1.6, 0.4));
    const base: SceneSpec = { viewFromIcrs: viewMatrix({ parity: 1, rotationRad: 0 }), planeRadius: plane, stars };
    const [x, y, z] = stars[0]!;
    const close = [{ dir: [x, y, z] as const, widthRad: 0.9 * (sides[1]! - sides[0]!) }];
    const dip = async (spec: SceneSpec) => {
      const picture = await drawPicture(page, spec);
      const at = (px: number) => picture.channel(Math.floor(MIDDLE + px), Math.floor(MIDDLE), 1);
      return at(0) / Math.min(at(-apartPx / 2), at(apartPx / 2));
    };
    expect(await dip(base)).toBeGreaterThan(0.95);
    expect(await dip({ ...base, close })).toBeLessThan(0.8);
  });

  test("colour shows in bright stars only", async ({ page, stageAddress }) => {
    await openStage(page, stageAddress);
    const blueMinusRed = async (magV: number, colourBV: number): Promise<number> => {
      const picture = await drawPicture(page, { stars: [[1, 0, 0, magV, colourBV]] });
      const [red, , blue] = picture.rgb(MIDDLE + 2, MIDDLE);
      return blue - red - (43 - 27);
    };
    expect(await blueMinusRed(4, 1.6)).toBeLessThan(-10);
    expect(await blueMinusRed(4, -0.3)).toBeGreaterThan(10);
    const faint = await drawPicture(page, { stars: [[1, 0, 0, 9, 1.6]] });
    const [red, green, blue] = faint.rgb(MIDDLE, MIDDLE);
    expect([green - red, blue - red]).toEqual([34 - 27, 43 - 27]);
  });
});

/** What staring, looking beside and an eye not used to the dark make of the picture. */
import { expect, type Page } from "@playwright/test";
import type { FieldGaze } from "../../src/stage/index.ts";
import type { SceneSpec } from "./stage/page.ts";
import { PLAIN_VIEW, SIDE_CSS_PX, type TestStar } from "./stage/scene.ts";
import { drawPicture, measure, openStage, type Picture, test } from "./stage/stagePage.ts";

const MIDDLE = SIDE_CSS_PX / 2;
const RADIUS = 372;
const LIMIT = PLAIN_VIEW.limitMag;
const REACH = 6;
const FREE: FieldGaze = { xCssPx: 0, yCssPx: 0, foveaCssPx: 8, lossMag: 0, beside: 0, lackMag: 0 };
type Place = readonly [x: number, y: number];
/** What is stared at, and places that are not: two thirds out, at the other side, and just past three radii. */
const STARED: Place = [100, 60];
const BESIDE_IT: Place = [100 + 32, 60];
const FAR: Place = [-150, -80];

const dirOf = ([x, y]: Place): readonly [number, number, number] => {
  const [across, up] = [x, y].map((px) => (px / RADIUS) * PLAIN_VIEW.planeRadius) as [number, number];
  const length = Math.hypot(1, across, up);
  return [1 / length, -across / length, up / length];
};
const starAt = (place: Place, overLimitMag: number): TestStar => [...dirOf(place), LIMIT - overLimitMag, 0.5];
const fluxAt = (picture: Picture, sky: Picture, [x, y]: Place) =>
  measure(picture, sky, MIDDLE + x, MIDDLE + y, REACH).flux;
const STARE: FieldGaze = { ...FREE, xCssPx: STARED[0], yCssPx: STARED[1], lossMag: 1.5 };

/** Light of stars of a margin at the three places, without a gaze and with one. */
async function starsUnder(page: Page, gaze: FieldGaze | null, overLimitMag: number) {
  const places = [STARED, BESIDE_IT, FAR];
  const sky = await drawPicture(page, { gaze });
  const picture = await drawPicture(page, { gaze, stars: places.map((place) => starAt(place, overLimitMag)) });
  return places.map((place) => fluxAt(picture, sky, place)) as [number, number, number];
}

test.describe("stars", () => {
  test("between the limits vanish where the eye stares, and nowhere else", async ({ page, stageAddress }) => {
    await openStage(page, stageAddress);
    for (const d of [0.5, 0.8, 1]) {
      const free = await starsUnder(page, null, d);
      const stared = await starsUnder(page, STARE, d);
      expect(stared[0], `${d} mag over the limit, stared at`).toBeLessThan(0.05 * free[0]);
      expect(stared[1]).toBeCloseTo(free[1], 6);
      expect(stared[2]).toBeCloseTo(free[2], 6);
    }
  });
  test("bright enough for the cones stand any stare, and in their order", async ({ page, stageAddress }) => {
    await openStage(page, stageAddress);
    for (const d of [2.5, 2.7, 4, 6]) {
      const [free] = await starsUnder(page, null, d);
      const [stared] = await starsUnder(page, STARE, d);
      expect(stared / free, `${d} mag over the limit`).toBeCloseTo(1, 3);
    }
    let before = 0;
    for (let d = 0; d < 3; d += 0.25) {
      const [stared] = await starsUnder(page, STARE, d);
      expect(stared).toBeGreaterThanOrEqual(before);
      before = stared;
    }
  });
  test("come up where the eye looks beside, the faintest most, and none that was not there", async ({
    page,
    stageAddress,
  }) => {
    await openStage(page, stageAddress);
    const gain = async (d: number) => {
      const [free] = await starsUnder(page, FREE, d);
      const [beside] = await starsUnder(page, { ...FREE, beside: 1 }, d);
      return { free, ratio: beside / free };
    };
    const [edge, faint, plain] = [await gain(-0.2), await gain(1), await gain(2.5)];
    expect(edge.ratio).toBeGreaterThan(1.4);
    expect(faint.ratio).toBeGreaterThan(1.15);
    expect(faint.ratio).toBeLessThan(edge.ratio);
    expect(plain.ratio).toBeCloseTo(1, 3);
    const unseen = await starsUnder(page, { ...FREE, beside: 1 }, -0.45);
    expect(unseen.every((flux) => Math.abs(flux) < 1e-6)).toBe(true);
  });
});

test.describe("objects", () => {
  const HALF_PX = 40;
  const halfRad = (HALF_PX / RADIUS) * PLAIN_VIEW.planeRadius;
  const objectAt = (place: Place, marginMag?: number) => ({
    dir: dirOf(place),
    majorRad: 2 * halfRad,
    minorRad: 2 * halfRad,
    axisRad: 0,
    peak: 0.2,
    ...(marginMag === undefined ? {} : { marginMag }),
  });
  /** Light of an object's heart and of half way out, with a margin under a gaze; air stands still unless told. */
  async function glow(
    page: Page,
    gaze: FieldGaze | null,
    marginMag?: number,
    spec: SceneSpec = {},
    emptySky?: Picture,
  ) {
    const sky = emptySky ?? (await drawPicture(page, { ...spec, gaze }));
    const picture = await drawPicture(page, { ...spec, gaze, objects: [objectAt(STARED, marginMag)] });
    const at = (x: number) =>
      picture.channel(MIDDLE + STARED[0] + x, MIDDLE + STARED[1], 1) -
      sky.channel(MIDDLE + STARED[0] + x, MIDDLE + STARED[1], 1);
    return { heart: at(0), halfWay: at(28) };
  }
  const airAt = (seconds: number) => ({ air: { seconds, zenithScatter: 0, zenith: [1, 0, 0] } });
  /** Light of its heart from second to second; the empty sky does not change meanwhile. */
  const wave = async (page: Page, gaze: FieldGaze, marginMag: number, forS: number) => {
    const sky = await drawPicture(page, { ...airAt(0), gaze });
    const lights: number[] = [];
    for (let seconds = 0; seconds < forS; seconds += 1)
      lights.push((await glow(page, gaze, marginMag, airAt(seconds), sky)).heart);
    return lights;
  };

  test("faint ones lose their heart to a stare, not their rim; bright ones nothing", async ({ page, stageAddress }) => {
    await openStage(page, stageAddress);
    const [free, stared] = [await glow(page, null, 0.8), await glow(page, STARE, 0.8)];
    expect(stared.heart).toBeLessThan(0.35 * free.heart);
    expect(stared.halfWay).toBeGreaterThanOrEqual(free.halfWay - 1);
    expect(await glow(page, STARE, 2.2)).toEqual(await glow(page, null, 2.2));
    expect(await glow(page, STARE)).toEqual(await glow(page, null));
  });
  test("at a margin under half a magnitude come and go, and hold brighter beside the gaze", async ({
    page,
    stageAddress,
  }) => {
    await openStage(page, stageAddress);
    const free = await wave(page, FREE, 0.15, 14);
    const held = await wave(page, { ...FREE, beside: 1 }, 0.15, 6);
    expect(Math.min(...free)).toBeLessThan(0.35 * Math.max(...free));
    expect(Math.max(...held) - Math.min(...held)).toBe(0);
    expect(held[0]).toBeGreaterThan(Math.max(...free));
    const plain = await wave(page, FREE, 0.6, 6);
    expect(Math.max(...plain) - Math.min(...plain)).toBe(0);
  });
  test("stand still where nothing moves, and are brighter beside the gaze there too", async ({
    page,
    stageAddress,
  }) => {
    await openStage(page, stageAddress);
    const free = await glow(page, null, 0.15);
    const held = await glow(page, { ...FREE, beside: 1 }, 0.15);
    expect(free.heart).toBeGreaterThan(8);
    expect(held.heart).toBeGreaterThan(1.4 * free.heart);
  });
  test("are gone from an eye that lacks more of its adaptation than they have margin", async ({
    page,
    stageAddress,
  }) => {
    await openStage(page, stageAddress);
    expect((await glow(page, { ...FREE, lackMag: 2 }, 0.8)).heart).toBe(0);
    expect((await glow(page, { ...FREE, lackMag: 0.2 }, 0.8)).heart).toBe((await glow(page, null, 0.8)).heart);
  });
});

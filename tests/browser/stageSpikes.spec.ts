/** Spikes of bright stars in a telescope with vanes: as core has their light, along the tube's top and across, and no others. */
import { expect, type Page } from "@playwright/test";
import { spikeLight, VANE_RAD } from "#core/optics/vanes.ts";
import type { FieldSpikes } from "../../src/stage/index.ts";
import type { SceneSpec } from "./stage/page.ts";
import { LAYOUT, SIDE_CSS_PX, type TestStar } from "./stage/scene.ts";
import { drawPicture, openStage, type Picture, readPicture, test } from "./stage/stagePage.ts";

const DEG = Math.PI / 180;
const MIDDLE = SIDE_CSS_PX / 2;
const LIMIT = 9.6;
/** A field of half a degree: a spike's first fall is 47 px long. */
const PLANE_RADIUS = Math.tan(0.25 * DEG);
const PX_PER_VANE = (VANE_RAD * LAYOUT.fieldRadiusCssPx) / PLANE_RADIUS;
const BELOW_MAG = 5;
/** In the middle of a pixel. */
const HALF = (0.5 / LAYOUT.fieldRadiusCssPx) * PLANE_RADIUS;
const starOver = (d: number): TestStar => [1, -HALF, HALF, LIMIT - d, 0.5];
const UPRIGHT: FieldSpikes = { top: [0, 0, 1], belowMag: BELOW_MAG, vaneRad: VANE_RAD };
const sceneWith = (d: number, how: SceneSpec = {}): SceneSpec => ({
  planeRadius: PLANE_RADIUS,
  limitMag: LIMIT,
  skyRgb: [0, 0, 0],
  eyepiece: true,
  stars: [starOver(d)],
  ...how,
});
/** The picture once the spikes' code is there. */
async function withSpikes(page: Page, scene: SceneSpec): Promise<Picture> {
  await drawPicture(page, scene);
  await expect
    .poll(async () =>
      (await page.evaluate(() => performance.getEntriesByType("resource").map(({ name }) => name))).some((name) =>
        name.includes("spikes"),
      ),
    )
    .toBe(true);
  await page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 100)));
  await page.evaluate((wanted) => window.stagePage.draw(wanted), scene);
  return readPicture(page);
}
const ARMS = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const;

test("four lines, each as bright along its length as core has it, and nothing between them", async ({
  page,
  stageAddress,
}) => {
  await openStage(page, stageAddress);
  for (const d of [9, 11]) {
    const bare = await drawPicture(page, sceneWith(d));
    const spiked = await withSpikes(page, sceneWith(d, { spikes: UPRIGHT }));
    const added = (x: number, y: number) =>
      spiked.channel(MIDDLE + x, MIDDLE + y, 1) - bare.channel(MIDDLE + x, MIDDLE + y, 1);
    for (const px of [60, 75, 90]) {
      const over = d - BELOW_MAG + 2.5 * Math.log10(spikeLight(px / PX_PER_VANE));
      const t = Math.min(1, Math.max(0, (over + 0.4) / 1.4));
      const light = Math.min(0.3, 0.4 * 0.27 * 10 ** (0.248 * over)) * t * t * (3 - 2 * t);
      for (const [x, y] of ARMS)
        expect(Math.abs(added(x * px, y * px) - 255 * light), `${d} mag over, ${px} px`).toBeLessThan(4);
      for (const [x, y] of ARMS)
        expect(added(Math.round(Math.SQRT1_2 * px * (x + y)), Math.round(Math.SQRT1_2 * px * (x - y)))).toBe(0);
    }
    expect(added(0, 60)).toBeGreaterThan(d > 10 ? 60 : 10);
  }
});

test("the cross stands with the tube; a star too faint for it has none, and a lamp keeps to its channel", async ({
  page,
  stageAddress,
}) => {
  await openStage(page, stageAddress);
  const tilted: FieldSpikes = { ...UPRIGHT, top: [0, Math.SQRT1_2, Math.SQRT1_2] };
  const bare = await drawPicture(page, sceneWith(11));
  const turned = await withSpikes(page, sceneWith(11, { spikes: tilted }));
  expect(turned.channel(MIDDLE + 55, MIDDLE + 55, 1)).toBeGreaterThan(bare.channel(MIDDLE + 55, MIDDLE + 55, 1) + 30);
  expect(turned.channel(MIDDLE + 78, MIDDLE, 1)).toBe(bare.channel(MIDDLE + 78, MIDDLE, 1));
  const faint = await drawPicture(page, sceneWith(BELOW_MAG - 0.1));
  expect((await withSpikes(page, sceneWith(BELOW_MAG - 0.1, { spikes: UPRIGHT }))).differing(faint)).toBe(0);
  const red = await withSpikes(page, sceneWith(11, { spikes: UPRIGHT, lamp: "red" }));
  expect([red.greatest(1), red.greatest(2)]).toEqual([0, 0]);
  expect(red.channel(MIDDLE, MIDDLE + 60, 0)).toBeGreaterThan(30);
});

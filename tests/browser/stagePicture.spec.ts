/** The picture as a whole: that there is one, its lamps, its edges, and that it outlives the loss of the context. */
import { expect } from "@playwright/test";
import { bennettDeg } from "#core/celestial/refraction.ts";
import { squareReach } from "../../src/stage/reach.ts";
import { farHeightDeg, nearOutline } from "../../src/stage/skyline.ts";
import { heapOf } from "./stage/heap.ts";
import type { SceneSpec } from "./stage/page.ts";
import { LAYOUT, PLAY_LAYOUT, SIDE_CSS_PX, seeded, type TestStar } from "./stage/scene.ts";
import { drawPicture, measure, openStage, ownPageTest, readPicture, test } from "./stage/stagePage.ts";

const DEG = Math.PI / 180;
const MIDDLE = SIDE_CSS_PX / 2;
const RADIUS = LAYOUT.fieldRadiusCssPx;

const fieldOfStars = (count: number, spanDeg: number, faintest: number): TestStar[] => {
  const random = seeded(5);
  return Array.from({ length: count }, () => {
    const ra = (random() - 0.5) * spanDeg * DEG;
    const dec = (random() - 0.5) * spanDeg * DEG;
    const magV = faintest - 5.5 * random() ** 4;
    return [Math.cos(dec) * Math.cos(ra), Math.cos(dec) * Math.sin(ra), Math.sin(dec), magV, -0.3 + 2 * random()];
  });
};
/** Looking at azimuth and altitude in a sky whose equator is the horizon: x north, y west, z zenith. */
const lookAt = (azimuthDeg: number, altitudeDeg: number): number[] => {
  const [a, h] = [azimuthDeg * DEG, altitudeDeg * DEG];
  const forward = [Math.cos(h) * Math.cos(a), -Math.cos(h) * Math.sin(a), Math.sin(h)];
  const up = [-Math.sin(h) * Math.cos(a), Math.sin(h) * Math.sin(a), Math.cos(h)];
  return [-Math.sin(a), -Math.cos(a), 0, ...up, ...forward];
};
const FINDER: SceneSpec = {
  stars: fieldOfStars(600, 6, 9.6),
  objects: [{ dir: [1, 0, 0], majorRad: 0.01, minorRad: 0.004, axisRad: 0.5, peak: 0.35 }],
  reticle: "cross",
};
const SIGHT: SceneSpec = {
  stars: fieldOfStars(300, 70, 4.6),
  viewFromIcrs: lookAt(8, 12),
  projection: "stereographic",
  planeRadius: 2 * Math.tan(12.5 * DEG),
  limitMag: 4.6,
  skyRgb: [13 / 255, 20 / 255, 30 / 255],
  reticle: "rings",
  horizon: { horizonFromIcrs: [1, 0, 0, 0, 1, 0, 0, 0, 1], sunAltitudeRad: -12 * DEG, sunAzimuthRad: 30 * DEG },
};
const BRIGHT_HEAP: SceneSpec = {
  stars: Array.from({ length: 40 }, (_, i) => [1, 0.0004 * (i % 7), 0.0004 * Math.floor(i / 7), 3 + (i % 3), 0.4]),
  objects: [{ dir: [1, 0, 0], majorRad: 0.02, minorRad: 0.02, axisRad: 0, peak: 0.9 }],
};

test("the field is a picture: dark sky shaded to the stop, many lights, rim and table in their tones", async ({
  page,
  stageAddress,
}) => {
  await openStage(page, stageAddress);
  const empty = await drawPicture(page, {});
  expect(empty.rgb(MIDDLE, MIDDLE)).toEqual([27, 34, 43]);
  // Between two tones the pixels are mixed, so that slow shading shows no steps: a stretch of them has the mean.
  const shaded = Array.from({ length: 32 }, (_, i) => empty.channel(MIDDLE + 305, MIDDLE - 16 + i, 1));
  expect(Math.abs(shaded.reduce((sum, value) => sum + value, 0) / 32 - 0.9 * 34)).toBeLessThan(0.25);
  expect(empty.rgb(MIDDLE + RADIUS - 1, MIDDLE)[2]).toBeLessThan(16);
  expect(empty.rgb(MIDDLE + RADIUS + 2, MIDDLE)).toEqual([0x1d, 0x20, 0x23]);
  expect(empty.rgb(MIDDLE + RADIUS + 50, MIDDLE)).toEqual([0x12, 0x13, 0x14]);
  expect(empty.rgb(3, 3)).toEqual([0x0b, 0x0c, 0x0d]);
  const picture = await drawPicture(page, FINDER);
  expect(picture.colours(), "a flat picture").toBeGreaterThan(300);
  expect(picture.greatest(1)).toBe(255);
  expect(picture.differing(empty)).toBeGreaterThan(5000);
  expect(await page.evaluate(() => window.stagePage.violations)).toEqual([]);
});

test("a canvas that holds a field alone is round, and within it every pixel is as where it has a rim", async ({
  page,
  stageAddress,
}) => {
  await openStage(page, stageAddress);
  const whole = await drawPicture(page, FINDER);
  await openStage(page, stageAddress, PLAY_LAYOUT);
  const alone = await drawPicture(page, FINDER);
  const round = () => page.locator("canvas").evaluate((canvas) => getComputedStyle(canvas).borderRadius);
  expect(await round()).toBe("50%");
  const half = alone.width / 2;
  let other = 0;
  for (let x = 0; x < alone.width; x++) {
    for (let y = 0; y < alone.height; y++) {
      if (Math.hypot(x + 0.5 - half, y + 0.5 - half) > half - 0.5) continue;
      const there = whole.rgb(x + MIDDLE - half, y + MIDDLE - half);
      other += Number(alone.rgb(x, y).some((value, c) => Math.abs(value - there[c]!) > 1));
    }
  }
  expect(other).toBe(0);
  await page.evaluate((layout) => window.stagePage.start(layout), LAYOUT);
  expect(await round()).toBe("0px");
});

test("no light of a star falls outside the field", async ({ page, stageAddress }) => {
  await openStage(page, stageAddress);
  const empty = await drawPicture(page, {});
  const edge = 2.65 * DEG;
  const at = (share: number): TestStar => [Math.cos(edge * share), -Math.sin(edge * share), 0, 3, 0.6];
  const picture = await drawPicture(page, { stars: [at(0.99), at(1.03)] });
  let outside = 0;
  for (let x = MIDDLE + RADIUS + 1; x < picture.width; x++) {
    for (let y = MIDDLE - 40; y < MIDDLE + 40; y++)
      outside += Number(picture.rgb(x, y).join() !== empty.rgb(x, y).join());
  }
  expect(outside).toBe(0);
  expect(picture.differing(empty)).toBeGreaterThan(100);
});

test("a soft object lies along its position angle, as bright and as long as asked", async ({ page, stageAddress }) => {
  await openStage(page, stageAddress);
  const empty = await drawPicture(page, {});
  // North is up and east at the left.
  const object = { dir: [1, 0, 0] as const, majorRad: 0.02, minorRad: 0.008, axisRad: 30 * DEG, peak: 0.3 };
  const picture = await drawPicture(page, { objects: [object] });
  const added = (x: number, y: number) => picture.channel(x, y, 1) - empty.channel(x, y, 1);
  expect(Math.abs(added(MIDDLE, MIDDLE) - 0.3 * 226)).toBeLessThan(2.5);
  const halfPx = (0.01 * RADIUS) / Math.tan(2.65 * DEG);
  const along = (share: number, angleDeg: number) =>
    added(
      Math.floor(MIDDLE - share * halfPx * Math.sin(angleDeg * DEG)),
      Math.floor(MIDDLE + share * halfPx * Math.cos(angleDeg * DEG)),
    );
  for (const [share, level] of [
    [0.35, 0.82],
    [0.65, 0.36],
  ] as const) {
    for (const angle of [30, 210]) expect(Math.abs(along(share, angle) - 0.3 * 226 * level)).toBeLessThan(3);
  }
  expect(along(1.05, 30)).toBe(0);
  expect(along(0.5, 120)).toBe(0);
});

test("lamps keep to their channels and under their ceiling", async ({ page, stageAddress }) => {
  await openStage(page, stageAddress);
  for (const scene of [FINDER, SIGHT, BRIGHT_HEAP]) {
    const red = await drawPicture(page, { ...scene, lamp: "red" });
    expect([red.greatest(0) <= 170, red.greatest(1), red.greatest(2)]).toEqual([true, 0, 0]);
    expect(red.colours()).toBeGreaterThan(20);
    const amber = await drawPicture(page, { ...scene, lamp: "amber" });
    expect([amber.greatest(0) <= 170, amber.greatest(1) <= 86, amber.greatest(2)]).toEqual([true, true, 0]);
    expect(amber.greatest(1)).toBeGreaterThan(30);
  }
  const heap = await drawPicture(page, { ...BRIGHT_HEAP, lamp: "red" });
  expect(heap.greatest(0)).toBe(170);
  const turnedUp = await drawPicture(page, { ...BRIGHT_HEAP, lamp: "red", lampLevel: 235 / 255 });
  expect(turnedUp.greatest(0)).toBe(235);
});

test("the ground covers the stars behind it, and one window is lit in all the round", async ({
  page,
  stageAddress,
}) => {
  await openStage(page, stageAddress);
  const night = { ...SIGHT, horizon: { ...SIGHT.horizon!, sunAltitudeRad: -30 * DEG }, reticle: "none" as const };
  const low: TestStar[] = [-1, -4, -8].map((dec) => [Math.cos(dec * DEG), 0, Math.sin(dec * DEG), 0, 0.6]);
  const without = await drawPicture(page, { ...night, stars: [] });
  const below = await drawPicture(page, { ...night, stars: low });
  // Glare of the highest may be seen over the hedge; nothing of the others.
  const { x, y } = { x: MIDDLE, y: MIDDLE - 250 };
  for (let row = y - 60; row < y; row++) expect(below.rgb(x, row)).toEqual(without.rgb(x, row));
  const amberPixels = async (azimuthDeg: number): Promise<number> => {
    const picture = await drawPicture(page, { ...night, stars: [], viewFromIcrs: lookAt(azimuthDeg, 10) });
    let count = 0;
    for (let row = 60; row < MIDDLE; row++) {
      for (let column = 60; column < 790; column++) {
        const [red, , blue] = picture.rgb(column, row);
        if (red > 150 && blue < 110) count += 1;
      }
    }
    return count;
  };
  const lit: number[] = [];
  for (let azimuth = 0; azimuth < 360; azimuth += 40) lit.push(await amberPixels(azimuth));
  expect(lit.filter((count) => count > 4)).toHaveLength(1);
});

test("the ground stands where the light from over it comes from: lower by refraction", async ({
  page,
  stageAddress,
}) => {
  await openStage(page, stageAddress);
  const dusk = { ...SIGHT, horizon: { ...SIGHT.horizon!, sunAltitudeRad: -6 * DEG }, reticle: "none" as const };
  const lookDeg = 6;
  let before = 0;
  for (const azimuth of [20, 60, 130, 175, 203, 265]) {
    // Hills and hedges alone, no tree or house; what is highest meets the sky.
    const outline = nearOutline(azimuth);
    expect(outline.crownTo).toBe(0);
    const heightDeg = Math.max(outline.ground, farHeightDeg(azimuth));
    const picture = await drawPicture(page, { ...dusk, stars: [], viewFromIcrs: lookAt(azimuth, lookDeg) });
    const rowAt = (altDeg: number) =>
      MIDDLE + ((2 * Math.tan(((altDeg - lookDeg) * DEG) / 2)) / SIGHT.planeRadius!) * LAYOUT.fieldRadiusCssPx;
    const green = (row: number) => picture.channel(MIDDLE, row, 1);
    const from = Math.round(rowAt(heightDeg)) - 14;
    const rows = Array.from({ length: 28 }, (_, i) => from + i);
    const edge = rows.reduce((best, row) =>
      Math.abs(green(row) - green(row - 1)) > Math.abs(green(best) - green(best - 1)) ? row : best,
    );
    const trueDeg = heightDeg - bennettDeg(heightDeg);
    expect(Math.abs(edge - rowAt(trueDeg)), `azimuth ${azimuth}`).toBeLessThan(1.2);
    before += (rowAt(heightDeg) - edge) / 6;
  }
  // Some three px of a sight's field over the hills: it can be told apart.
  expect(before).toBeGreaterThan(2);
});

test("an open sky runs on past the rim at half its light and is gone 250 px further; an instrument has a wall", async ({
  page,
  stageAddress,
}) => {
  // Off the canvas's middle, with room at the right alone.
  const [field, rim, left, down] = [200, 30, 300, 260];
  const reachCssPx = { left, right: 500, up: 250, down };
  await openStage(page, stageAddress, { ...LAYOUT, reachCssPx, fieldRadiusCssPx: field, rimCssPx: rim });
  const night = { ...SIGHT, horizon: { ...SIGHT.horizon!, sunAltitudeRad: -30 * DEG }, reticle: "none" as const };
  const high = { ...night, stars: [], viewFromIcrs: lookAt(0, 50) };
  const sky = await drawPicture(page, high);
  const over = (px: number): number => {
    const [x, table] = [left + px, sky.channel(left + 498, down, 2)];
    let sum = 0;
    for (let row = down - 8; row < down + 8; row++) sum += sky.channel(x, row, 2) - table;
    return sum / 16;
  };
  const outer = field + rim;
  expect(sky.rgb(left + 498, down)).toEqual([11, 12, 13]);
  expect(over(outer + 3) / over(field - 10)).toBeGreaterThan(0.42);
  expect(over(outer + 3) / over(field - 10)).toBeLessThan(0.56);
  expect(over(outer + 125) / over(outer + 3)).toBeGreaterThan(0.4);
  expect(over(outer + 125) / over(outer + 3)).toBeLessThan(0.6);
  expect(over(outer + 251)).toBe(0);

  const bright: TestStar[] = [[Math.cos(50 * DEG), 0, Math.sin(50 * DEG), 3.5, 0.6]];
  const place = measure(await drawPicture(page, { ...high, stars: bright }), sky, left, down, 8);
  expect(Math.hypot(place.x - left, place.y - down), "a star in the middle of the field").toBeLessThan(0.3);

  const walled = await drawPicture(page, FINDER);
  for (const px of [3, 40, 200]) expect(walled.rgb(left + outer + px, down)).toEqual([11, 12, 13]);
});

test("ten losses of the context in a row leave the picture as it was", async ({ page, stageAddress }) => {
  await openStage(page, stageAddress);
  const before = { finder: await drawPicture(page, FINDER), sight: await drawPicture(page, SIGHT) };
  expect(before.finder.differing(before.sight)).toBeGreaterThan(100_000);
  for (let i = 0; i < 10; i++) {
    const wanted = i < 5 ? before.sight : before.finder;
    // What is drawn after a loss is drawn, too.
    if (i === 5) await page.evaluate((scene) => window.stagePage.draw(scene), FINDER);
    await page.evaluate(() => window.stagePage.loseAndRestore());
    expect((await readPicture(page)).differing(wanted), `after loss ${i + 1}`).toBe(0);
  }
  const events = await page.evaluate(() => window.stagePage.events);
  expect(events).toEqual(Array.from({ length: 10 }, () => ["lost", "restored"]).flat());
});

test("a view that changes while the context is away is drawn when it is back", async ({ page, stageAddress }) => {
  await openStage(page, stageAddress);
  const wanted = await drawPicture(page, FINDER);
  await drawPicture(page, SIGHT);
  await page.evaluate((scene) => window.stagePage.loseAndRestore(scene), FINDER);
  expect((await readPicture(page)).differing(wanted)).toBe(0);
});

ownPageTest("a thousand frames leave nothing behind", async ({ page, stageAddress }) => {
  // A small canvas: what a frame makes on the heap does not depend on its pixels.
  await openStage(page, stageAddress, { ...LAYOUT, reachCssPx: squareReach(60), fieldRadiusCssPx: 50, rimCssPx: 8 });
  const { used, afterCollecting } = await heapOf(page);
  for (const scene of [FINDER, SIGHT]) {
    await page.evaluate((spec) => window.stagePage.spin(spec, 700), scene);
    // By now the engine has compiled what it will; what it learns on the way is no leak.
    const before = await afterCollecting();
    await page.evaluate((spec) => window.stagePage.spin(spec, 1000), scene);
    const made = (await used()) - before;
    const left = (await afterCollecting()) - before;
    const description = `${Math.round(made / 1000)} bytes a frame made, ${left} bytes left after 1,000 frames`;
    test.info().annotations.push({ type: "heap", description });
    expect(left, description).toBeLessThan(100_000);
  }
});

test("twice the pixels: same places, same size on the page", async ({ page, stageAddress }) => {
  await openStage(page, stageAddress);
  const star: TestStar = [1, 0.01, 0.02, 6, 0.4];
  await page.evaluate((layout) => window.stagePage.resize(layout), { ...LAYOUT, devicePixelRatio: 2 });
  const empty = await drawPicture(page, {});
  const picture = await drawPicture(page, { stars: [star] });
  expect(picture.width).toBe(2 * SIDE_CSS_PX);
  const scale = (2 * RADIUS) / Math.tan(2.65 * DEG);
  const [x, y] = [2 * MIDDLE - 0.01 * scale, 2 * MIDDLE + 0.02 * scale];
  const found = measure(picture, empty, x, y, 12);
  expect(Math.hypot(found.x - x, found.y - y)).toBeLessThan(0.3);
  const box = await page.locator("canvas").boundingBox();
  expect([box?.width, box?.height]).toEqual([SIDE_CSS_PX, SIDE_CSS_PX]);
});

ownPageTest("a browser without WebGL 2 gets words, not a flat picture", async ({ page, stageAddress }) => {
  await page.addInitScript(() => {
    HTMLCanvasElement.prototype.getContext = () => null;
  });
  await page.goto(stageAddress);
  await page.waitForFunction(() => window.stagePage);
  const code = await page.evaluate(() =>
    window.stagePage.start().then(
      () => "drawn",
      (error: { code?: string; hint?: string }) => `${error.code}: ${error.hint}`,
    ),
  );
  expect(code).toMatch(/^NO_PICTURE: .*WebGL/);
});

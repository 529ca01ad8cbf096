/** Starlight from moment to moment: who comes and goes, who twinkles, and that nothing flashes. */
import { expect, type Page } from "@playwright/test";
import { squareReach } from "../../src/stage/reach.ts";
import { noticed } from "./play/starLaw.ts";
import { PLAIN_VIEW, type TestStar } from "./stage/scene.ts";
import { openStage, test } from "./stage/stagePage.ts";

const SIDE = 260;
const RADIUS = 120;
const PER_ROW = 9;
const REACH = 5;
const LIMIT = PLAIN_VIEW.limitMag;
/** No swing of light may come as often in any second (the web's rule on flashes), and under so much it is none. */
const MOST_SWINGS = 3;
const SWING_SHARE = 0.1;

const placeOf = (i: number): readonly [number, number] => [
  SIDE / 2 + 17 * ((i % PER_ROW) - 4) + 0.3,
  SIDE / 2 + 17 * (Math.floor(i / PER_ROW) - 4) + 0.4,
];
const starAt = (i: number, d: number): TestStar => {
  const [x, y] = placeOf(i).map((px) => ((px - SIDE / 2) * PLAIN_VIEW.planeRadius) / RADIUS) as [number, number];
  const length = Math.hypot(1, x, y);
  return [1 / length, -x / length, y / length, LIMIT - d, 0.5];
};
/** Seconds of a while: from the first one on, so many of them, so far apart. */
const during = (from: number, count: number, apart: number) =>
  Array.from({ length: count }, (_, i) => from + i * apart);

/** Light of stars of these margins at moments, a list for each star; the zenith stands so far from the middle of the field. */
async function lightsOf(
  page: Page,
  margins: readonly number[],
  seconds: readonly number[],
  zenithDeg = 0,
  scatter = 0.14,
) {
  const zenithRad = (zenithDeg * Math.PI) / 180;
  const rows = await page.evaluate((asked) => window.stagePage.lights(...asked), [
    { stars: margins.map((d, i) => starAt(i, d)) },
    { zenith: [Math.cos(zenithRad), 0, Math.sin(zenithRad)], zenithScatter: scatter },
    seconds,
    margins.map((_, i) => placeOf(i)),
    REACH,
  ] as const);
  return margins.map((_, i) => rows.map((row) => row[i]!));
}
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const scatterOf = (values: readonly number[]) =>
  Math.sqrt(mean(values.map((value) => (value / mean(values) - 1) ** 2)));

/** Swings of more than a tenth of the greatest light, up and down again, in the second with most of them. */
function mostSwings(values: readonly number[], perSecond: number): number {
  const least = SWING_SHARE * Math.max(...values);
  const turns: number[] = [];
  let [extreme, rising] = [values[0]!, true];
  values.forEach((value, i) => {
    if (rising ? value > extreme : value < extreme) extreme = value;
    else if (Math.abs(value - extreme) > least) {
      turns.push(i);
      [extreme, rising] = [value, !rising];
    }
  });
  return Math.max(0, ...turns.map((from) => turns.filter((to) => to >= from && to < from + perSecond).length)) / 2;
}

test.beforeEach(async ({ page, stageAddress }) => {
  const layout = {
    reachCssPx: squareReach(SIDE / 2),
    devicePixelRatio: 1,
    fieldRadiusCssPx: RADIUS,
    rimCssPx: 0,
    starScale: 1,
  };
  await openStage(page, stageAddress, layout);
});

test("stars about the limit are there for their share of the time, all others always or never", async ({ page }) => {
  const groups = [-0.5, -0.15, 0, 0.15, 0.5, 1.5];
  const margins = groups.flatMap((d) => Array.from({ length: 13 }, () => d));
  const lights = await lightsOf(page, margins, during(100, 80, 0.83), 0, 0);
  groups.forEach((d, group) => {
    const shares = lights.slice(13 * group, 13 * group + 13).map((values) => mean(values) / Math.max(1, ...values));
    expect(Math.abs(mean(shares) - noticed(d)), `margin ${d}: ${mean(shares).toFixed(3)}`).toBeLessThan(0.08);
  });
  // What stands half a magnitude over the limit does not change at all.
  for (const values of lights.slice(13 * 4)) expect(Math.max(...values)).toBe(Math.min(...values));
});

test("light twinkles low down, hardly at the zenith, and nothing swings as often as three times a second", async ({
  page,
}) => {
  const margins = Array.from({ length: 27 }, (_, i) => [0, 0.2, 1.8][i % 3]!);
  const bright = (lights: readonly number[][]) => mean(lights.filter((_, i) => i % 3 === 2).map(scatterOf));
  const seconds = during(3600, 180, 1 / 30);
  const low = await lightsOf(page, margins, seconds, 78);
  const high = await lightsOf(page, margins, seconds, 10);
  expect(bright(low)).toBeGreaterThan(0.15);
  expect(bright(high)).toBeLessThan(0.12);
  expect(bright(low)).toBeGreaterThan(2.5 * bright(high));
  for (const values of [...low, ...high]) expect(mostSwings(values, 30)).toBeLessThanOrEqual(MOST_SWINGS);
  // Nobody comes or goes at a stroke: from one thirtieth of a second to the next there is but a little of the whole.
  for (const values of high) {
    const steps = values.slice(1).map((value, i) => Math.abs(value - values[i]!) / Math.max(1, ...values));
    expect(Math.max(0, ...steps)).toBeLessThan(0.2);
  }
});

/** The Milky Way over an open sky: dimmed low down by as much as core says, and nowhere else. */
import { expect } from "@playwright/test";
import { zenithConditions } from "#core/eye/conditions.ts";
import { atHeight, contrastTable, lowGlowDex } from "#core/eye/lowAir.ts";
import type { FieldGlow, FieldHorizon } from "../../src/stage/view.ts";
import { LAYOUT, SIDE_CSS_PX } from "./stage/scene.ts";
import { drawPicture, openStage, readPicture, test } from "./stage/stagePage.ts";

const DEG = Math.PI / 180;
const MIDDLE = SIDE_CSS_PX / 2;
/** Northwards, thirty degrees up; ICRS is the horizon's own frame. */
const LOOK_DEG = 30;
const PLANE_RADIUS = 2 * Math.tan(22.5 * DEG);
const [SIN, COS] = [Math.sin(LOOK_DEG * DEG), Math.cos(LOOK_DEG * DEG)];
const HEIGHTS_DEG = [70, 50, 30, 20, 12, 7, 4];
const DEX = 0.6;
const SKY_GREEN = 22 / 255;

const dirAt = (altDeg: number, azDeg: number): readonly [number, number, number] => [
  Math.cos(altDeg * DEG) * Math.cos(azDeg * DEG),
  -Math.cos(altDeg * DEG) * Math.sin(azDeg * DEG),
  Math.sin(altDeg * DEG),
];
/** A patch of light of a degree or so at each height, due north. */
const PATCHES: FieldGlow = (() => {
  const values = HEIGHTS_DEG.flatMap((alt) => {
    const [a, b, c, d] = [dirAt(alt - 1, -2), dirAt(alt - 1, 2), dirAt(alt + 1, 2), dirAt(alt + 1, -2)];
    return [a, b, c, a, c, d].flatMap((corner) => [...corner!, ...dirAt(alt, 0), DEX]);
  });
  return { corners: Float32Array.from(values), count: values.length / 7 };
})();

const CONTRAST = Array.from(contrastTable(zenithConditions(21)));
const horizonWith = (glowContrast?: readonly number[]): FieldHorizon => ({
  horizonFromIcrs: [1, 0, 0, 0, 1, 0, 0, 0, 1],
  sunAltitudeRad: -0.8,
  sunAzimuthRad: 3,
  ...(glowContrast ? { glowContrast } : {}),
});
const sceneWith = (horizon: FieldHorizon, glow: FieldGlow | null) => ({
  viewFromIcrs: [0, -1, 0, -SIN, 0, COS, COS, 0, SIN],
  projection: "stereographic" as const,
  planeRadius: PLANE_RADIUS,
  skyRgb: [17 / 255, SKY_GREEN, 30 / 255] as const,
  horizon,
  glow,
});
const rowOf = (altDeg: number): number => {
  const plane = 2 * Math.tan(((altDeg - LOOK_DEG) * DEG) / 2);
  return Math.round(MIDDLE + (plane / PLANE_RADIUS) * LAYOUT.fieldRadiusCssPx);
};

test("low down its light falls as core says, and is whole without the air", async ({ page, stageAddress }) => {
  await openStage(page, stageAddress);
  const dark = await drawPicture(page, sceneWith(horizonWith(), null));
  const added = async (horizon: FieldHorizon) => {
    const picture = await drawPicture(page, sceneWith(horizon, PATCHES));
    return HEIGHTS_DEG.map((alt) => picture.channel(MIDDLE, rowOf(alt), 1) - dark.channel(MIDDLE, rowOf(alt), 1));
  };
  const whole = await added(horizonWith());
  const dimmed = await added(horizonWith(CONTRAST));
  HEIGHTS_DEG.forEach((alt, i) => {
    // Three times the sky for each dex, in steps of the display.
    expect(Math.abs(whole[i]! - 255 * 3 * SKY_GREEN * DEX), `${alt} degrees, no air`).toBeLessThanOrEqual(1.5);
    const left = lowGlowDex(DEX, atHeight(CONTRAST, Math.sin(alt * DEG)));
    expect(Math.abs(dimmed[i]! - 255 * 3 * SKY_GREEN * left), `${alt} degrees`).toBeLessThanOrEqual(1.5);
  });
  expect(dimmed.at(-1)!).toBeLessThan(whole.at(-1)! / 4);
});

test("when the sky has turned, heights are taken anew", async ({ page, stageAddress }) => {
  await openStage(page, stageAddress);
  const upright = horizonWith(CONTRAST);
  const turned: FieldHorizon = { ...upright, horizonFromIcrs: [COS, 0, SIN, 0, 1, 0, -SIN, 0, COS] };
  await page.evaluate(([scene, horizon]) => window.stagePage.drawThen(scene, { horizon }), [
    sceneWith(upright, PATCHES),
    turned,
  ] as const);
  const after = await readPicture(page);
  const fresh = await drawPicture(page, sceneWith(turned, PATCHES));
  expect(after.differing(fresh)).toBe(0);
});

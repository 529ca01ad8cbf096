/** Moon and planets as the light lies over their discs. */
import { expect, type Page } from "@playwright/test";
import type { BodyForm, BodyLook } from "#core/field/objectLook.ts";
import type { SceneSpec } from "./stage/page.ts";
import { drawPicture, openStage, type Picture, readPicture, test } from "./stage/stagePage.ts";

const DEG = Math.PI / 180;
const MIDDLE = 426;
/** Radius of the disc on the window, px: its picture is three times as wide. */
const DISC_PX = 80;
const HALF_RAD = Math.atan(((3 * DISC_PX) / 372) * Math.tan(2.65 * DEG));

const body = (form: BodyForm, over: Partial<BodyLook> = {}) => ({
  dir: [1, 0, 0] as const,
  majorRad: 2 * HALF_RAD,
  minorRad: 2 * HALF_RAD,
  axisRad: 0,
  peak: 0.9,
  look: { form, litShare: 1, poleRad: 0, tilt: 0, colourBV: 0.9, ...over },
});
/** Green of the picture at a place about the middle, in radii of the disc: right and up. */
const greenAt = (picture: Picture, right: number, up: number, channel = 1) =>
  picture.channel(Math.floor(MIDDLE + right * DISC_PX), Math.floor(MIDDLE + up * DISC_PX), channel);

async function drawBody(page: Page, of: ReturnType<typeof body>, spec: SceneSpec = {}): Promise<Picture> {
  const empty = await drawPicture(page, spec);
  await drawPicture(page, { ...spec, bodies: [of] });
  // The code of bodies comes when first there is one.
  await expect
    .poll(async () => {
      const picture = await readPicture(page);
      return Math.max(...[-0.5, 0, 0.5].map((up) => greenAt(picture, 0.2, up, 0) - greenAt(empty, 0.2, up, 0)));
    })
    .toBeGreaterThan(1);
  return readPicture(page);
}

test.beforeEach(async ({ page, stageAddress }) => openStage(page, stageAddress));

test("a half Moon is lit on the side where its limb is said to be; the dark side has ashen light when the Moon is young", async ({
  page,
}) => {
  // With the limb at north the upper half is bright.
  for (const [litShare, upper, lower] of [
    [0.5, true, false],
    [1, true, true],
    [0.02, false, false],
  ] as const) {
    const picture = await drawBody(page, body("moon", { litShare }));
    const isLit = (up: number) => greenAt(picture, 0.1, up) > 75;
    expect([isLit(0.6), isLit(-0.6)], `lit ${litShare}`).toEqual([upper, lower]);
  }
  const young = await drawBody(page, body("moon", { litShare: 0.05 }));
  expect(greenAt(young, 0, -0.5)).toBeGreaterThan(greenAt(young, 0, -2.5));
});

test("the Moon's face stands by its pole: the dark plains are north and west of the middle, whichever limb is lit", async ({
  page,
}) => {
  // North up, east to the left as in the sky: Mare Imbrium is up and left of the middle, the southern highlands are down.
  for (const turn of [0, 90, 200]) {
    const of = { ...body("moon", { poleRad: -turn * DEG }), axisRad: turn * DEG };
    const picture = await drawBody(page, of);
    const plains = greenAt(picture, -0.25, 0.55);
    const highlands = greenAt(picture, 0.2, -0.55);
    expect(highlands, `limb at ${turn}`).toBeGreaterThan(1.25 * plains);
  }
});

test("to the naked eye the Moon lights the sky about it, most near by, and hides no star there", async ({ page }) => {
  const view = { stars: [starBehind(0.8)] };
  const empty = await drawPicture(page, view);
  const picture = await drawBody(page, body("glow"), view);
  const over = [0, 0.3, 0.8, 1.6].map((up) => greenAt(picture, 0.05, up) - greenAt(empty, 0.05, up));
  expect(over[0]).toBeGreaterThan(150);
  for (const i of [1, 3]) expect(over[i]!).toBeLessThan(over[i - 1]!);
  expect(greenAt(picture, 0, 0.8)).toBeGreaterThan(150);
  expect(Math.abs(greenAt(picture, 0.05, 3.05) - greenAt(empty, 0.05, 3.05)), "no edge").toBeLessThanOrEqual(1);
});

test("no star shines through the Moon, lit or dark", async ({ page }) => {
  const view = { stars: [-0.5, 0.5].map((up) => starBehind(up)) };
  const without = await drawPicture(page, view);
  const picture = await drawBody(page, body("moon", { litShare: 0.5 }), view);
  const plain = await drawBody(page, body("moon", { litShare: 0.5 }));
  for (const up of [-0.5, 0.5]) {
    expect(greenAt(without, 0, up)).toBeGreaterThan(150);
    expect(Math.abs(greenAt(picture, 0, up) - greenAt(plain, 0, up))).toBeLessThanOrEqual(1);
  }
});
const starBehind = (up: number) => {
  const z = ((up * DISC_PX) / 372) * Math.tan(2.65 * DEG);
  const length = Math.hypot(1, z);
  return [1 / length, 0, z / length, 4, 0.4] as const;
};

test("Saturn's ring is as long as it is, opens with its tilt, and lies before the disc on the side that is nearer", async ({
  page,
}) => {
  const open = await drawBody(page, body("ringed", { tilt: 0.4 }));
  const empty = await drawPicture(page, {});
  const over = (picture: Picture, right: number, up: number) => greenAt(picture, right, up) - greenAt(empty, right, up);
  // The pole is up, so the ring lies level: bright at 1.7 radii, out beyond 2.3, dark between disc and ring.
  for (const side of [-1, 1]) {
    expect(over(open, side * 1.75, 0)).toBeGreaterThan(100);
    expect(over(open, side * 2.4, 0)).toBeLessThan(15);
    expect(over(open, side * 1.13, 0)).toBeLessThan(0.5 * over(open, side * 1.75, 0));
  }
  expect(over(open, 0, 0.8), "the far side is behind the disc").toBeGreaterThan(100);
  expect(greenAt(open, 0, -1.7 * 0.4)).not.toBe(greenAt(open, 0, 1.7 * 0.4));
  const edgeOn = await drawBody(page, body("ringed", { tilt: 0 }));
  expect(over(edgeOn, 1.75, 0.3)).toBeLessThan(30);
  expect(over(open, 1.5, 0.3), "the open ring is there").toBeGreaterThan(60);
});

test("Jupiter has two belts along its equator, is flattened, and is darker to its limb", async ({ page }) => {
  const picture = await drawBody(page, body("banded"));
  const middle = greenAt(picture, 0, 0);
  for (const belt of [0.19, -0.21]) expect(greenAt(picture, 0, belt)).toBeLessThan(0.9 * middle);
  expect(greenAt(picture, 0.9, 0)).toBeLessThan(0.9 * middle);
  expect(greenAt(picture, 0.97, 0)).toBeGreaterThan(1.5 * greenAt(picture, 0, 0.97));
});

test("under the red lamp bodies are red alone", async ({ page }) => {
  const picture = await drawBody(page, body("ringed", { tilt: 0.4 }), { lamp: "red" });
  expect([picture.greatest(1), picture.greatest(2)]).toEqual([0, 0]);
  expect(picture.greatest(0)).toBeLessThanOrEqual(170);
});

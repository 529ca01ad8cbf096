/** Objects by kind, as the light lies over them: what an observer would say of each. */
import { expect, type Page } from "@playwright/test";
import type { LightForm, ObjectLook } from "#core/field/objectLook.ts";
import type { SceneSpec } from "./stage/page.ts";
import { drawPicture, openStage, type Picture, test } from "./stage/stagePage.ts";

const DEG = Math.PI / 180;
const MIDDLE = 426;
/** Half the size of the object on the window, px. */
const HALF_PX = 120;
const HALF_RAD = Math.atan((HALF_PX / 372) * Math.tan(2.65 * DEG));
const PEAK = 0.35;

const look = (form: LightForm, over: Partial<ObjectLook> = {}): ObjectLook => ({
  form,
  seed: 0.37,
  resolved: 0,
  cut: 0.05,
  ...over,
});
const objectOf = (of: ObjectLook, minorShare = 1) => ({
  dir: [1, 0, 0] as const,
  majorRad: 2 * HALF_RAD,
  minorRad: 2 * HALF_RAD * minorShare,
  axisRad: 0,
  peak: PEAK,
  look: of,
});
/** Light over the empty field along a spoke, display values: from the middle outwards, `share` in half axes. */
async function lightOf(page: Page, of: ObjectLook, spec: SceneSpec = {}) {
  const empty = await drawPicture(page, spec);
  const picture = await drawPicture(page, { ...spec, objects: [objectOf(of)] });
  const at = (share: number, angleDeg: number) => {
    const x = Math.floor(MIDDLE + share * HALF_PX * Math.cos(angleDeg * DEG));
    const y = Math.floor(MIDDLE + share * HALF_PX * Math.sin(angleDeg * DEG));
    return picture.channel(x, y, 1) - empty.channel(x, y, 1);
  };
  const round = (share: number) => {
    const values = Array.from({ length: 72 }, (_, i) => at(share, 5 * i));
    return { mean: values.reduce((sum, value) => sum + value, 0) / 72, values };
  };
  return { empty, picture, at, round };
}
/** Points brighter than all about them. */
function peaks(picture: Picture, empty: Picture): number {
  let count = 0;
  const light = (x: number, y: number) => picture.channel(x, y, 1) - empty.channel(x, y, 1);
  for (let y = MIDDLE - HALF_PX; y <= MIDDLE + HALF_PX; y++) {
    for (let x = MIDDLE - HALF_PX; x <= MIDDLE + HALF_PX; x++) {
      const here = light(x, y);
      if (here < 14) continue;
      const beside = [light(x - 2, y), light(x + 2, y), light(x, y - 2), light(x, y + 2)];
      if (beside.every((value) => value < here - 8)) count += 1;
    }
  }
  return count;
}

const FORMS: readonly LightForm[] = ["disc", "bulge", "granules", "plate", "ring", "cloud", "shell", "lamplit"];

test.beforeEach(({ page, stageAddress }) => openStage(page, stageAddress));

for (const form of FORMS) {
  test(`${form}: soft, within its listed size, grey, and never twice the same`, async ({ page }) => {
    const { picture, empty, round } = await lightOf(page, look(form));
    expect(Math.max(...round(1.03).values), "nothing beyond the listed size").toBe(0);
    expect(Math.max(...round(0.97).values), "no hard edge").toBeLessThan(14);
    expect(picture.differing(empty)).toBeGreaterThan(1500);
    const again = await lightOf(page, look(form));
    expect(again.picture.differing(picture), "the same name, the same form").toBe(0);
    if (form === "bulge") return;
    const other = await lightOf(page, look(form, { seed: 0.71, resolved: 0.6 }));
    expect(other.picture.differing(picture), "another name, another form").toBeGreaterThan(800);
  });
}

test("the middle of a ring is darker than its rim, that of all else is not", async ({ page }) => {
  const ring = await lightOf(page, look("ring"));
  expect(ring.round(0.55).mean).toBeGreaterThan(1.5 * ring.at(0, 0));
  for (const form of ["bulge", "disc", "granules", "lamplit"] as const) {
    const { round } = await lightOf(page, look(form));
    expect(round(0.05).mean, form).toBeGreaterThan(2 * round(0.5).mean);
  }
  const plate = await lightOf(page, look("plate"));
  expect(Math.abs(plate.round(0.05).mean - plate.round(0.35).mean)).toBeLessThan(6);
});

test("a cloud is brightest where it is listed, about the stars that light it", async ({ page }) => {
  for (const seed of [0.07, 0.71]) {
    const { at, round } = await lightOf(page, look("cloud", { seed }));
    for (const share of [0.3, 0.5, 0.7])
      expect(at(0, 0), `seed ${seed}, ${share} out`).toBeGreaterThan(Math.max(...round(share).values));
    expect(at(0, 0)).toBeGreaterThan(1.6 * round(0.5).mean);
  }
});

test("an old round galaxy falls off more steeply than a disc", async ({ page }) => {
  const share = async (form: LightForm) => {
    const { round } = await lightOf(page, look(form, { cut: 0 }));
    return round(0.3).mean / round(0.02).mean;
  };
  expect(await share("bulge")).toBeLessThan(await share("disc"));
});

test("a comet has a soft head with a bright middle, and a tail that leaves it on one side and fades", async ({
  page,
}) => {
  const { at, round } = await lightOf(page, look("coma"));
  // The head takes the inner quarter of the picture, the tail the way of the long axis: north is up.
  const away = { head: 180, tail: 90, back: 270 };
  expect(at(0, 0)).toBeGreaterThan(1.8 * at(0.1, away.back));
  expect(at(0.1, away.back)).toBeGreaterThan(1.5 * at(0.2, away.back));
  // One step of 255 is under what anybody tells from nothing.
  expect(at(0.3, away.back)).toBeLessThanOrEqual(1);
  expect(at(0.3, away.head)).toBeLessThanOrEqual(1);
  const tail = [0.3, 0.5, 0.7].map((share) => at(share, away.tail));
  expect(tail[0]).toBeGreaterThan(5);
  for (const i of [1, 2]) expect(tail[i]!).toBeLessThan(tail[i - 1]!);
  expect(Math.max(...round(1.03).values), "nothing beyond the picture").toBe(0);
  expect(Math.max(...round(0.97).values), "no hard edge").toBeLessThan(14);
});

test("a globular cluster breaks up into stars as its giants come within reach", async ({ page }) => {
  const counts: number[] = [];
  const hearts: number[] = [];
  for (const resolved of [0, 0.35, 1]) {
    const seen = await lightOf(page, look("granules", { resolved, cut: 0.02 }));
    counts.push(peaks(seen.picture, seen.empty));
    hearts.push(seen.round(0.06).mean);
  }
  expect(counts[0]).toBe(0);
  expect(counts[1]).toBeGreaterThan(15);
  expect(counts[2]).toBeGreaterThan(1.5 * counts[1]!);
  expect(hearts[2], "more of it seen as stars takes none of its light away").toBeGreaterThan(0.9 * hearts[0]!);
});

test("the more it lies over what the eye can tell, the further out a galaxy is seen", async ({ page }) => {
  const width = async (cut: number) => {
    const { round } = await lightOf(page, look("disc", { cut }));
    return Array.from({ length: 50 }, (_, i) => i / 50).filter((share) => round(share).mean > 1.5).length;
  };
  const [faint, plain] = [await width(0.5), await width(0.05)];
  expect(faint).toBeGreaterThan(4);
  expect(plain).toBeGreaterThan(1.8 * faint);
});

test("under the red lamp objects are red alone", async ({ page }) => {
  const { picture } = await lightOf(page, look("shell"), { lamp: "red" });
  expect([picture.greatest(1), picture.greatest(2)]).toEqual([0, 0]);
});

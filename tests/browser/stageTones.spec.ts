/** The colour that a bright star has in the picture, against the table of tones, read apart from the shader. */
import { expect } from "@playwright/test";
import { drawnTone } from "../reference/drawnTone.ts";
import type { SceneSpec } from "./stage/page.ts";
import { SIDE_CSS_PX } from "./stage/scene.ts";
import { drawPicture, openStage, type Picture, test } from "./stage/stagePage.ts";

const MIDDLE = SIDE_CSS_PX / 2;
const BLACK: SceneSpec = { skyRgb: [0, 0, 0] };
const LIMIT_MAG = 9.6;

/** Red, green and blue about the rim of a star, outside of its whiter core, against the brightest of them. */
function shownTone(picture: Picture, overMag: number): readonly number[] {
  const reachPx = 2.7 * 0.82 * (0.27 * 10 ** (0.248 * overMag)) ** 0.36;
  const sums = [0, 0, 0];
  for (let x = -20; x < 20; x++)
    for (let y = -20; y < 20; y++) {
      const awayPx = Math.hypot(x + 0.5, y + 0.5);
      if (awayPx < 0.55 * reachPx || awayPx > 1.2 * reachPx) continue;
      picture.rgb(MIDDLE + x, MIDDLE + y).forEach((value, i) => {
        sums[i]! += value;
      });
    }
  return sums.map((sum) => sum / Math.max(...sums));
}

// A star 3.7 mag over the limit has half of its share, from 5.2 on the whole. Few pixels, and dim ones, tell a small star's.
for (const [overMag, share, tolerance] of [
  [3.7, 0.31, 0.03],
  [5.2, 0.62, 0.01],
  [9, 0.62, 0.005],
] as const)
  test(`a star ${overMag} mag over the limit has ${share} of the tone of its B-V`, async ({ page, stageAddress }) => {
    await openStage(page, stageAddress);
    for (const colourBV of [-0.4, -0.3, -0.1, 0, 0.25, 0.4, 0.55, 0.7, 0.9, 1.1, 1.4, 1.8, 2]) {
      const picture = await drawPicture(page, { ...BLACK, stars: [[1, 0, 0, LIMIT_MAG - overMag, colourBV]] });
      const tone = drawnTone(colourBV, share);
      shownTone(picture, overMag).forEach((shown, i) => {
        expect(Math.abs(shown - tone[i]! / Math.max(...tone)), `channel ${i}, B-V ${colourBV}`).toBeLessThan(tolerance);
      });
    }
  });

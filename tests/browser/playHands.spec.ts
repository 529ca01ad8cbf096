/** One hop by keys, by mouse and by touch on a phone: three reports that hardly differ. */
import { expect } from "@playwright/test";
import { holdStars } from "./access/screens.ts";
import { createKeyHand } from "./play/keys.ts";
import { openLesson } from "./play/openLesson.ts";
import { playLesson } from "./play/player.ts";
import { createMouseHand, createTouchHand } from "./play/pointers.ts";
import { foundWithPoints } from "./play/report.ts";
import { test } from "./play/watch.ts";

/** The tube has its weight, as it has unless motion is reduced; the stars are held still by the reader's own setting. */
test.use({ contextOptions: { reducedMotion: "no-preference" } });
test.beforeEach(({ page }) => holdStars(page));

/** A hop takes half a minute; on a machine that is busy with other things, several times that. */
test.setTimeout(240_000);
/** The whole table, a little smaller than it is drawn: there are fewer pixels to wait for. */
test.use({ viewport: { width: 1200, height: 750 } });

const LESSON = "3-03";
/** How much the same hop may differ by what the hand holds. */
const MOST_APART = 3;
const PHONE = { width: 390, height: 844 } as const;
const PHONE_STARS = 0.86;
const PHONE_DPR = 2;

test.describe
  .serial("one hop", () => {
    const points: number[] = [];

    test("by keys alone", async ({ page }) => {
      await playLesson(await openLesson(page, LESSON, createKeyHand(page)));
      points.push(await foundWithPoints(page));
    });

    test("by dragging", async ({ page }) => {
      await playLesson(await openLesson(page, LESSON, createMouseHand(page)));
      points.push(await foundWithPoints(page));
    });

    test.describe("on a phone", () => {
      test.use({ viewport: PHONE, deviceScaleFactor: PHONE_DPR, hasTouch: true, isMobile: true });
      test("by touch", async ({ page }) => {
        const player = await openLesson(page, LESSON, await createTouchHand(page), PHONE_STARS * PHONE_DPR);
        await playLesson(player);
        points.push(await foundWithPoints(page));
      });
    });

    test("the points are within three of each other", () => {
      test.info().annotations.push({ type: "points by keys, mouse, touch", description: points.join(", ") });
      expect(points).toHaveLength(3);
      expect(Math.max(...points) - Math.min(...points)).toBeLessThanOrEqual(MOST_APART);
    });
  });

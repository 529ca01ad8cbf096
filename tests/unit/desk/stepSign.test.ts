/** Steps as signs: ring and arrow keep one scale. */
import { expect, test } from "vitest";
import { stepShape } from "../../../src/desk/steps/stepShape.ts";

const SIZE_PX = 34;

test("a short push lies within the ring, which fills the sign", () => {
  const { ring, tip } = stepShape({ right: 0.6, up: 0 }, SIZE_PX);
  expect(ring).toEqual({ x: 17, y: 17, radiusPx: 15.5 });
  expect(tip.x - ring.x).toBeCloseTo(0.6 * ring.radiusPx, 9);
  expect(tip.y).toBe(ring.y);
});

test("up in the image is up on the page", () => {
  const { ring, tip } = stepShape({ right: 0, up: 0.5 }, SIZE_PX);
  expect(tip.y).toBeLessThan(ring.y);
});

test("a push of any length is true in length and direction beside the ring, and all of it lies in the square", () => {
  for (const long of [0.1, 0.7, 1, 1.5, 3, 8])
    for (let turn = 0; turn < 2 * Math.PI; turn += 0.3) {
      const push = { right: long * Math.cos(turn), up: long * Math.sin(turn) };
      const { ring, tip } = stepShape(push, SIZE_PX);
      expect((tip.x - ring.x) / ring.radiusPx).toBeCloseTo(push.right, 6);
      expect((ring.y - tip.y) / ring.radiusPx).toBeCloseTo(push.up, 6);
      for (const at of [tip.x, tip.y, ring.x - ring.radiusPx, ring.x + ring.radiusPx, ring.y + ring.radiusPx]) {
        expect(at).toBeGreaterThanOrEqual(1.49);
        expect(at).toBeLessThanOrEqual(SIZE_PX - 1.49);
      }
    }
});

test("at the anchor there is no arrow", () => {
  expect(stepShape({ right: 0, up: 0 }, SIZE_PX).head).toBeNull();
});

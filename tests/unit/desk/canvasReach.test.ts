/** The canvas of the field reaches as far as there is sky to be seen, and no further. */
import { describe, expect, it } from "vitest";
import { createCanvasReach, openReach } from "../../../src/desk/play/canvasReach.ts";
import { playLayout } from "../../../src/desk/play/geometry.ts";

const WINDOWS = [
  [1440, 900],
  [1920, 1080],
  [1280, 800],
  [1000, 760],
  [820, 1180],
  [390, 844],
  [844, 390],
] as const;

describe("the canvas of an open sky", () => {
  for (const [width, height] of WINDOWS)
    it(`at ${width} x ${height} lies on whole px of the window, about the barrel and not under the words`, () => {
      const layout = playLayout(width, height);
      const { x, y, fieldPx, rimPx } = layout.barrel;
      const { left, right, up, down } = openReach(layout, width, height);
      for (const px of [x - left, y - up, left + right, up + down]) expect(px).toBeCloseTo(Math.round(px), 9);
      expect([x - left >= 0, y - up >= 0, x + right <= width, y + down <= height]).toEqual([true, true, true, true]);
      expect(Math.min(left, right, up, down)).toBeGreaterThanOrEqual(fieldPx);
      expect(Math.max(left, right, up, down)).toBeLessThanOrEqual(fieldPx + rimPx + 250);
      if (layout.kind === "wide") return expect(right).toBeGreaterThan(fieldPx + rimPx + 240);
      const { words } = layout;
      expect(x + right <= words.x || y + down <= words.y, "words lie on the table").toBe(true);
    });

  it("is a little more than the field where there is a wall, and the same object until something changes", () => {
    const reach = createCanvasReach();
    const first = reach(372, 0, null);
    expect(first).toEqual({ left: 374, right: 374, up: 374, down: 374 });
    expect(reach(372, 0, null)).toBe(first);
    expect(reach(372, 12, null).left).toBe(386);
    const open = openReach(playLayout(1440, 900), 1440, 900);
    expect(reach(372, 0, open)).toBe(open);
  });
});

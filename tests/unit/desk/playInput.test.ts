import { describe, expect, it } from "vitest";
import { createHeldArrows } from "../../../src/desk/play/input.ts";

function hands() {
  const told: [number, number, boolean][] = [];
  return { told, arrows: createHeldArrows((right, up, fine) => told.push([right, up, fine])) };
}

describe("held arrows", () => {
  it("push while they are down, and stop when they are lifted", () => {
    const { told, arrows } = hands();
    arrows.press("ArrowRight", false);
    arrows.press("ArrowRight", false);
    arrows.lift("ArrowRight", false);
    expect(told).toEqual([
      [1, 0, false],
      [0, 0, false],
    ]);
  });
  it("add up, and opposite ones cancel", () => {
    const { told, arrows } = hands();
    arrows.press("ArrowUp", false);
    arrows.press("ArrowLeft", false);
    arrows.press("ArrowDown", false);
    expect(told).toEqual([
      [0, 1, false],
      [-1, 1, false],
      [-1, 0, false],
    ]);
  });
  it("push finely while Shift is down, whichever comes first", () => {
    const { told, arrows } = hands();
    arrows.press("ArrowUp", true);
    arrows.lift("Shift", false);
    arrows.press("ArrowUp", true);
    expect(told).toEqual([
      [0, 1, true],
      [0, 1, false],
      [0, 1, true],
    ]);
  });
  it("are all let go at once, and keys that were not down change nothing", () => {
    const { told, arrows } = hands();
    arrows.press("ArrowUp", false);
    arrows.press("ArrowRight", false);
    arrows.release();
    arrows.release();
    arrows.lift("ArrowUp", false);
    arrows.lift("a", false);
    expect(told.at(-1)).toEqual([0, 0, false]);
    expect(told).toHaveLength(3);
  });
});

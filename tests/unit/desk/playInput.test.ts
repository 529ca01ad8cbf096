import { describe, expect, it } from "vitest";
import { createHeldArrows } from "../../../src/desk/play/input.ts";

function hands() {
  const told: [number, number, boolean][] = [];
  const times: number[] = [];
  const arrows = createHeldArrows((right, up, fine, atMs) => {
    told.push([right, up, fine]);
    times.push(atMs);
  });
  return { told, times, arrows };
}

describe("held arrows", () => {
  it("push while they are down, and stop when they are lifted", () => {
    const { told, arrows } = hands();
    arrows.press("ArrowRight", false, 0);
    arrows.press("ArrowRight", false, 0);
    arrows.lift("ArrowRight", false, 0);
    expect(told).toEqual([
      [1, 0, false],
      [0, 0, false],
    ]);
  });
  it("add up, and opposite ones cancel", () => {
    const { told, arrows } = hands();
    arrows.press("ArrowUp", false, 0);
    arrows.press("ArrowLeft", false, 0);
    arrows.press("ArrowDown", false, 0);
    expect(told).toEqual([
      [0, 1, false],
      [-1, 1, false],
      [-1, 0, false],
    ]);
  });
  it("push finely while Shift is down, whichever comes first", () => {
    const { told, arrows } = hands();
    arrows.press("ArrowUp", true, 0);
    arrows.lift("Shift", false, 0);
    arrows.press("ArrowUp", true, 0);
    expect(told).toEqual([
      [0, 1, true],
      [0, 1, false],
      [0, 1, true],
    ]);
  });
  it("are taken as pressed and lifted when they were", () => {
    const { times, arrows } = hands();
    arrows.press("ArrowUp", false, 1000);
    arrows.press("ArrowRight", false, 1012.5);
    arrows.lift("ArrowUp", false, 1300);
    arrows.release(1400);
    expect(times).toEqual([1000, 1012.5, 1300, 1400]);
  });
  it("are all let go at once, and keys that were not down change nothing", () => {
    const { told, arrows } = hands();
    arrows.press("ArrowUp", false, 0);
    arrows.press("ArrowRight", false, 0);
    arrows.release(0);
    arrows.release(0);
    arrows.lift("ArrowUp", false, 0);
    arrows.lift("a", false, 0);
    expect(told.at(-1)).toEqual([0, 0, false]);
    expect(told).toHaveLength(3);
  });
});

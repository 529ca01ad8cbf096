import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { createClock } from "../../../src/desk/play/clock.ts";

/** A page whose frames are drawn when the test says so. */
function clockOf(waitMs: number | null = null) {
  const steps: number[] = [];
  const frames: ((nowMs: number) => void)[] = [];
  vi.stubGlobal("requestAnimationFrame", (frame: (nowMs: number) => void) => frames.push(frame));
  vi.stubGlobal("cancelAnimationFrame", () => frames.splice(0));
  const clock = createClock(
    () => steps.push(performance.now()),
    () => waitMs,
    () => {},
  );
  clock.start();
  const drawFrame = () => {
    for (const frame of frames.splice(0)) frame(performance.now());
  };
  return { clock, steps, frames, drawFrame };
}

describe("the clock of a hop", () => {
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout", "setInterval", "clearInterval", "performance"] });
  });
  afterEach(() => {
    vi.useRealTimers();
    vi.unstubAllGlobals();
  });

  it("takes steps of 20 ms as time goes, with frames or without", () => {
    const { clock, steps, drawFrame } = clockOf();
    vi.advanceTimersByTime(100);
    drawFrame();
    expect(steps).toHaveLength(5);
    vi.advanceTimersByTime(900);
    expect(steps).toHaveLength(50);
    clock.stop();
  });
  it("is brought up to the moment of an act: what is held from then on pushes from then on", () => {
    const { clock, steps, drawFrame } = clockOf();
    drawFrame();
    vi.advanceTimersByTime(240);
    expect(steps).toHaveLength(0);
    clock.upTo(performance.now() - 40);
    expect(steps).toHaveLength(10);
    clock.upTo(performance.now() - 200);
    expect(steps).toHaveLength(10);
    drawFrame();
    vi.advanceTimersByTime(20);
    expect(steps.length).toBeGreaterThanOrEqual(12);
    clock.stop();
  });
  it("never runs ahead of the page's own clock", () => {
    const { clock, steps } = clockOf();
    vi.advanceTimersByTime(60);
    clock.upTo(performance.now() + 60_000);
    expect(steps).toHaveLength(3);
    clock.stop();
  });
  it("draws nothing at a stand, and again when asked", () => {
    const { clock, frames, drawFrame } = clockOf(null);
    drawFrame();
    vi.advanceTimersByTime(2000);
    expect(frames).toHaveLength(0);
    clock.invalidate();
    expect(frames).toHaveLength(1);
    clock.stop();
  });
});

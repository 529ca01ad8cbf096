/** The sweep along the Milky Way: the stage beside raw points of the same stars, one pixel read back after each frame. */
import type { StarBlock } from "#core/seams/index.ts";
import type { FieldView, Stage } from "../../../src/stage/index.ts";
import { createRawPoints } from "./rawPoints.ts";
import { bandOfStars, PLAIN_VIEW } from "./scene.ts";

export interface BenchOptions {
  readonly frames: number;
  readonly fieldDeg: number;
  readonly limitMag: number;
  readonly catalogueTo: number;
  readonly deeper: number;
  /** Draw raw points instead: all of one size, or as wide as the stars' light reaches. */
  readonly raw: "no" | "dots" | "wide";
}
export interface BenchResult {
  readonly medianMs: number;
  readonly p99Ms: number;
  readonly starsInView: number;
  readonly heapGrownBytes: number;
}
const DEG = Math.PI / 180;

const pointAt = (raDeg: number, decDeg: number, out: Float64Array): void => {
  const [ca, sa, cd, sd] = [
    Math.cos(raDeg * DEG),
    Math.sin(raDeg * DEG),
    Math.cos(decDeg * DEG),
    Math.sin(decDeg * DEG),
  ] as const;
  out.set([sa, -ca, 0, -sd * ca, -sd * sa, cd, cd * ca, cd * sa, sd]);
};
/** Those tiles (4 degrees wide, by right ascension and declination) that may reach into a circle. */
const near = (blocks: readonly StarBlock[], raDeg: number, reachDeg: number): StarBlock[] =>
  blocks.filter((_, i) => Math.abs(Math.floor(i / 4) * 4 + 2 - raDeg) < reachDeg + 3);

export const runBench = async (stage: Stage, options: BenchOptions): Promise<BenchResult> => {
  const all = bandOfStars(options.catalogueTo, options.deeper);
  const matrix = new Float64Array(9);
  const view: { -readonly [K in keyof FieldView]: FieldView[K] } = {
    ...PLAIN_VIEW,
    viewFromIcrs: matrix,
    planeRadius: Math.tan((options.fieldDeg / 2) * DEG),
    limitMag: options.limitMag,
  };
  const stageGl = document.querySelector("canvas")!.getContext("webgl2")!;
  const raw = options.raw === "no" ? null : createRawPoints(stageGl.canvas.width, options.raw === "wide");
  const gl = raw ? raw.gl : stageGl;
  const pixel = new Uint8Array(4);
  const times = new Float64Array(options.frames);
  let starsInView = 0;
  let held = "";
  const memory = performance as unknown as { memory?: { usedJSHeapSize: number } };
  const heapBefore = memory.memory?.usedJSHeapSize ?? 0;
  for (let i = 0; i < options.frames; i++) {
    const ra = 10 + (90 * i) / options.frames;
    pointAt(ra, 3 * Math.sin(i / 40), matrix);
    const blocks = near(all, ra, options.fieldDeg / 2);
    const key = blocks.map((block) => block.key.pixel).join();
    const started = performance.now();
    if (key !== held) {
      held = key;
      view.blocks = blocks;
      view.blocksVersion += 1;
      raw?.upload(blocks, options.limitMag + 0.2);
    }
    if (raw) raw.draw(matrix, view.planeRadius, options.limitMag);
    else stage.draw(view);
    gl.readPixels(i % 400, 200, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, pixel);
    times[i] = performance.now() - started;
    if (i % 10 === 9) await new Promise((resolve) => setTimeout(resolve, 0));
  }
  for (const block of view.blocks) {
    for (let s = 0; s < block.count; s++) {
      const along = (row: number) =>
        matrix[row * 3]! * block.dirs[s * 3]! +
        matrix[row * 3 + 1]! * block.dirs[s * 3 + 1]! +
        matrix[row * 3 + 2]! * block.dirs[s * 3 + 2]!;
      const bright = block.milliMag[s]! <= (options.limitMag + 0.2) * 1000;
      if (bright && Math.hypot(along(0), along(1)) / along(2) < view.planeRadius) starsInView += 1;
    }
  }
  raw?.destroy();
  const sorted = [...times].sort((a, b) => a - b);
  return {
    medianMs: sorted[sorted.length >> 1]!,
    p99Ms: sorted[Math.floor(sorted.length * 0.99)]!,
    starsInView,
    heapGrownBytes: (memory.memory?.usedJSHeapSize ?? 0) - heapBefore,
  };
};

/** Views and skies for the stage's tests, made of plain values so that they can be sent into the page. */
import type { StarBlock } from "#core/seams/index.ts";
import { squareReach } from "../../../src/stage/reach.ts";
import type { FieldView, StageLayout } from "../../../src/stage/view.ts";

/** Unit vector (ICRS), V, B-V. */
export type TestStar = readonly [x: number, y: number, z: number, magV: number, colourBV: number];

/** Side of the canvas that most tests look at. */
export const SIDE_CSS_PX = 852;
export const LAYOUT: StageLayout = {
  reachCssPx: squareReach(SIDE_CSS_PX / 2),
  devicePixelRatio: 1,
  fieldRadiusCssPx: 372,
  rimCssPx: 52,
  starScale: 1,
};

/** The same with the canvas as the page has it in play: little more than the field, the rim is lettering beside it. */
export const PLAY_LAYOUT: StageLayout = { ...LAYOUT, reachCssPx: squareReach(374) };

/** A block of stars, sorted brightest first as the sky's blocks are. */
export const blockOf = (stars: readonly TestStar[]): StarBlock => {
  const sorted = [...stars].sort((a, b) => a[3] - b[3]);
  const dirs = new Float32Array(sorted.length * 3);
  sorted.forEach((star, i) => {
    dirs.set(star.slice(0, 3), i * 3);
  });
  return {
    key: { order: 0, pixel: 0, layer: 0 },
    count: sorted.length,
    dirs,
    milliMag: Int16Array.from(sorted, (star) => Math.round(star[3] * 1000)),
    colourBV: Float32Array.from(sorted, (star) => star[4]),
    invented: false,
  };
};

/** A finder of 5.3 degrees looking along +x with +z up: the view most tests start from. */
export const PLAIN_VIEW: FieldView = {
  viewFromIcrs: [0, -1, 0, 0, 0, 1, 1, 0, 0],
  projection: "gnomonic",
  planeRadius: Math.tan((2.65 * Math.PI) / 180),
  blocks: [],
  limitMag: 9.6,
  air: null,
  gaze: null,
  starWidthRad: 0,
  skyRgb: [27 / 255, 34 / 255, 43 / 255],
  lamp: "normal",
  lampLevel: 170 / 255,
  objects: [],
  objectsVersion: 0,
  reticle: "none",
  horizon: null,
  glow: null,
  eyepiece: false,
  light: 1,
  stopOpenCssPx: 0,
  lines: [],
  linesAlpha: 0,
};

/** Numbers 0 .. 1 from a seed (mulberry32), the same in page and Node. */
export const seeded = (seed: number): (() => number) => {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
};

/** Views and skies for the stage's tests, made of plain values so that they can be sent into the page. */
import type { StarBlock } from "#core/seams/index.ts";
import type { FieldView, StageLayout } from "../../../src/stage/index.ts";

/** Unit vector (ICRS), V, B-V. */
export type TestStar = readonly [x: number, y: number, z: number, magV: number, colourBV: number];

export const LAYOUT: StageLayout = {
  canvasCssPx: 852,
  devicePixelRatio: 1,
  fieldRadiusCssPx: 372,
  rimCssPx: 52,
  starScale: 1,
};

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
  blocksVersion: 0,
  limitMag: 9.6,
  skyRgb: [27 / 255, 34 / 255, 43 / 255],
  lamp: "normal",
  lampLevel: 170 / 255,
  objects: [],
  objectsVersion: 0,
  reticle: "none",
  horizon: null,
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

/** Stars a square degree to V 9.5 along the Milky Way: 1,161 in a circle of 8 degrees (Tycho-2, its densest fields). */
const DENSITY_TO_9_5 = 1161 / (Math.PI * 16);
/** Counts grow by 10^(.42 m) there (from the same counts at V 6.5, 9.5 and 11). */
const SLOPE = 0.42;
const BRIGHTEST = 3;

/**
 * A band of tiles along the equator, as dense as the Milky Way.
 * @param faintestMag - counts go on to here; `deeper` times the stars beyond 9.7 are added there
 */
export const bandOfStars = (faintestMag: number, deeper: number, tileDeg = 4): StarBlock[] => {
  const blocks: StarBlock[] = [];
  for (let ra = 0; ra < 120; ra += tileDeg) {
    for (let dec = -8; dec < 8; dec += tileDeg) {
      const random = seeded(ra * 1009 + dec * 31 + 7);
      const stars: TestStar[] = [];
      const put = (magV: number) => {
        const a = ((ra + random() * tileDeg) * Math.PI) / 180;
        const d = ((dec + random() * tileDeg) * Math.PI) / 180;
        stars.push([Math.cos(d) * Math.cos(a), Math.cos(d) * Math.sin(a), Math.sin(d), magV, -0.2 + 1.7 * random()]);
      };
      const countTo = (mag: number) => DENSITY_TO_9_5 * tileDeg ** 2 * 10 ** (SLOPE * (mag - 9.5));
      const total = Math.round(countTo(faintestMag));
      for (let i = 0; i < total; i++) put(Math.max(BRIGHTEST, faintestMag + Math.log10(1 - random()) / SLOPE));
      const beyond = stars.filter((star) => star[3] > 9.9).length;
      for (let i = 0; i < beyond * (deeper - 1); i++) put(9.9 + random() * (faintestMag - 9.9));
      blocks.push({ ...blockOf(stars), key: { order: 4, pixel: blocks.length, layer: 1 } });
    }
  }
  return blocks;
};

/** The sweep along the Milky Way over the catalogue's own tiles: the stage beside raw points of the same stars, one pixel read back after each frame. */
import { galacticFromIcrs } from "#core/celestial/frames.ts";
import { mulMatVec, transpose } from "#core/celestial/matrix.ts";
import { NOTICING } from "#core/eye/noticing.ts";
import type { Dir, Resident, StarBlock } from "#core/seams/index.ts";
import { tilesOfCone } from "#core/sky/catalogue/tilesOfCone.ts";
import type { FieldView, Stage } from "../../../src/stage/index.ts";
import { pageSky, type Timing, timeFrames } from "./pageSky.ts";
import { createRawPoints } from "./rawPoints.ts";
import { LAYOUT, PLAIN_VIEW } from "./scene.ts";

export interface BenchOptions {
  readonly frames: number;
  readonly fieldDeg: number;
  readonly limitMag: number;
  /** So many times the catalogue's stars beyond what the field shows. */
  readonly deeper: number;
  /** Draw raw points instead: all of one size, or as wide as the stars' light reaches. */
  readonly raw: "no" | "dots" | "wide";
}
export interface BenchResult extends Timing {
  /** Stars within the field, in the middle and at most. */
  readonly medianStars: number;
  readonly mostStars: number;
}
/** Stars to here beyond the limit are drawn now and then. */
const BELOW_MAG = NOTICING.edgeMag;
const DEG = Math.PI / 180;
/** The way of the sweep: galactic longitude along the brightest part of the northern Milky Way, latitude to and fro. */
const FROM_L_DEG = 15;
const SWEEP_DEG = 90;
const LATITUDE_DEG = 3;
/** Stars that a catalogue with twice as many would add stand so far from those it has (a small turn about the pole). */
const BESIDE_RAD = 0.002;

/** Where the sweep points at a share of its way, and the view from there, north up. */
const pointAt = (share: number, out: Float64Array): Dir => {
  const [l, b] = [(FROM_L_DEG + SWEEP_DEG * share) * DEG, LATITUDE_DEG * Math.sin(share * 7.5) * DEG];
  const galactic = [Math.cos(b) * Math.cos(l), Math.cos(b) * Math.sin(l), Math.sin(b)];
  const [x, y, z] = mulMatVec(transpose(galacticFromIcrs), galactic);
  const flat = Math.sqrt(x * x + y * y);
  out.set([y / flat, -x / flat, 0, (-z * x) / flat, (-z * y) / flat, flat, x, y, z]);
  return [x, y, z];
};
/** The same block with so many times the stars beyond a limit. */
const deepened = (block: StarBlock, limitMag: number, times: number): StarBlock => {
  const { count, dirs, milliMag, colourBV } = block;
  const kept = milliMag.findIndex((one) => one > limitMag * 1000);
  if (kept < 0) return block;
  const total = kept + (count - kept) * times;
  const out = { dirs: new Float32Array(total * 3), milliMag: new Int16Array(total), colourBV: new Float32Array(total) };
  for (let row = 0; row < total; row++) {
    const from = row < kept ? row : kept + Math.floor((row - kept) / times);
    const turn = row < kept ? 0 : ((row - kept) % times) * BESIDE_RAD;
    const [x, y, z] = [dirs[from * 3]!, dirs[from * 3 + 1]!, dirs[from * 3 + 2]!];
    out.dirs.set([x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn), z], row * 3);
    out.milliMag[row] = milliMag[from]!;
    out.colourBV[row] = colourBV[from]!;
  }
  return { ...block, ...out, count: total };
};

/** What each frame of the sweep shows: where it looks, and the tiles of the catalogue there. */
interface Stop {
  readonly matrix: Float64Array;
  readonly resident: Resident;
}
/** The files of the sky, from beside the page. All are here before the sweep begins: it measures drawing, not loading. */
const stopsOf = async ({ frames, fieldDeg, limitMag, deeper }: BenchOptions): Promise<Stop[]> => {
  const source = pageSky();
  const signal = new AbortController().signal;
  const changed = new Map<StarBlock, StarBlock>();
  const residents = new Map<number, Resident>();
  const deepen = (resident: Resident): Resident => {
    const known = residents.get(resident.version);
    if (known) return known;
    const blocks = resident.blocks.map((block) => {
      const one = changed.get(block) ?? (deeper > 1 ? deepened(block, limitMag + BELOW_MAG, deeper) : block);
      changed.set(block, one);
      return one;
    });
    const one = { ...resident, blocks };
    residents.set(resident.version, one);
    return one;
  };
  const stops: Stop[] = [];
  for (let i = 0; i < frames; i++) {
    const matrix = new Float64Array(9);
    const cone = { centre: pointAt(i / frames, matrix), radiusRad: (fieldDeg / 2) * DEG };
    await source.want(tilesOfCone(cone, limitMag + BELOW_MAG), 0, signal);
    const resident = source.resident(cone, limitMag + BELOW_MAG);
    if (!resident.complete) throw new Error("a tile of the sky is missing");
    stops.push({ matrix, resident: deepen(resident) });
  }
  return stops;
};

const inView = ({ matrix, resident }: Stop, planeRadius: number, faintestMag: number): number => {
  let count = 0;
  for (const { count: all, dirs, milliMag } of resident.blocks) {
    for (let i = 0; i < all && milliMag[i]! <= faintestMag * 1000; i++) {
      const [x, y, z] = mulMatVec(matrix, dirs.subarray(i * 3, i * 3 + 3));
      if (z > 0 && Math.hypot(x, y) / z < planeRadius) count += 1;
    }
  }
  return count;
};

export const runBench = async (stage: Stage, options: BenchOptions): Promise<BenchResult> => {
  const stops = await stopsOf(options);
  const view: { -readonly [K in keyof FieldView]: FieldView[K] } = {
    ...PLAIN_VIEW,
    planeRadius: Math.tan((options.fieldDeg / 2) * DEG),
    limitMag: options.limitMag,
  };
  const stageGl = document.querySelector("canvas")!.getContext("webgl2")!;
  const raw =
    options.raw === "no"
      ? null
      : createRawPoints(stageGl.canvas.width, LAYOUT.fieldRadiusCssPx, options.raw === "wide");
  const air = { seconds: 0, zenithScatter: 0.1, zenith: [0, 0, 1] };
  view.air = air;
  let uploaded = -1;
  const timing = await timeFrames(raw ? raw.gl : stageGl, options.frames, (i) => {
    const { matrix, resident } = stops[i]!;
    view.viewFromIcrs = matrix;
    view.blocks = resident.blocks;
    air.seconds = i / 60;
    if (raw && resident.version !== uploaded) {
      uploaded = resident.version;
      raw.upload(resident.blocks, options.limitMag + BELOW_MAG);
    }
    if (raw) raw.draw(matrix, view.planeRadius, options.limitMag);
    else stage.draw(view);
  });
  raw?.destroy();
  const counts = stops
    .map((stop) => inView(stop, view.planeRadius, options.limitMag + BELOW_MAG))
    .sort((a, b) => a - b);
  return {
    ...timing,
    medianStars: counts[counts.length >> 1]!,
    mostStars: counts.at(-1)!,
  };
};

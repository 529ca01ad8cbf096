/** A growing list of stars, planar as blocks are. */
import type { Dir } from "#core/seams/index.ts";
import type { SkyStar } from "./frame.ts";

export type StarList = {
  count: number;
  /** Three numbers a star. */
  dirs: Float32Array;
  milliMag: Int16Array;
  colourBV: Float32Array;
};

const FIRST_ROOM = 64;

export function emptyStars(): StarList {
  return {
    count: 0,
    dirs: new Float32Array(3 * FIRST_ROOM),
    milliMag: new Int16Array(FIRST_ROOM),
    colourBV: new Float32Array(FIRST_ROOM),
  };
}

/** Room for `more` stars beyond those that are there. */
export function makeRoom(stars: StarList, more: number): void {
  const needed = stars.count + more;
  if (needed <= stars.milliMag.length) return;
  const room = Math.max(needed, 2 * stars.milliMag.length);
  const { dirs, milliMag, colourBV } = stars;
  stars.dirs = new Float32Array(3 * room);
  stars.dirs.set(dirs);
  stars.milliMag = new Int16Array(room);
  stars.milliMag.set(milliMag);
  stars.colourBV = new Float32Array(room);
  stars.colourBV.set(colourBV);
}

/** Adds a star; there must be room for it. */
export function addStar(stars: StarList, dir: Dir, milliMag: number, colourBV: number): void {
  const i = stars.count;
  stars.dirs[3 * i] = dir[0];
  stars.dirs[3 * i + 1] = dir[1];
  stars.dirs[3 * i + 2] = dir[2];
  stars.milliMag[i] = milliMag;
  stars.colourBV[i] = colourBV;
  stars.count = i + 1;
}

export function dirOfStar({ dirs }: StarList, i: number): Dir {
  return [dirs[3 * i]!, dirs[3 * i + 1]!, dirs[3 * i + 2]!];
}

/** One of the list as a star by itself. */
export function starOf(stars: StarList, i: number): SkyStar {
  return { dir: dirOfStar(stars, i), milliMag: stars.milliMag[i]!, colourBV: stars.colourBV[i]! };
}

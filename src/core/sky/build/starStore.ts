/** Millions of stars in growing columns. */
import type { Dir } from "#core/seams/index.ts";

export type StarColumns = {
  readonly count: number;
  readonly dirs: Float64Array;
  readonly centiMag: Int16Array;
  readonly colourBV: Float32Array;
};

export type StarStore = {
  readonly add: (dir: Dir, centiMag: number, colourBV: number) => void;
  readonly columns: () => StarColumns;
};

export function createStarStore(): StarStore {
  let room = 4096;
  let count = 0;
  let dirs = new Float64Array(3 * room);
  let centiMags = new Int16Array(room);
  let colours = new Float32Array(room);
  const grow = () => {
    room *= 2;
    const wider = {
      dirs: new Float64Array(3 * room),
      centiMags: new Int16Array(room),
      colours: new Float32Array(room),
    };
    wider.dirs.set(dirs);
    wider.centiMags.set(centiMags);
    wider.colours.set(colours);
    ({ dirs, centiMags, colours } = wider);
  };
  return {
    add(dir, centiMag, colourBV) {
      if (count === room) grow();
      dirs.set(dir, 3 * count);
      centiMags[count] = centiMag;
      colours[count] = colourBV;
      count += 1;
    },
    columns: () => ({
      count,
      dirs: dirs.subarray(0, 3 * count),
      centiMag: centiMags.subarray(0, count),
      colourBV: colours.subarray(0, count),
    }),
  };
}

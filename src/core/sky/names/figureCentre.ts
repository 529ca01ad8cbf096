import { normalise } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import type { FigureSegment } from "./types.ts";

/**
 * Where a figure's name is written: the mean direction of the stars of its largest connected part (a serpent cut in two by
 * its bearer would else be named in the bearer's middle). `lines` holds at least one line; ends that are one star are the
 * same object.
 */
export function figureCentre(lines: readonly FigureSegment[]): Dir {
  let largest = new Set<Dir>();
  const left = new Set(lines);
  for (const line of lines) {
    if (!left.has(line)) continue;
    const part = takeConnected(line, left);
    if (part.size > largest.size) largest = part;
  }
  const sum: [number, number, number] = [0, 0, 0];
  for (const [x, y, z] of largest) {
    sum[0] += x;
    sum[1] += y;
    sum[2] += z;
  }
  return normalise(sum);
}

/** The stars that hang together with `first`; takes their lines out of `left`. */
function takeConnected(first: FigureSegment, left: Set<FigureSegment>): Set<Dir> {
  const stars = new Set<Dir>([first.from, first.to]);
  left.delete(first);
  for (let grown = true; grown; ) {
    grown = false;
    for (const line of left) {
      if (!stars.has(line.from) && !stars.has(line.to)) continue;
      stars.add(line.from).add(line.to);
      left.delete(line);
      grown = true;
    }
  }
  return stars;
}

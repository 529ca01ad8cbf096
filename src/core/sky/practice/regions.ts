/** Which constellation a direction belongs to: the one whose figure has the nearest line. */
import { cross, dot, normalise } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import type { FigureSegment } from "../names/types.ts";

/** Abbreviation of the figure that has a direction. */
export type ConstellationAt = (dir: Dir) => string;

type Line = {
  readonly figure: string;
  readonly from: Dir;
  readonly to: Dir;
  readonly pole: Dir;
  /** Towards the other end, square to the pole: both look at what lies beside the line and not beyond an end. */
  readonly ahead: Dir;
  readonly back: Dir;
};

/**
 * Every direction has exactly one constellation, and a star of a figure its own.
 * @param segments at least one, each shorter than half a circle and of some length; where two are as near the first counts
 */
export function constellationsBy(segments: readonly FigureSegment[]): ConstellationAt {
  const lines = segments.map(lineOf);
  return (dir) => {
    const place = normalise(dir);
    let nearest = -2;
    let figure = "";
    for (const line of lines) {
      const cosine = cosineTo(line, place);
      if (cosine > nearest) [nearest, figure] = [cosine, line.figure];
    }
    return figure;
  };
}

function lineOf({ from, to, figure }: FigureSegment): Line {
  const [a, b] = [normalise(from), normalise(to)];
  const pole = normalise(cross(a, b));
  return { figure, from: a, to: b, pole, ahead: cross(pole, a), back: cross(b, pole) };
}

/** Cosine of the distance from a line. */
function cosineTo({ from, to, pole, ahead, back }: Line, dir: Dir): number {
  if (dot(ahead, dir) <= 0 || dot(back, dir) <= 0) return Math.max(dot(from, dir), dot(to, dir));
  const sine = dot(pole, dir);
  return Math.sqrt(Math.max(0, 1 - sine * sine));
}

/** Five figures of our own, one a part of the course: where each lesson's star stands in the field. */

/** In radii of the field: x right, y down. */
export type Place = readonly [x: number, y: number];
export interface Figure {
  readonly places: readonly Place[];
  /** Which places are joined, besides each with the one before it. */
  readonly apart: readonly number[];
  readonly joined: readonly (readonly [from: number, to: number])[];
}

/** The staff, the bowl, the long river, the kite and the lantern: shapes, no names that anybody need learn. */
const FIGURES: readonly Figure[] = [
  {
    places: [
      [-0.68, -0.3],
      [-0.56, -0.47],
      [-0.39, -0.52],
      [-0.27, -0.66],
      [-0.08, -0.71],
      [0.02, -0.57],
      [-0.11, -0.45],
      [-0.25, -0.35],
      [-0.3, -0.19],
      [-0.46, -0.12],
    ],
    apart: [],
    joined: [],
  },
  {
    places: [
      [0.24, -0.66],
      [0.38, -0.52],
      [0.56, -0.55],
      [0.7, -0.39],
      [0.62, -0.22],
      [0.44, -0.24],
      [0.33, -0.36],
      [0.76, -0.14],
      [0.5, -0.08],
    ],
    apart: [7],
    joined: [
      [6, 1],
      [4, 7],
    ],
  },
  {
    places: [
      [0.34, 0],
      [0.22, -0.11],
      [0.07, -0.07],
      [0.01, 0.08],
      [0.1, 0.21],
      [0.03, 0.35],
      [-0.13, 0.36],
      [-0.24, 0.24],
      [-0.4, 0.3],
      [-0.5, 0.44],
      [-0.42, 0.59],
      [-0.25, 0.63],
    ],
    apart: [],
    joined: [],
  },
  {
    places: [
      [0.5, 0.12],
      [0.66, 0.2],
      [0.7, 0.38],
      [0.55, 0.48],
      [0.42, 0.34],
      [0.34, 0.56],
      [0.2, 0.68],
      [0.04, 0.62],
      [0.08, 0.8],
      [-0.08, 0.86],
      [-0.2, 0.78],
    ],
    apart: [],
    joined: [[4, 0]],
  },
  {
    places: [
      [-0.8, -0.04],
      [-0.7, 0.1],
      [-0.82, 0.22],
      [-0.72, 0.36],
      [-0.56, 0.3],
      [-0.58, 0.12],
      [-0.66, 0.52],
      [-0.52, 0.66],
      [-0.36, 0.76],
    ],
    apart: [6],
    joined: [
      [5, 1],
      [3, 6],
    ],
  },
];

/** The figure of a part, 1 .. 5; later parts begin anew. */
export const figureOf = (part: number): Figure => FIGURES[(part - 1) % FIGURES.length]!;

/** Pairs of places that are joined by a line, among the first `count`. */
export function linesOf({ places, apart, joined }: Figure, count: number): (readonly [number, number])[] {
  const along = places.slice(1).map((_, i) => [i, i + 1] as const);
  return [...along.filter(([, to]) => !apart.includes(to)), ...joined].filter(
    ([from, to]) => from < count && to < count,
  );
}

/** The borders of the constellations as lines to draw: loaded apart from the rest, for they are needed late. */
import { dot, normalise } from "#core/celestial/vector.ts";
import type { Cone, Dir } from "#core/seams/index.ts";
import table from "#shared/borders.json";
import { dirOfGrid, GRID_PER_DEG } from "./grid.ts";

/** From place to place, ICRS, at most two degrees apart: a chart may join them by straight lines. */
export type BorderLine = readonly Dir[];
type Line = { readonly points: BorderLine; readonly middle: Dir; readonly cosRadius: number };

const STEP = 2 * GRID_PER_DEG;
/** Long lines are cut, so that a small page takes few points. */
const LONGEST = 20 * GRID_PER_DEG;

/** Places of a line of the grid from one end to the other, in pieces. */
function piecesOf(from: number, to: number, at: (along: number) => Dir): Line[] {
  const lines: Line[] = [];
  for (let begin = from; begin < to; begin += LONGEST) {
    const end = Math.min(to, begin + LONGEST);
    const steps = Math.ceil((end - begin) / STEP);
    const points = Array.from({ length: steps + 1 }, (_, i) => at(begin + ((end - begin) * i) / steps));
    const middle = normalise(at((begin + end) / 2));
    lines.push({ points, middle, cosRadius: dot(middle, points[0]!) });
  }
  return lines;
}

const triples = (numbers: readonly number[]) =>
  Array.from(
    { length: numbers.length / 3 },
    (_, i) => [numbers[3 * i]!, numbers[3 * i + 1]!, numbers[3 * i + 2]!] as const,
  );

let built: readonly Line[] | undefined;

function allLines(): readonly Line[] {
  built ??= [
    ...triples(table.meridians).flatMap(([column, from, to]) =>
      piecesOf(from, to, (row) => dirOfGrid(table.frame, column, row)),
    ),
    ...triples(table.parallels).flatMap(([row, from, to]) =>
      piecesOf(from, to, (column) => dirOfGrid(table.frame, column, row)),
    ),
  ];
  return built;
}

/** The borders that may run through a circle of the sky (a few beside it too). Built at the first call and kept. */
export function bordersWithin({ centre, radiusRad }: Cone): BorderLine[] {
  const [cos, sin] = [Math.cos(radiusRad), Math.sin(radiusRad)];
  return allLines()
    .filter(({ middle, cosRadius }) => {
      const apart = cos * cosRadius - sin * Math.sqrt(Math.max(0, 1 - cosRadius * cosRadius));
      return dot(middle, centre) >= apart - 1e-9;
    })
    .map(({ points }) => points);
}

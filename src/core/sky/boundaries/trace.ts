/** The borders of the constellations, found by asking for the constellation of cell after cell of their grid. */
import { b1875FromIcrs, constellationOf } from "#core/celestial/constellation.ts";
import { transpose } from "#core/celestial/matrix.ts";
import { COLUMNS, dirOfGrid, ROWS } from "./grid.ts";

/** No constellation is narrower than this many cells in right ascension. */
const STRIDE = 12;

/** Three numbers each: the line, and where it begins and ends on the lines of the other kind. */
export interface Borders {
  /** Columns (from right ascension 0 eastward), rows (from the south pole). */
  readonly meridians: readonly number[];
  /** Rows, columns; an arc that passes right ascension 0 is cut there. */
  readonly parallels: readonly number[];
  /** From B1875 to ICRS, row-major. */
  readonly frame: readonly number[];
}
/** What stands in the cell of a column and a row. */
export type CellName = (column: number, row: number) => string;

/** From B1875 to ICRS, row-major. */
export const frameOfB1875 = (): number[] => [...transpose(b1875FromIcrs)];

/** The look-up's own answer for a cell of the grid. */
export function lookUpCell(): CellName {
  const frame = frameOfB1875();
  return (column, row) => constellationOf(dirOfGrid(frame, column + 0.5, row + 0.5)).abbr;
}

/** A row as the columns where another constellation begins, and the constellations. */
type Row = { readonly starts: number[]; readonly names: string[] };

function rowOf(nameAt: CellName, row: number): Row {
  const starts: number[] = [0];
  const names: string[] = [nameAt(0, row)];
  const between = (from: number, fromName: string, to: number, toName: string): void => {
    if (fromName === toName) return;
    if (to - from === 1) {
      starts.push(to);
      names.push(toName);
      return;
    }
    const middle = (from + to) >> 1;
    const name = nameAt(middle, row);
    between(from, fromName, middle, name);
    between(middle, name, to, toName);
  };
  let before = names[0]!;
  for (let from = 0; from < COLUMNS - 1; from += STRIDE) {
    const to = Math.min(COLUMNS - 1, from + STRIDE);
    const name = nameAt(to, row);
    between(from, before, to, name);
    before = name;
  }
  return { starts, names };
}

/** Stretches of columns in which two rows have different constellations. */
function differences(a: Row, b: Row): [from: number, to: number][] {
  const edges = [...new Set([...a.starts, ...b.starts])].sort((x, y) => x - y);
  const nameIn = ({ starts, names }: Row, column: number) => names[starts.findLastIndex((start) => start <= column)]!;
  const found: [number, number][] = [];
  edges.forEach((from, i) => {
    if (nameIn(a, from) === nameIn(b, from)) return;
    const to = edges[i + 1] ?? COLUMNS;
    const last = found.at(-1);
    if (last?.[1] === from) last[1] = to;
    else found.push([from, to]);
  });
  return found;
}

/** Columns at which a row passes from one constellation to another. */
function crossings({ starts, names }: Row): number[] {
  const inner = starts.slice(1);
  return names[0] === names.at(-1) ? inner : [0, ...inner];
}

/** All borders, each line as long as it goes. Asks some thirteen million times where the look-up is `lookUpCell`. */
export function traceBorders(nameAt: CellName): Omit<Borders, "frame"> {
  const parallels: number[] = [];
  const meridians: number[] = [];
  const open = new Map<number, number>();
  const close = (column: number, row: number) => {
    meridians.push(column, open.get(column)!, row);
    open.delete(column);
  };
  let below: Row | undefined;
  for (let row = 0; row < ROWS; row++) {
    const here = rowOf(nameAt, row);
    if (below) for (const [from, to] of differences(below, here)) parallels.push(row, from, to);
    const crossed = new Set(crossings(here));
    for (const column of [...open.keys()]) if (!crossed.has(column)) close(column, row);
    for (const column of crossed) if (!open.has(column)) open.set(column, row);
    below = here;
  }
  for (const column of [...open.keys()]) close(column, ROWS);
  return { meridians, parallels };
}

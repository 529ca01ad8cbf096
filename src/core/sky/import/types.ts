/** What an import takes and tells. */
import type { SkyFile } from "../build/tiles.ts";

/** What a reader counts: lines of the file, or, where rows are no lines, the table's rows, from 1. */
export type CountedBy = "line" | "row";
/** A row that could not be used: `what` is the same sentence for all rows of that kind. `line` is its line or its row. */
export type RowFault = { readonly line: number; readonly what: string; readonly hint: string };
/** What a column of the file holds. */
export type ColumnRole = "ra" | "dec" | "mag" | "colour" | "pmRa" | "pmDec" | "epoch" | "name";
/** A column found: where it stands, and what its numbers are multiplied by (degrees; mas a year; years; mag). */
export type Column = { readonly index: number; readonly factor: number };
export type Columns = Readonly<Partial<Record<ColumnRole, Column>>>;

/** What a reader of a format hands on: first the columns, then row by row. */
export type RowSink = {
  /** `epochYear`: the Julian year of the places, where the file names one. */
  readonly columns: (found: Columns, epochYear: number | undefined, countedBy: CountedBy) => void;
  readonly row: (cells: readonly string[], line: number) => void;
  readonly fault: (fault: RowFault) => void;
};
/** A reader of a format: text in pieces cut anywhere. Throws InputError where the file as a whole is no good. */
export type FormatReader = { readonly push: (text: string) => void; readonly finish: () => void };

export type Imported = {
  /** The tiles of a sky, and the names of its stars where there are any. */
  readonly files: readonly SkyFile[];
  readonly stars: number;
  /** Names kept for the search, `of` so many that the file gave. */
  readonly names: { readonly kept: number; readonly of: number };
  /** Rows left out, by reason; bad rows are among them. */
  readonly dropped: readonly { readonly why: string; readonly count: number }[];
  /** All bad rows counted, the first hundred told one by one. */
  readonly badRows: { readonly count: number; readonly countedBy: CountedBy; readonly first: readonly RowFault[] };
};

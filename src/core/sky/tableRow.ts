/** Rows of the shared tables, tried as they are read. */
import { DataFileError } from "#core/seams/errors.ts";

/** What is wrong with a row, and how to mend it. */
export const rowError = (file: string, id: string, what: string): DataFileError =>
  new DataFileError(`${file}, ${id}: ${what}`, "Mend the row, or put the original file back.");

/** A check of one row. @returns a function that throws DataFileError, saying what does not fit, where its first argument is false */
export const rowCheck =
  (file: string, id: string) =>
  (fits: boolean, what: string): void => {
    if (!fits) throw rowError(file, id, what);
  };

export const isIn = (value: number | undefined, least: number, most: number): value is number =>
  value !== undefined && value >= least && value <= most;

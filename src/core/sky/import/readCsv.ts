/** Comma-separated values (RFC 4180) as a stream; semicolons and tabs are taken where the header row has more of them. */
import { InputError } from "#core/seams/errors.ts";
import { findColumns } from "./columns.ts";
import type { FormatReader, RowSink } from "./types.ts";

/** A row longer than this is no row: a quote was not closed. It also bounds what is kept between pieces. */
const LONGEST_ROW = 65_536;
const QUOTE_FAULT = {
  what: "a row is over 65,536 characters or its quote is not closed",
  hint: 'Close each " and write a " inside quotes twice.',
};

/** Cells of the record that begins at `start`, and where the next begins; null where its end is not here yet. */
function quotedRecord(text: string, start: number, separator: string): { cells: string[]; next: number } | null {
  const cells: string[] = [];
  let at = start;
  for (;;) {
    let cell = "";
    if (text[at] === '"') {
      for (;;) {
        const close = text.indexOf('"', at + 1);
        if (close < 0) return null;
        cell += text.slice(at + 1, close);
        at = close + 1;
        if (text[at] !== '"') break;
        cell += '"';
      }
    }
    const from = at;
    while (at < text.length && text[at] !== separator && text[at] !== "\n") at += 1;
    if (at === text.length) return null;
    cells.push(cell + text.slice(from, at).replace(/\r$/, ""));
    at += 1;
    if (text[at - 1] === "\n") return { cells, next: at };
  }
}

function separatorOf(header: string): string {
  const count = (separator: string) => header.split(separator).length;
  return [",", ";", "\t"].reduce((best, each) => (count(each) > count(best) ? each : best));
}

function linesIn(text: string, from: number, to: number): number {
  let lines = 0;
  for (let at = text.indexOf("\n", from); at >= 0 && at < to; at = text.indexOf("\n", at + 1)) lines += 1;
  return lines;
}

/** Reads a file with a header row. The same rows come whatever the pieces. */
export function readCsv(sink: RowSink): FormatReader {
  let rest = "";
  let line = 1;
  let width = 0;
  let separator = "";
  let skipping = false;

  const take = (cells: string[]) => {
    if (cells.length === 1 && cells[0]!.trim() === "") return;
    if (width === 0) {
      width = cells.length;
      sink.columns(findColumns(cells.map((name) => ({ name }))), undefined, "line");
    } else if (cells.length !== width) {
      sink.fault({
        line,
        what: "the row has another number of cells than the header row",
        hint: "Put quotes round a cell that holds the separator, and give empty cells too.",
      });
    } else sink.row(cells, line);
  };
  /** The next record's end in `rest` from `start`, taken; -1 where it is not here yet. */
  const record = (start: number): number => {
    const end = rest.indexOf("\n", start);
    if (end < 0) return -1;
    if (separator === "") separator = separatorOf(rest.slice(start, end));
    const row = rest.slice(start, rest[end - 1] === "\r" && end > start ? end - 1 : end);
    if (!row.includes('"')) {
      if (end - start > LONGEST_ROW) return tooLong(start);
      take(row.split(separator));
      line += 1;
      return end + 1;
    }
    const found = quotedRecord(rest, start, separator);
    if (!found) return -1;
    if (found.next - start > LONGEST_ROW + 1) return tooLong(start);
    take(found.cells);
    line += linesIn(rest, start, found.next);
    return found.next;
  };
  /** Goes on behind the first end of line after the longest row. */
  const tooLong = (start: number): number => {
    if (width === 0) throw new InputError("The header row is over 65,536 characters", "Give a file with a header row.");
    sink.fault({ line, ...QUOTE_FAULT });
    skipping = true;
    const from = start + LONGEST_ROW;
    line += linesIn(rest, start, from);
    return from;
  };
  const consume = () => {
    let start = 0;
    for (;;) {
      if (skipping) {
        const end = rest.indexOf("\n", start);
        if (end < 0) {
          start = rest.length;
          break;
        }
        skipping = false;
        line += 1;
        start = end + 1;
      }
      let next = record(start);
      if (next < 0 && rest.length - start > LONGEST_ROW + 1) next = tooLong(start);
      if (next < 0) break;
      start = next;
    }
    rest = rest.slice(start);
  };
  return {
    push(text) {
      rest += text;
      consume();
    },
    finish() {
      if (rest !== "" && !rest.endsWith("\n")) rest += "\n";
      consume();
      if (rest !== "") sink.fault({ line, ...QUOTE_FAULT });
      if (width === 0)
        throw new InputError("The file holds no header row", "Name the columns in the first row: ra,dec,vmag.");
    },
  };
}

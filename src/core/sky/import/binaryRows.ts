/** The rows of a VOTable's BINARY or BINARY2 stream, as its bytes come. */
import { InputError } from "#core/seams/errors.ts";
import { readBase64 } from "./base64.ts";
import { type BinaryField, cellSpan, cellText } from "./binaryFields.ts";

const LONGEST_ROW = 262_144;

export type BinaryRows = { readonly push: (text: string) => void; readonly finish: () => void };

/**
 * Reads rows out of base64.
 * @param hasFlags BINARY2: each row begins with a bit for each field, the first the highest, set where there is no value
 * @param wanted the numbers of the fields whose cells are asked for; the others come as ""
 * @throws InputError where the bytes are no rows of these fields
 */
export function binaryRows(
  fields: readonly BinaryField[],
  hasFlags: boolean,
  wanted: ReadonlySet<number>,
  row: (cells: readonly string[], number: number) => void,
): BinaryRows {
  const base64 = readBase64();
  const flagBytes = hasFlags ? Math.ceil(fields.length / 8) : 0;
  let rest = new Uint8Array(0);
  let number = 1;

  /** Hands on the row that begins at `start`; where it ends, or -1 where that is not here yet. */
  const take = (view: DataView, start: number): number => {
    const cells: string[] = [];
    let at = start + flagBytes;
    if (at > view.byteLength) return -1;
    for (const [i, field] of fields.entries()) {
      const span = cellSpan(field, view, at);
      if (!span) return -1;
      const isNull = hasFlags && (view.getUint8(start + (i >> 3)) & (0x80 >> (i & 7))) !== 0;
      cells.push(!isNull && wanted.has(i) ? cellText(field, view, span.from, span.to) : "");
      at = span.to;
    }
    if (at === start) throw new InputError("The table's rows have no bytes", "Give fields with values.");
    row(cells, number);
    number += 1;
    return at;
  };
  const append = (bytes: Uint8Array<ArrayBuffer>) => {
    const both = new Uint8Array(rest.length + bytes.length);
    both.set(rest);
    both.set(bytes, rest.length);
    rest = both;
  };
  return {
    push(text) {
      append(base64.push(text));
      const view = new DataView(rest.buffer);
      let start = 0;
      while (start < rest.length) {
        const next = take(view, start);
        if (next < 0) break;
        start = next;
      }
      rest = rest.slice(start);
      if (rest.length > LONGEST_ROW)
        throw new InputError(`Row ${number} is over ${LONGEST_ROW} bytes`, "Leave long fields out.");
    },
    finish() {
      base64.finish();
      if (rest.length > 0)
        throw new InputError(
          `The table's bytes end in the middle of row ${number}`,
          "The file was cut off, or its fields do not fit its bytes: get it again.",
        );
    },
  };
}

/** How the values of a VOTable's field lie in bytes (IVOA VOTable 1.4, sections 2.1, 2.2 and 6; from memory). Big-endian. */
import { InputError } from "#core/seams/errors.ts";

/** A field's kind of value and how many a cell holds; `isVariable`: a count of four bytes goes before them. */
export type BinaryField = {
  readonly name: string;
  readonly type: string;
  readonly count: number;
  readonly isVariable: boolean;
  /** What an integer says for "no value", as it is written in VALUES. */
  readonly nullText: string | undefined;
};

const BYTES: Readonly<Record<string, number>> = {
  boolean: 1,
  bit: 1 / 8,
  unsignedByte: 1,
  short: 2,
  int: 4,
  long: 8,
  char: 1,
  unicodeChar: 2,
  float: 4,
  double: 8,
  floatComplex: 8,
  doubleComplex: 16,
};
/** No cell is longer; it bounds what is kept of a row. */
const LONGEST_CELL = 65_536;

/**
 * The field of a FIELD's attributes.
 * @throws InputError where its kind or length cannot be read
 */
export function binaryField(attributes: ReadonlyMap<string, string>, nullText: string | undefined): BinaryField {
  const name = (attributes.get("name") ?? "").slice(0, 40);
  const type = attributes.get("datatype") ?? "";
  if (!Object.hasOwn(BYTES, type))
    throw new InputError(
      `Field "${name}" has the unknown datatype "${type.slice(0, 40)}"`,
      `Give one of: ${Object.keys(BYTES).join(", ")}.`,
    );
  const size = (attributes.get("arraysize") ?? "1").trim();
  const match = /^(\d{1,7}(?:x\d{1,7})*)$|^(\d{0,7})\*$/.exec(size);
  if (!match)
    throw new InputError(
      `Field "${name}" has the arraysize "${size.slice(0, 40)}", which is not read`,
      'Give a number, "*", or numbers joined by x; leave out fields of several dimensions that vary.',
    );
  const count = (match[1] ?? "0").split("x").reduce((all, each) => all * Number(each), 1);
  const field = { name, type, count, isVariable: match[1] === undefined, nullText };
  if (cellBytes(field, count) > LONGEST_CELL) throw tooLong(name);
  return field;
}

const tooLong = (name: string) =>
  new InputError(`Field "${name}" has cells of over 65,536 bytes`, "Leave the field out.");

const cellBytes = ({ type }: Pick<BinaryField, "type">, count: number) => Math.ceil(BYTES[type]! * count);

/** Where a field's values in a row begin and end; null where the row's bytes are not all here yet. */
export function cellSpan(field: BinaryField, view: DataView, at: number): { from: number; to: number } | null {
  let from = at;
  let count = field.count;
  if (field.isVariable) {
    if (at + 4 > view.byteLength) return null;
    count = view.getInt32(at);
    from += 4;
    if (count < 0 || cellBytes(field, count) > LONGEST_CELL) throw tooLong(field.name);
  }
  const to = from + cellBytes(field, count);
  return to > view.byteLength ? null : { from, to };
}

const numberAt: Readonly<Record<string, (view: DataView, at: number) => number | bigint>> = {
  unsignedByte: (view, at) => view.getUint8(at),
  short: (view, at) => view.getInt16(at),
  int: (view, at) => view.getInt32(at),
  long: (view, at) => view.getBigInt64(at),
  float: (view, at) => view.getFloat32(at),
  double: (view, at) => view.getFloat64(at),
};

/** A cell as a TABLEDATA cell would have it: one number, or a text up to its first NUL; "" for what no column of a star holds. */
export function cellText(field: BinaryField, view: DataView, from: number, to: number): string {
  const { type, nullText } = field;
  if (type === "char" || type === "unicodeChar") {
    let text = "";
    const step = type === "char" ? 1 : 2;
    for (let at = from; at + step <= to; at += step) {
      const code = step === 1 ? view.getUint8(at) : view.getUint16(at);
      if (code === 0) break;
      text += String.fromCharCode(code);
    }
    return text;
  }
  if (to - from !== BYTES[type] || !numberAt[type]) return "";
  const text = String(numberAt[type](view, from));
  return text === nullText ? "" : text;
}

/**
 * VOTable (IVOA recommendation 1.4, Ochsenbein et al. 2019; from memory), its first table in TABLEDATA, BINARY or BINARY2, as a
 * stream. FIELDs are known by UCD, then by name; units count. Nothing outside of the file is ever fetched.
 */
import { InputError } from "#core/seams/errors.ts";
import { binaryField } from "./binaryFields.ts";
import { type BinaryRows, binaryRows } from "./binaryRows.ts";
import { findColumns, type Heading } from "./columns.ts";
import type { FormatReader, RowSink } from "./types.ts";
import { readXml } from "./xmlStream.ts";

const MOST_FIELDS = 2000;
/** The frames whose places are taken as ICRS as they stand; FK5 differs by less than a tenth of an arcsecond. */
const FRAMES = new Set(["ICRS", "eq_FK5", "FK5", ""]);

function epochOf(text: string | undefined): number | undefined {
  const year = Number((text ?? "").replace(/^J/, ""));
  return text && year >= 1800 && year <= 2200 ? year : undefined;
}

type Attributes = ReadonlyMap<string, string>;
/** A FIELD, and what its VALUES name as "no value". */
type Field = { readonly attributes: Attributes; nullText?: string | undefined };

const headingOf = ({ attributes }: Field): Heading => ({
  name: attributes.get("name") ?? "",
  ucd: attributes.get("ucd"),
  unit: attributes.get("unit") ?? "",
});

/** Whether a cell says "no value": as its field names it, or as the same number otherwise written ("-99", "-99.0"). */
function isNull(cell: string, nullText: string | undefined): boolean {
  if (nullText === undefined) return false;
  const [text, none] = [cell.trim(), nullText.trim()];
  return text === none || (text !== "" && none !== "" && Number(text) === Number(none));
}

/** Rows come out of the file itself, as base64, and in no other way. */
function checkStream(attributes: Attributes, line: number): void {
  if (attributes.has("href"))
    throw new InputError(
      `Line ${line}: the table's bytes lie in another file (href), and only this file is read`,
      "Export it with the bytes inside, or as CSV.",
    );
  const encoding = attributes.get("encoding") ?? "none";
  if (encoding !== "base64")
    throw new InputError(
      `Line ${line}: the table's bytes are encoded as "${encoding.slice(0, 40)}"`,
      "Export it with encoding base64, or as CSV.",
    );
}

/** Reads the first table; others are passed over. Throws InputError where the file is no such table. */
export function readVotable(sink: RowSink): FormatReader {
  const fields: Field[] = [];
  let epoch: number | undefined;
  let tables = 0;
  let inField = false;
  let inRows = false;
  let cells: string[] = [];
  let cell: string | null = null;
  let rowLine = 0;
  let sawRoot = false;
  let binary = "";
  let stream: BinaryRows | null = null;

  const beginStream = (attributes: Attributes, line: number) => {
    checkStream(attributes, line);
    const columns = findColumns(fields.map(headingOf));
    const wanted = new Set(Object.values(columns).map(({ index }) => index));
    const layout = fields.map((field) => binaryField(field.attributes, field.nullText));
    sink.columns(columns, epoch, "row");
    stream = binaryRows(layout, binary === "BINARY2", wanted, sink.row);
  };
  const open = (name: string, attributes: Attributes, line: number) => {
    if (!sawRoot) {
      sawRoot = true;
      if (name !== "VOTABLE")
        throw new InputError(
          `The file is XML, but no VOTable: it begins with <${name.slice(0, 40)}>`,
          "Give a VOTable or CSV.",
        );
    }
    if (name === "TD") cell = "";
    else if (name === "TR") {
      cells = [];
      rowLine = line;
    } else if (name === "TABLE") tables += 1;
    else if (tables > 1) return;
    else if (name === "COOSYS") {
      if (!FRAMES.has(attributes.get("system") ?? ""))
        throw new InputError(
          `Line ${line}: places are in ${attributes.get("system")?.slice(0, 40)}`,
          "Give ICRS or J2000 places.",
        );
      epoch ??= epochOf(attributes.get("epoch"));
    } else if (name === "FIELD" && tables === 1) {
      if (fields.length >= MOST_FIELDS)
        throw new InputError(`Line ${line}: over ${MOST_FIELDS} fields`, "Leave some out.");
      fields.push({ attributes });
      inField = true;
    } else if (name === "VALUES" && inField) {
      fields.at(-1)!.nullText = attributes.get("null");
    } else if (name === "TABLEDATA" && tables === 1) {
      sink.columns(findColumns(fields.map(headingOf)), epoch, "line");
      inRows = true;
    } else if ((name === "BINARY" || name === "BINARY2") && tables === 1) binary = name;
    else if (name === "STREAM" && binary !== "") beginStream(attributes, line);
    else if (name === "FITS")
      throw new InputError(`Line ${line}: the table is in ${name}`, "Export it as VOTable with TABLEDATA, or as CSV.");
  };
  const close = (name: string) => {
    if (name === "TD") {
      if (cell !== null && cells.length <= MOST_FIELDS)
        cells.push(isNull(cell, fields[cells.length]?.nullText) ? "" : cell);
      cell = null;
    } else if (name === "TABLEDATA") inRows = false;
    else if (name === "FIELD") inField = false;
    else if (name === "BINARY" || name === "BINARY2") binary = "";
    else if (name === "STREAM") {
      stream?.finish();
      stream = null;
    } else if (name === "TR" && inRows) {
      if (cells.length === fields.length) sink.row(cells, rowLine);
      else
        sink.fault({
          line: rowLine,
          what: "the row has another number of cells than the table has fields",
          hint: "Give one TD for each FIELD.",
        });
    }
  };
  const xml = readXml({
    open,
    close,
    isLong: () => stream !== null,
    text(text) {
      if (stream) return stream.push(text);
      if (cell === null) return;
      if (cell.length + text.length > 65_536) throw new InputError("A cell is over 65,536 characters", "Leave it out.");
      cell += text;
    },
  });
  return {
    push: xml.push,
    finish() {
      xml.finish();
      if (tables === 0) throw new InputError("The VOTable holds no table", "Give one with TABLE, FIELD and DATA.");
    },
  };
}

/**
 * VOTable (IVOA recommendation 1.4, Ochsenbein et al. 2019; from memory), its first table in TABLEDATA, as a stream. FIELDs are
 * known by UCD, then by name; units count.
 */
import { InputError } from "#core/seams/errors.ts";
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

/** Reads the first table; others are passed over. Throws InputError where the file is no such table. */
export function readVotable(sink: RowSink): FormatReader {
  const fields: Heading[] = [];
  let epoch: number | undefined;
  let tables = 0;
  let inRows = false;
  let cells: string[] = [];
  let cell: string | null = null;
  let rowLine = 0;
  let sawRoot = false;

  const open = (name: string, attributes: ReadonlyMap<string, string>, line: number) => {
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
      fields.push({
        name: attributes.get("name") ?? "",
        ucd: attributes.get("ucd"),
        unit: attributes.get("unit") ?? "",
      });
    } else if (name === "TABLEDATA" && tables === 1) {
      sink.columns(findColumns(fields), epoch);
      inRows = true;
    } else if (name === "BINARY" || name === "BINARY2" || name === "FITS")
      throw new InputError(`Line ${line}: the table is in ${name}`, "Export it as VOTable with TABLEDATA, or as CSV.");
  };
  const close = (name: string) => {
    if (name === "TD") {
      if (cell !== null && cells.length <= MOST_FIELDS) cells.push(cell);
      cell = null;
    } else if (name === "TABLEDATA") inRows = false;
    else if (name === "TR" && inRows) {
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
    text(text) {
      if (cell === null) return;
      if (cell.length + text.length > 65_536) throw new InputError("A cell is over 65,536 characters", "Leave it out.");
      cell += text;
    },
  });
  return {
    push: xml.push,
    finish() {
      xml.finish();
      if (tables === 0) throw new InputError("The VOTable holds no table", "Give one with TABLE, FIELD and TABLEDATA.");
    },
  };
}

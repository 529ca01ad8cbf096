/** Names of a catalogue of one's own: gathered while it is read, kept as a file beside its tiles, read again for the search. */
import { InputError } from "#core/seams/errors.ts";
import type { Dir } from "#core/seams/index.ts";
import type { SkyFile } from "../build/tiles.ts";
import type { NamedStar } from "../names/types.ts";

export const NAMES_FILE = "names.json";
/** A search among more of them would be slow; the brightest are the ones that are asked for. */
const MOST_NAMES = 20_000;
const LONGEST_NAME = 60;
/** What turns or hides letters. */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu;

type Row = readonly [name: string, x: number, y: number, z: number, centiMag: number];

export type NameKeeper = {
  readonly add: (name: string, dir: Dir, centiMag: number) => void;
  /** The file of the brightest names; null where no star has one. `of`: how many stars had a name. */
  readonly finish: () => { readonly file: SkyFile | null; readonly kept: number; readonly of: number };
};

export function createNameKeeper(): NameKeeper {
  let rows: Row[] = [];
  let of = 0;
  /** Sorting keeps the order of equals: the same file gives the same names. */
  const prune = () => {
    rows = rows.sort((one, other) => one[4] - other[4]).slice(0, MOST_NAMES);
  };
  return {
    add(given, [x, y, z], centiMag) {
      const name = given.replace(UNSEEN, "").trim().slice(0, LONGEST_NAME);
      if (name === "") return;
      of += 1;
      rows.push([name, x, y, z, centiMag]);
      if (rows.length >= 2 * MOST_NAMES) prune();
    },
    finish() {
      prune();
      const bytes = new TextEncoder().encode(JSON.stringify({ format: 1, names: rows }));
      return { file: rows.length > 0 ? { name: NAMES_FILE, bytes } : null, kept: rows.length, of };
    },
  };
}

function isRow(row: unknown): row is Row {
  if (!Array.isArray(row) || row.length !== 5 || typeof row[0] !== "string" || row[0].length > LONGEST_NAME)
    return false;
  const [, x, y, z, centiMag] = row as readonly number[];
  return Math.abs(x! * x! + y! * y! + z! * z! - 1) < 1e-6 && Number.isInteger(centiMag);
}

/**
 * The stars of a names file, brightest first.
 * @throws InputError where it is no such file: it may have been changed since
 */
export function readOwnNames(bytes: ArrayBuffer | Uint8Array<ArrayBuffer>): NamedStar[] {
  const refuse = () => new InputError("The catalogue's names cannot be read", "Import the catalogue again.");
  let found: unknown;
  try {
    found = JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    throw refuse();
  }
  const names = (found as { format?: unknown; names?: unknown } | null)?.names;
  if (!Array.isArray(names) || names.length > MOST_NAMES || !names.every(isRow)) throw refuse();
  return names.map(([name, x, y, z, centiMag]) => ({
    dir: [x, y, z],
    magV: centiMag / 100,
    label: name,
    proper: name,
  }));
}

/** Which column holds what: by its usual spellings, by UCD, with its unit. */
import { InputError } from "#core/seams/errors.ts";
import type { Column, ColumnRole, Columns } from "./types.ts";

/** Spellings in common practice, no source; compared in small letters without anything but letters and digits. */
const SPELLINGS: Readonly<Record<ColumnRole, readonly string[]>> = {
  ra: ["ra", "raj2000", "raicrs", "radeg", "rahours", "rah", "rightascension", "alpha"],
  dec: ["dec", "de", "decj2000", "dej2000", "decicrs", "deicrs", "decdeg", "dedeg", "declination", "delta"],
  mag: ["vmag", "magv", "v", "vmagnitude", "magnitude", "mag"],
  colour: ["bv", "bminusv", "colourbv", "colorbv", "colour", "color", "colourindex", "colorindex", "ci"],
  pmRa: ["pmra", "pmracosdec", "propermotionra", "mura", "pmramasyr"],
  pmDec: ["pmdec", "pmde", "propermotiondec", "mudec", "pmdecmasyr"],
  epoch: ["epoch", "refepoch", "epochyear"],
  name: ["name", "starname", "propername", "proper", "designation", "mainid", "id"],
};
/** UCD1+ of the IVOA (words 1.5, from memory), and the older UCD1 form. */
const UCDS: Readonly<Record<ColumnRole, RegExp>> = {
  ra: /^pos\.eq\.ra(;meta\.main)?$|^pos_eq_ra(_main)?$/,
  dec: /^pos\.eq\.dec(;meta\.main)?$|^pos_eq_dec(_main)?$/,
  mag: /^phot\.mag;em\.opt\.v(;meta\.main)?$|^phot_(jhn_v|mag_v)$/,
  colour: /^phot\.color;em\.opt\.b;em\.opt\.v$|^phot_jhn_b-v$/,
  pmRa: /^pos\.pm;pos\.eq\.ra$|^pos_eq_pmra$/,
  pmDec: /^pos\.pm;pos\.eq\.dec$|^pos_eq_pmdec$/,
  epoch: /^meta\.ref;time\.epoch$|^time\.epoch$/,
  name: /^meta\.id;meta\.main$|^id_main$/,
};
const ROLES = Object.keys(SPELLINGS) as ColumnRole[];

const PLACE_UNITS: Readonly<Record<string, number>> = {
  "": 1,
  deg: 1,
  degrees: 1,
  rad: 180 / Math.PI,
  h: 15,
  hourangle: 15,
  arcsec: 1 / 3600,
  '"h:m:s"': 1,
  '"d:m:s"': 1,
};
const MOTION_UNITS: Readonly<Record<string, number>> = {
  "": 1,
  "mas/yr": 1,
  "mas.yr-1": 1,
  "mas.yr**-1": 1,
  "masyr-1": 1,
  "arcsec/yr": 1000,
  "arcsec.yr-1": 1000,
  "deg/yr": 3_600_000,
};
const PLAIN_UNITS: Readonly<Record<string, number>> = { "": 1, mag: 1, yr: 1, a: 1, jyear: 1 };
const UNITS: Readonly<Record<ColumnRole, Readonly<Record<string, number>>>> = {
  ra: PLACE_UNITS,
  dec: PLACE_UNITS,
  mag: PLAIN_UNITS,
  colour: PLAIN_UNITS,
  pmRa: MOTION_UNITS,
  pmDec: MOTION_UNITS,
  epoch: PLAIN_UNITS,
  name: {},
};

export type Heading = { readonly name: string; readonly ucd?: string | undefined; readonly unit?: string | undefined };

const plain = (name: string) => name.toLowerCase().replaceAll(/[^a-z0-9]/g, "");

/** A heading with its unit in brackets, as "RA (deg)" or "pmRA [mas/yr]". */
function splitUnit(heading: Heading): Heading {
  const match = /^([^([]*)[([]([^)\]]*)[)\]]\s*$/.exec(heading.name);
  return match && heading.unit === undefined ? { ...heading, name: match[1]!, unit: match[2]! } : heading;
}

function factorOf(role: ColumnRole, { name, unit = "" }: Heading): number {
  const factor = UNITS[role][unit.toLowerCase().replaceAll(" ", "")];
  if (factor === undefined)
    throw new InputError(
      `The unit "${unit.slice(0, 40)}" of column "${name.slice(0, 40)}" is unknown`,
      `Give it in one of: ${Object.keys(UNITS[role]).filter(Boolean).join(", ")}.`,
    );
  return role === "ra" && unit === "" && /^rah(ours)?$/.test(plain(name)) ? 15 : factor;
}

function findColumn(role: ColumnRole, headings: readonly Heading[]): Column | undefined {
  let index = headings.findIndex(({ ucd }) => ucd !== undefined && UCDS[role].test(ucd.toLowerCase()));
  for (const spelling of SPELLINGS[role]) {
    if (index >= 0) break;
    index = headings.findIndex(({ name }) => plain(name) === spelling);
  }
  if (index < 0) return undefined;
  return { index, factor: role === "name" ? 1 : factorOf(role, headings[index]!) };
}

/**
 * The columns that an import uses, the best spelling first, a UCD before any spelling.
 * @throws InputError where place or magnitude have no column, or a unit is unknown
 */
export function findColumns(given: readonly Heading[]): Columns {
  const headings = given.map(splitUnit);
  const found: Partial<Record<ColumnRole, Column>> = {};
  for (const role of ROLES) {
    const column = findColumn(role, headings);
    if (column) found[role] = column;
  }
  const wanted = { ra: "right ascension (ra)", dec: "declination (dec)", mag: "magnitude (vmag)" } as const;
  for (const role of ["ra", "dec", "mag"] as const) {
    if (found[role]) continue;
    const seen = headings.slice(0, 12).map(({ name }) => name.trim().slice(0, 24));
    throw new InputError(
      `No column holds the ${wanted[role]}; there are: ${seen.join(", ")}`,
      "Name the columns in the first row, for example: ra,dec,vmag,bv,pmra,pmdec.",
    );
  }
  return found;
}

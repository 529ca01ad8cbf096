/** Cells of a row to a star. */
import { parseAngleDeg, parseRaDeg } from "#core/celestial/angles.ts";
import { roundHalfUp } from "#core/celestial/exactMath.ts";
import type { Dir } from "#core/seams/index.ts";
import { dirAtEpoch, TILE_EPOCH } from "../build/place.ts";
import type { Column, Columns } from "./types.ts";

export type RowStar = {
  readonly dir: Dir;
  readonly centiMag: number;
  readonly colourBV: number;
  /** "" where the row gives none. */
  readonly name: string;
};
export type RowTrouble = { readonly what: string; readonly hint: string };

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,3})?$/;
/** No star moves faster: Barnard's star makes 10.4 arcsec a year (from memory). */
const FASTEST_MAS_PER_YEAR = 20_000;
const BRIGHTEST_CENTI_MAG = -200;

const trouble = (what: string, hint: string): RowTrouble => ({ what, hint });
const NO_RA = trouble(
  "right ascension cannot be read",
  "Write degrees (283.4) or hours (18:53:35), from 0 to under 360.",
);
const NO_DEC = trouble("declination cannot be read", "Write degrees (-33.5) or degrees, minutes, seconds (-33:30:00).");
const FAR_DEC = trouble("declination lies beyond 90 degrees", "Give it from -90 to 90.");
const NO_MAG = trouble("magnitude is missing or no number", "Give V as a number, for example 6.32.");
const BRIGHT = trouble("magnitude is brighter than -2", "No star is: mend the number.");
const NO_COLOUR = trouble("B-V is no number", "Give a number, or leave the cell empty.");
const NO_MOTION = trouble(
  "proper motion is no number",
  "Give mas a year for both coordinates, or leave both cells empty.",
);
const FAST = trouble(
  "proper motion is over 20 arcsec a year",
  "Give mas a year; motion in right ascension times cos(dec).",
);
const NO_EPOCH = trouble(
  "epoch is no year from 1800 to 2200",
  "Give a Julian year, for example 2000.0, or leave the cell empty.",
);

const numberOf = (text: string) => (NUMBER.test(text) ? Number(text) : Number.NaN);
const isEmpty = (text: string) => text === "" || /^(nan|null)$/i.test(text);

/** "18 53 35.1" as "18:53:35.1". */
const colons = (text: string) =>
  text.includes(" ") ? text.replace(/^([+-]?\d+) +(\d+) +([\d.]+)$/, "$1:$2:$3") : text;

function raOf(text: string, factor: number): number | null {
  const number = numberOf(text);
  if (Number.isNaN(number)) return parseRaDeg(colons(text));
  const deg = number * factor;
  return deg >= 0 && deg < 360 ? deg : null;
}

function decOf(text: string, factor: number): number | null {
  const number = numberOf(text);
  return Number.isNaN(number) ? parseAngleDeg(colons(text)) : number * factor;
}

/**
 * A star out of the cells of a row, moved to the epoch of the tiles.
 * @param epochYear the year of the places where the row names none
 * @returns what is wrong and how to mend it, where the row cannot be used
 */
export function rowStar(cells: readonly string[], columns: Columns, epochYear: number): RowStar | RowTrouble {
  const cell = (column: Column | undefined) => (column ? (cells[column.index] ?? "").trim() : "");
  /** The number of a column that may be empty (NaN); null where there is something else. */
  const optional = (column: Column | undefined): number | null => {
    const text = cell(column);
    if (isEmpty(text)) return Number.NaN;
    const number = numberOf(text) * (column?.factor ?? 1);
    return Number.isFinite(number) ? number : null;
  };
  const raDeg = raOf(cell(columns.ra), columns.ra?.factor ?? 1);
  if (raDeg === null) return NO_RA;
  const decDeg = decOf(cell(columns.dec), columns.dec?.factor ?? 1);
  if (decDeg === null) return NO_DEC;
  if (!(decDeg >= -90 && decDeg <= 90)) return FAR_DEC;
  const magV = numberOf(cell(columns.mag));
  if (!Number.isFinite(magV)) return NO_MAG;
  const centiMag = roundHalfUp(magV * 100);
  if (centiMag < BRIGHTEST_CENTI_MAG) return BRIGHT;
  const colourBV = optional(columns.colour);
  if (colourBV === null) return NO_COLOUR;
  const [pmRaMasPerYear, pmDecMasPerYear] = [optional(columns.pmRa), optional(columns.pmDec)];
  if (pmRaMasPerYear === null || pmDecMasPerYear === null) return NO_MOTION;
  if (Math.abs(pmRaMasPerYear) > FASTEST_MAS_PER_YEAR || Math.abs(pmDecMasPerYear) > FASTEST_MAS_PER_YEAR) return FAST;
  const own = optional(columns.epoch);
  if (own === null || own < 1800 || own > 2200) return NO_EPOCH;
  const year = Number.isNaN(own) ? epochYear : own;
  const place = { raDeg, decDeg, raYear: year, decYear: year, pmRaMasPerYear, pmDecMasPerYear };
  return { dir: dirAtEpoch(place, TILE_EPOCH), centiMag, colourBV, name: cell(columns.name) };
}

/**
 * Lines of the raw Tycho-2 catalogue to stars (Hog et al. 2000, A&A 355, L27; columns from the catalogue's own ReadMe,
 * CDS I/259). Pure: a line in, a star out.
 */
import { InputError } from "#core/seams/errors.ts";
import type { RawPlace } from "./place.ts";

/** Which light a star's V comes from: both bands, one band as it stands, or Hipparcos' own band as it stands. */
export type Band = "both" | "VT" | "BT" | "Hp";

export type RawStar = {
  readonly region: number;
  /** "TYC1-TYC2-TYC3". */
  readonly tyc: string;
  /** Hipparcos number, 0 where there is none. */
  readonly hip: number;
  /** Letters of the components that the entry stands for, as the catalogue gives them, without blanks. */
  readonly component: string;
  readonly source: "main" | "hipparcos" | "tycho1";
  /** Where a place comes from: a mean over catalogues, or the satellite's own (no mean there, or the mean of a pair). */
  readonly placeKind: "mean" | "observed" | "observedPair";
  readonly place: RawPlace;
  readonly magV: number;
  /** B-V; NaN where one band alone was measured. */
  readonly colourBV: number;
  readonly band: Band;
};

/**
 * A line of the main catalogue. Mean place of epoch J2000.0; for a pair that shares one (flag P) and where there is none
 * (flag X) the observed place at its own epochs, the pair with the motion it shares. Throws InputError on a line that is none.
 */
export function parseMainLine(line: string): RawStar {
  const flag = flagIn(line, " PX");
  const mean = flag === " ";
  const observed = { raYear: 1990 + numberIn(line, 179, 182), decYear: 1990 + numberIn(line, 184, 187) };
  return {
    region: numberIn(line, 1, 4),
    tyc: tycIn(line),
    hip: numberIn(line, 143, 148, 0),
    component: line.slice(148, 151).trim(),
    source: "main",
    placeKind: mean ? "mean" : flag === "P" ? "observedPair" : "observed",
    place: {
      ...(mean ? placeIn(line, 16, 29) : placeIn(line, 153, 166)),
      raYear: mean ? 2000 : observed.raYear,
      decYear: mean ? 2000 : observed.decYear,
      pmRaMasPerYear: numberIn(line, 42, 48, Number.NaN),
      pmDecMasPerYear: numberIn(line, 50, 56, Number.NaN),
    },
    ...lightOf(numberIn(line, 111, 116, Number.NaN), numberIn(line, 124, 129, Number.NaN), false, line),
  };
}

/**
 * A line of supplement 1: the stars that Hipparcos (flag H) or the first Tycho catalogue (flag T, no motion) has and the main
 * catalogue lacks; place of epoch J1991.25. Throws InputError on a line that is none.
 */
export function parseSupplementLine(line: string): RawStar {
  return {
    region: numberIn(line, 1, 4),
    tyc: tycIn(line),
    hip: numberIn(line, 116, 121, 0),
    component: line.slice(121, 122).trim(),
    source: flagIn(line, "HT") === "H" ? "hipparcos" : "tycho1",
    placeKind: "mean",
    place: {
      ...placeIn(line, 16, 29),
      raYear: 1991.25,
      decYear: 1991.25,
      pmRaMasPerYear: numberIn(line, 42, 48, Number.NaN),
      pmDecMasPerYear: numberIn(line, 50, 56, Number.NaN),
    },
    ...lightOf(numberIn(line, 84, 89, Number.NaN), numberIn(line, 97, 102, Number.NaN), line[81] === "H", line),
  };
}

/** V = VT - 0.090 (BT - VT), B-V = 0.850 (BT - VT): ReadMe of the catalogue, note 7. */
function lightOf(bt: number, vt: number, isHp: boolean, line: string): { magV: number; colourBV: number; band: Band } {
  if (isHp) return { magV: given(vt, "magnitude", line), colourBV: Number.NaN, band: "Hp" };
  if (Number.isNaN(bt)) return { magV: given(vt, "magnitude", line), colourBV: Number.NaN, band: "VT" };
  if (Number.isNaN(vt)) return { magV: bt, colourBV: Number.NaN, band: "BT" };
  return { magV: vt - 0.09 * (bt - vt), colourBV: 0.85 * (bt - vt), band: "both" };
}

/** TYC identifiers are the catalogue's own, without their leading zeros. */
function tycIn(line: string): string {
  return `${numberIn(line, 1, 4)}-${numberIn(line, 6, 10)}-${numberIn(line, 12, 12)}`;
}

/** The flag in byte 14. */
function flagIn(line: string, known: string): string {
  const flag = line[13];
  return flag !== undefined && known.includes(flag) ? flag : unusable("known flag in byte 14", line);
}

/** Right ascension and declination, 12 bytes each, of the sphere. */
function placeIn(line: string, raFirst: number, decFirst: number): { raDeg: number; decDeg: number } {
  const raDeg = numberIn(line, raFirst, raFirst + 11);
  const decDeg = numberIn(line, decFirst, decFirst + 11);
  const onSphere = raDeg >= 0 && raDeg <= 360 && Math.abs(decDeg) <= 90;
  return onSphere ? { raDeg, decDeg } : unusable(`place on the sphere in bytes ${raFirst} to ${decFirst + 11}`, line);
}

/** The number in the bytes `first` to `last` of a line, counted from 1 as the ReadMe does; `blank` where they are blank. */
function numberIn(line: string, first: number, last: number, blank?: number): number {
  const text = line.slice(first - 1, last);
  if (text.trim() === "" && blank !== undefined) return blank;
  return given(text.trim() === "" ? Number.NaN : Number(text), `number in bytes ${first} to ${last}`, line);
}

function given(value: number, what: string, line: string): number {
  return Number.isFinite(value) ? value : unusable(what, line);
}

function unusable(what: string, line: string): never {
  throw new InputError(
    `no ${what} in the catalogue line "${line.slice(0, 40)}..."`,
    "Give the files tyc2.dat.00 to .19 and suppl_1.dat of the Tycho-2 catalogue as they were published.",
  );
}

/** Values of options: numbers, angles, places, sites and times, each with its bounds. */
import { parseAngleDeg, parseRaDeg } from "#core/celestial/angles.ts";
import type { Site } from "#core/celestial/frames.ts";
import { DEG, dirFromRadec } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { UsageError } from "./usageError.ts";

function unusable(name: string, text: string, hint: string): UsageError {
  return new UsageError("ARGUMENTS", `--${name} ${text} cannot be used`, hint);
}

export function needed(name: string, text: string | undefined, example: string): string {
  if (text === undefined) throw new UsageError("ARGUMENTS", `--${name} is missing`, `add --${name}=${example}`);
  return text;
}

/** A number in decimal writing within bounds (both included). */
export function numberOf(name: string, text: string, low: number, high: number, unit: string): number {
  const value = /^[+-]?(\d+\.?\d*|\.\d+)$/.test(text) ? Number(text) : Number.NaN;
  if (!(value >= low && value <= high)) throw unusable(name, text, `give a number of ${unit} from ${low} to ${high}`);
  return value;
}

export function raDegOf(text: string): number {
  const deg = parseRaDeg(text);
  if (deg === null) throw unusable("ra", text, "give degrees from 0 up to 360, or hours such as 18h53m35s");
  return deg;
}

export function decDegOf(text: string): number {
  const deg = parseAngleDeg(text);
  if (deg === null || Math.abs(deg) > 90)
    throw unusable("dec", text, "give degrees from -90 to 90, such as 33.03 or +33d01m45s");
  return deg;
}

/** An angle in any writing, within bounds. */
export function angleDegOf(name: string, text: string, low: number, high: number): number {
  const deg = parseAngleDeg(text);
  if (deg === null || deg < low || deg > high) throw unusable(name, text, `give degrees from ${low} to ${high}`);
  return deg;
}

export type Place = { readonly raDeg: number; readonly decDeg: number; readonly dir: Dir };

export const placeOf = (raDeg: number, decDeg: number): Place => ({
  raDeg,
  decDeg,
  dir: dirFromRadec(raDeg * DEG, decDeg * DEG),
});

/** The place of --ra and --dec, both needed. */
export function placeFrom(ra: string | undefined, dec: string | undefined): Place {
  return placeOf(raDegOf(needed("ra", ra, "18h53m35s")), decDegOf(needed("dec", dec, "+33d01m45s")));
}

/** `LAT,LON[,HEIGHT_M]`, east positive. */
export function siteOf(text: string): Site {
  const parts = text.split(",");
  const hint = "give LAT,LON[,HEIGHT_M] with east positive, such as --site=50,0,250";
  if (parts.length < 2 || parts.length > 3) throw unusable("site", text, hint);
  const [lat, lon, height] = parts;
  const latDeg = parseAngleDeg(lat!);
  const lonDeg = parseAngleDeg(lon!);
  const heightM = height === undefined ? 0 : /^[+-]?\d+(\.\d+)?$/.test(height.trim()) ? Number(height) : Number.NaN;
  const good =
    latDeg !== null &&
    Math.abs(latDeg) <= 90 &&
    lonDeg !== null &&
    Math.abs(lonDeg) <= 360 &&
    heightM >= -500 &&
    heightM <= 9000;
  if (!good) throw unusable("site", text, hint);
  return { latDeg, lonDeg, heightM };
}

const TIME = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2})(?::(\d{2}(?:\.\d{1,9})?))?Z$/;

/** An instant in ISO 8601, UTC; ms since 1970. */
export function utcMsOf(text: string): number {
  const hint = "give UTC as in 2027-08-31T21:00:00Z, from the years 1900 to 2100";
  const match = TIME.exec(text);
  const ms = match ? Date.parse(text) : Number.NaN;
  // A day that the month has not rolls over or fails: compare what came back.
  const day = Number.isNaN(ms) ? "" : new Date(ms).toISOString().slice(0, 10);
  const year = Number(match?.[1]);
  if (!match || day !== text.slice(0, 10) || year < 1900 || year > 2100) throw unusable("time", text, hint);
  return ms;
}

/** A number cut to decimals that carry meaning; null where it is none. */
export const rounded = (value: number, decimals: number): number | null =>
  Number.isFinite(value) ? Number(value.toFixed(decimals)) + 0 : null;

/** An angle of [0, 360) degrees cut to decimals: what would become 360 is 0. */
export const roundedTurn = (deg: number, decimals: number): number => Number(deg.toFixed(decimals)) % 360;

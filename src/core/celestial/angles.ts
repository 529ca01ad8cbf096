/** Angles as people write them. */

const NUMBER = String.raw`(\d+(?:\.\d+)?)`;
const SIGN = String.raw`([+\-\u2212]?)`;
const SEXAGESIMAL = (first: string) =>
  new RegExp(
    String.raw`^${SIGN}${NUMBER}\s*${first}\s*(?:${NUMBER}\s*[m'\u2032]\s*(?:${NUMBER}\s*(?:s|"|\u2033)\s*)?)?$`,
    "i",
  );
const HOURS = SEXAGESIMAL("h");
const DEGREES = SEXAGESIMAL(String.raw`[d\u00b0]`);
const COLONS = new RegExp(String.raw`^${SIGN}${NUMBER}\s*:\s*${NUMBER}(?:\s*:\s*${NUMBER})?$`);
const PLAIN = new RegExp(`^${SIGN}${NUMBER}$`);

/** Value of a match of sign, whole, minutes, seconds; null where minutes or seconds reach 60 or a part before the last has a fraction. */
function readMatch(match: RegExpExecArray | null): number | null {
  if (!match) return null;
  const [, sign, whole = "0", minutes, seconds] = match;
  const m = Number(minutes ?? 0);
  const s = Number(seconds ?? 0);
  const brokenEarly =
    (minutes !== undefined && whole.includes(".")) || (seconds !== undefined && minutes?.includes("."));
  if (m >= 60 || s >= 60 || brokenEarly) return null;
  const value = Number(whole) + (m + s / 60) / 60;
  return sign === "" || sign === "+" ? value : -value;
}

/**
 * An angle in degrees: `33.5`, `+33d01m45s`, `-5°23'`, `33:01:45` (degrees). Null where the text is none of these. No
 * range is set.
 */
export function parseAngleDeg(text: string): number | null {
  const t = text.trim();
  return readMatch(PLAIN.exec(t)) ?? readMatch(DEGREES.exec(t)) ?? readMatch(COLONS.exec(t));
}

/**
 * A right ascension in degrees, [0, 360): `283.4` and `283d24m` are degrees, `18h53m35s` and `18:53:35` hours. Null where
 * the text is none of these or out of range.
 */
export function parseRaDeg(text: string): number | null {
  const t = text.trim();
  const hours = readMatch(HOURS.exec(t)) ?? readMatch(COLONS.exec(t));
  const deg = hours !== null ? hours * 15 : (readMatch(PLAIN.exec(t)) ?? readMatch(DEGREES.exec(t)));
  return deg !== null && deg >= 0 && deg < 360 ? deg + 0 : null;
}

function two(n: number): string {
  return String(n).padStart(2, "0");
}

/** A right ascension in degrees as `18h53m35s`, to the nearest second of time. */
export function formatRa(raDeg: number): string {
  const seconds = Math.round((raDeg - 360 * Math.floor(raDeg / 360)) * 240) % 86400;
  return `${two(Math.floor(seconds / 3600))}h${two(Math.floor(seconds / 60) % 60)}m${two(seconds % 60)}s`;
}

/** A declination in degrees as `+33°01′45″` (minus: U+2212), to the nearest arcsecond. */
export function formatDec(decDeg: number): string {
  const arcsec = Math.round(Math.abs(decDeg) * 3600);
  const sign = decDeg < 0 && arcsec > 0 ? "\u2212" : "+";
  return `${sign}${two(Math.floor(arcsec / 3600))}°${two(Math.floor(arcsec / 60) % 60)}′${two(arcsec % 60)}″`;
}

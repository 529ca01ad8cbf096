/** Instants and sidereal time. An instant is UTC in ms since 1970-01-01T00:00Z; UT1 is taken as UTC (at most 0.9 s apart). */
import { AstroTime, SiderealTime } from "astronomy-engine";

/** Julian date of 2000-01-01T12:00. */
const JD_2000 = 2_451_545;
const MS_2000 = 946_728_000_000;
const MS_PER_DAY = 86_400_000;

/** Days of UTC since 2000-01-01T12:00Z. */
export function daysSince2000(utcMs: number): number {
  return (utcMs - MS_2000) / MS_PER_DAY;
}

/** Julian date of the UTC clock reading. */
export function julianDate(utcMs: number): number {
  return daysSince2000(utcMs) + JD_2000;
}

/** The instant as astronomy-engine takes it. */
export function astroTime(utcMs: number): AstroTime {
  return new AstroTime(daysSince2000(utcMs));
}

/**
 * Greenwich mean sidereal time, degrees in [0, 360): the Earth's rotation angle (Capitaine et al. 2000) plus the polynomial
 * of IAU 2006 (Capitaine et al. 2003, A&A 412, 567, eq. 42), coefficients from memory.
 */
export function greenwichMeanSiderealDeg(utcMs: number): number {
  const days = daysSince2000(utcMs);
  const t = days / 36525;
  const turn = 0.779057273264 + 0.00273781191135448 * days + (days % 1);
  const arcsec = 0.014506 + t * (4612.156534 + t * (1.3915817 + t * (-0.00000044 + t * -0.000029956)));
  return wrap360(turn * 360 + arcsec / 3600);
}

/** Greenwich apparent sidereal time (mean time and the equation of the equinoxes), degrees in [0, 360). */
export function greenwichApparentSiderealDeg(utcMs: number): number {
  return wrap360(SiderealTime(astroTime(utcMs)) * 15);
}

/** Apparent sidereal time at a longitude (east positive), degrees in [0, 360). */
export function localSiderealDeg(utcMs: number, lonDeg: number): number {
  return wrap360(greenwichApparentSiderealDeg(utcMs) + lonDeg);
}

function wrap360(deg: number): number {
  const wrapped = deg - 360 * Math.floor(deg / 360);
  return wrapped < 360 ? wrapped : 0;
}

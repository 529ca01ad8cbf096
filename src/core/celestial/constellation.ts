import { AstroTime, Constellation, Rotation_EQD_EQJ } from "astronomy-engine";
import type { Dir } from "#core/seams/index.ts";
import table from "#shared/constellations.json";
import { precessionFromIcrs, rowMajor } from "./frames.ts";
import { mulMat, mulMatVec } from "./matrix.ts";
import { DEG, radecFromDir } from "./vector.ts";

/** B1875.0 as a Julian year: JD 2415020.31352 less 25 tropical years of 365.242198781 days (Lieske 1979, A&A 73, 282). */
const B1875 = 2000 + (2_415_020.31352 - 25 * 365.242198781 - 2_451_545) / 365.25;
/** The instant of the engine's own look-up, days from J2000 in UT. */
const ENGINE_B1875 = new AstroTime(-45655.74141261017);

/** ICRS to the mean equator and equinox of B1875.0, on which the borders were drawn. */
export const b1875FromIcrs: Float64Array = precessionFromIcrs(B1875);

/** The engine turns to the true equinox, whose nutation then was 9": a place is turned back by as much first. */
const forEngine = mulMat(rowMajor(Rotation_EQD_EQJ(ENGINE_B1875)), b1875FromIcrs);

const NAMES = table.constellations as Readonly<Record<string, readonly string[]>>;

/**
 * The constellation of an ICRS direction: IAU abbreviation and Latin name. Boundaries of equinox B1875 (Roman 1987, PASP 99,
 * 695) as tabulated in astronomy-engine; within an arcsecond of a boundary the answer may be the neighbour.
 */
export function constellationOf(dir: Dir): { abbr: string; name: string } {
  const { raRad, decRad } = radecFromDir(mulMatVec(forEngine, dir));
  const { symbol } = Constellation(raRad / DEG / 15, decRad / DEG);
  return { abbr: symbol, name: NAMES[symbol]![0]! };
}

import { Constellation } from "astronomy-engine";
import type { Dir } from "#core/seams/index.ts";
import { DEG, radecFromDir } from "./vector.ts";

/**
 * The constellation of an ICRS direction: IAU abbreviation and Latin name. Boundaries of equinox B1875 (Roman 1987, PASP 99,
 * 695) as tabulated in astronomy-engine; within an arcsecond of a boundary the answer may be the neighbour.
 */
export function constellationOf(dir: Dir): { abbr: string; name: string } {
  const { raRad, decRad } = radecFromDir(dir);
  const { symbol, name } = Constellation(raRad / DEG / 15, decRad / DEG);
  return { abbr: symbol, name };
}

/** `place`: where a thing stands for an observer. */
import { kastenYoung } from "#core/celestial/airmass.ts";
import {
  altAzFromDir,
  equatorialOfDateFromIcrs,
  horizonFromIcrs,
  hourAngleFromDir,
  zenithDir,
} from "#core/celestial/frames.ts";
import { parallacticAngleRad } from "#core/celestial/parallactic.ts";
import { saemundssonDeg } from "#core/celestial/refraction.ts";
import { DEG, radecFromDir } from "#core/celestial/vector.ts";
import { findByName, type MovingBody } from "#core/sky/names/findByName.ts";
import { movingBodiesFrom } from "#core/sky/solar/movingBodies.ts";
import { parseArgs } from "../args.ts";
import type { Verb } from "../io.ts";
import { underSky } from "../lessonFile.ts";
import type { Sky } from "../skies.ts";
import { pairs } from "../table.ts";
import { UsageError } from "../usageError.ts";
import { needed, type Place, placeFrom, rounded, roundedTurn, siteOf, utcMsOf } from "../values.ts";

const OPTIONS = { ra: "value", dec: "value", site: "value", time: "value", sky: "value", lesson: "value" } as const;

/** Degrees of (-180, 180]. */
const signed = (deg: number) => (deg > 180 ? deg - 360 : deg);

function named(word: string, sky: Sky, bodies: readonly MovingBody[]): Place {
  const [best] = findByName(word, sky.names(), sky.objects(), bodies);
  if (!best)
    throw new UsageError("NAME", `nothing bears the name "${word}"`, "try faintward name, or give --ra and --dec");
  const { raRad, decRad } = radecFromDir(best.dir);
  return { raDeg: raRad / DEG, decDeg: decRad / DEG, dir: best.dir };
}

function placeMeant(
  words: readonly string[],
  options: { ra?: string; dec?: string },
  sky: Sky,
  bodies: () => readonly MovingBody[],
): Place {
  const byName = words.join(" ");
  if (byName === "") return placeFrom(options.ra, options.dec);
  if (options.ra === undefined && options.dec === undefined) return named(byName, sky, bodies());
  throw new UsageError("ARGUMENTS", "a name and coordinates are given", "give one of them");
}

export const place: Verb = {
  what: "where a thing stands for an observer: altitude, azimuth, air and angles",
  usage: "place NAME|--ra=RA --dec=DEC --site=LAT,LON[,HEIGHT_M] --time=UTC [--sky=catalogue|OWN|SEED|--lesson=FILE]",
  async run(args, io) {
    const { options: given, words } = parseArgs(args, OPTIONS, { least: 0, most: 8, what: "" });
    const { sky, options } = await underSky(given, io);
    const site = () => siteOf(needed("site", options.site, "50,0,250"));
    const utcMs = () => utcMsOf(needed("time", options.time, "2027-08-31T21:00:00Z"));
    const bodies = () => (sky.isReal ? movingBodiesFrom(site(), utcMs()) : []);
    const { raDeg, decDeg, dir } = placeMeant(words, options, sky, bodies);
    const horizon = horizonFromIcrs(site(), utcMs());
    const { altRad, azRad } = altAzFromDir(horizon, dir);
    const altitudeDeg = altRad / DEG;
    const refractionDeg = saemundssonDeg(altitudeDeg);
    const apparentDeg = altitudeDeg + refractionDeg;
    const { hourAngleRad } = hourAngleFromDir(equatorialOfDateFromIcrs(site(), utcMs()), dir);
    const json = {
      raDeg: roundedTurn(raDeg, 6),
      decDeg: rounded(decDeg, 6),
      altitudeDeg: rounded(altitudeDeg, 6),
      azimuthDeg: roundedTurn(azRad / DEG, 6),
      airmass: apparentDeg >= 0 ? rounded(kastenYoung(apparentDeg), 4) : null,
      parallacticDeg: rounded(signed(parallacticAngleRad(dir, zenithDir(horizon)) / DEG), 6),
      hourAngleDeg: rounded(hourAngleRad / DEG, 6),
      constellation: sky.constellationAt(dir),
      refractionDeg: rounded(refractionDeg, 6),
    };
    const shown = (value: number | null, decimals: number, unit: string) =>
      value === null ? "none, below the horizon" : `${value.toFixed(decimals)}${unit}`;
    return {
      exit: 0,
      json,
      text: pairs([
        ["altitude", shown(json.altitudeDeg, 3, " deg, without refraction")],
        ["azimuth", shown(json.azimuthDeg, 3, " deg from north by east")],
        ["air mass", shown(json.airmass, 3, "")],
        ["refraction", shown(json.refractionDeg, 4, " deg upward")],
        ["hour angle", shown(json.hourAngleDeg, 3, " deg, west positive")],
        ["parallactic angle", shown(json.parallacticDeg, 2, " deg, the zenith's position angle")],
        ["constellation", json.constellation],
      ]),
    };
  },
};

/** The conditions of a call: the sky's darkness, the air, the observer's eye, a site and an instant. */
import { altAzFromDir, dirFromAltAz, horizonFromIcrs } from "#core/celestial/frames.ts";
import { DEG } from "#core/celestial/vector.ts";
import { type Conditions, conditionsAt, pupilOfAge, TYPICAL_OBSERVER, zenithConditions } from "#core/eye/conditions.ts";
import { isNaked } from "#core/eye/instrument.ts";
import { FIELD_FACTOR } from "#core/eye/threshold.ts";
import { exitPupilMm, gearById } from "#core/optics/gear.ts";
import type { Dir, Gear } from "#core/seams/index.ts";
import { GEAR_OPTIONS, gearFrom } from "./gearFrom.ts";
import { UsageError } from "./usageError.ts";
import { angleDegOf, needed, numberOf, siteOf, utcMsOf } from "./values.ts";

export const LIGHT_OPTIONS = {
  ...GEAR_OPTIONS,
  eye: "flag",
  darkness: "value",
  altitude: "value",
  extinction: "value",
  age: "value",
  pupil: "value",
  observer: "value",
  site: "value",
  time: "value",
  eyes: "value",
} as const;
export type LightOptions = {
  readonly [K in keyof typeof LIGHT_OPTIONS]?: (typeof LIGHT_OPTIONS)[K] extends "flag" ? true : string;
};
/** What looks, in which light, and where to: with nothing said of it, to the zenith. */
export type Look = { readonly gear: Gear; readonly conditions: Conditions; readonly dir: Dir };

const slip = (message: string, hint: string) => new UsageError("ARGUMENTS", message, hint);

function eyesOf(text: string | undefined, usual: 1 | 2): 1 | 2 {
  if (text === undefined) return usual;
  if (text === "1" || text === "2") return text === "1" ? 1 : 2;
  throw slip(`--eyes ${text} cannot be used`, "give 1 or 2");
}

/** The naked eye, or an instrument as in `view`; --eyes says with how many eyes. */
function glassFrom(options: LightOptions): Gear {
  const named = Object.keys(GEAR_OPTIONS).find((name) => options[name as keyof typeof GEAR_OPTIONS] !== undefined);
  if (options.eye && named !== undefined) throw slip(`--eye and --${named} are given`, "keep one of them");
  const gear = options.eye ? gearById("eye") : gearFrom(options);
  return { ...gear, eyes: eyesOf(options.eyes, gear.eyes) };
}

function fieldFactorOf(text: string | undefined): number {
  if (text === undefined) return TYPICAL_OBSERVER.fieldFactor;
  const named = Object.hasOwn(FIELD_FACTOR, text) ? FIELD_FACTOR[text as keyof typeof FIELD_FACTOR] : undefined;
  if (named !== undefined) return named;
  if (!/^[\d.]+$/.test(text))
    throw slip(`--observer ${text} is unknown`, "give novice, typical, keen or a field factor");
  return numberOf("observer", text, 0.5, 10, "field factor");
}

function pupilOf({ age, pupil }: LightOptions): number {
  if (age !== undefined && pupil !== undefined) throw slip("--age and --pupil are given", "give one of them");
  if (pupil !== undefined) return numberOf("pupil", pupil, 2, 9, "millimetres");
  return age === undefined ? TYPICAL_OBSERVER.pupilMm : pupilOfAge(numberOf("age", age, 5, 110, "years"));
}

/** Width of the secondary mirror's shadow within the pencil of light at the eye. */
const shadowMm = (gear: Gear): number => (gear.obstructionMm / gear.apertureMm) * exitPupilMm(gear);

const UP: Dir = [0, 0, 1];
/** Without a site, a place of that altitude under a zenith of our own. */
const atAltitude = (altitudeDeg: number): Dir => [
  Math.cos(altitudeDeg * DEG),
  0,
  altitudeDeg === 90 ? 1 : Math.sin(altitudeDeg * DEG),
];

/**
 * Reads a call's instrument and conditions.
 * @param target where the call looks, if it has a place; without one --altitude says how high, a quarter turn from the Moon
 * @throws UsageError saying which option is wrong and how to mend it
 */
export function lookFrom(options: LightOptions, target: Dir | null): Look {
  const gear = glassFrom(options);
  const darknessMu = numberOf("darkness", needed("darkness", options.darkness, "21"), 10, 23, "mag/arcsec2");
  const observer = { fieldFactor: fieldFactorOf(options.observer), pupilMm: pupilOf(options) };
  if (!isNaked(gear) && shadowMm(gear) >= observer.pupilMm)
    throw slip(
      `at ${gear.magnification} times the shadow of the secondary mirror fills the eye's pupil`,
      "give more magnification or less obstruction",
    );
  const altitudeDeg = options.altitude === undefined ? null : angleDegOf("altitude", options.altitude, 0, 90);
  const own =
    options.extinction === undefined
      ? {}
      : { extinction: numberOf("extinction", options.extinction, 0, 2, "magnitudes per air mass") };
  if (options.site === undefined && options.time === undefined) {
    const conditions = { ...zenithConditions(darknessMu, observer), ...own };
    if (altitudeDeg === null) return { gear, conditions, dir: target ?? UP };
    return { gear, conditions: { ...conditions, zenith: UP }, dir: atAltitude(altitudeDeg) };
  }
  const site = siteOf(needed("site", options.site, "50,0,250"));
  const utcMs = utcMsOf(needed("time", options.time, "2027-08-31T21:00:00Z"));
  const conditions = { ...conditionsAt(darknessMu, site, utcMs, observer), ...own };
  if (target && altitudeDeg !== null)
    throw slip("--altitude and --site are given for a thing that has a place", "leave one of them out");
  const horizon = horizonFromIcrs(site, utcMs);
  const away = altAzFromDir(horizon, conditions.moon!.dir).azRad + Math.PI / 2;
  return { gear, conditions, dir: target ?? dirFromAltAz(horizon, (altitudeDeg ?? 90) * DEG, away) };
}

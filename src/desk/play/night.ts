/** The hours of a lesson's night that it may be set to: dark, with anchor and target well up. */
import { sunDir } from "#core/celestial/bodies.ts";
import { altAzFromDir, horizonFromIcrs } from "#core/celestial/frames.ts";
import { DEG, dirFromMas } from "#core/celestial/vector.ts";
import type { HopSpec } from "#core/seams/index.ts";
import { horizonOf, type Session, skyTimeMs } from "#core/session/session.ts";
import type { Sun } from "./picture.ts";

/** By so much the time is set earlier or later. */
export const NIGHT_STEP_MS = 600_000;
/** No night is searched further than this from the lesson's hour. */
const MOST_STEPS = 60;
/** The end of nautical twilight, and how high a place is worth a look (common practice, no source). */
const DARK_SUN_RAD = -12 * DEG;
const LOW_RAD = 15 * DEG;

export interface Night {
  readonly leastMs: number;
  readonly mostMs: number;
}

/** From the lesson's hour back and on, step by step, as long as it is dark and the hop stands well up. */
export function darkHours(spec: Pick<HopSpec, "siteMas" | "startMs" | "anchor" | "targets">): Night {
  const [latMas, lonMas] = spec.siteMas;
  const site = { latDeg: latMas / 3_600_000, lonDeg: lonMas / 3_600_000, heightM: 0 };
  const places = [spec.anchor, spec.targets[0]!.dir].map(dirFromMas);
  const isGood = (utcMs: number) => {
    const horizon = horizonFromIcrs(site, utcMs);
    return (
      altAzFromDir(horizon, sunDir(utcMs)).altRad < DARK_SUN_RAD &&
      places.every((dir) => altAzFromDir(horizon, dir).altRad > LOW_RAD)
    );
  };
  const asFarAs = (stepMs: number) => {
    let steps = 0;
    while (steps < MOST_STEPS && isGood(spec.startMs + (steps + 1) * stepMs)) steps += 1;
    return spec.startMs + steps * stepMs;
  };
  return { leastMs: asFarAs(-NIGHT_STEP_MS), mostMs: asFarAs(NIGHT_STEP_MS) };
}

/** Where the Sun stands now, for what is left of twilight. */
export function sunNow(session: Session): Sun {
  const { altRad, azRad } = altAzFromDir(horizonOf(session), sunDir(skyTimeMs(session)));
  return { altitudeRad: altRad, azimuthRad: azRad };
}

/** The hours that a lesson's night may be set to: as long as the Sun is down. */
import { sunDir } from "#core/celestial/bodies.ts";
import { altAzFromDir, horizonFromIcrs } from "#core/celestial/frames.ts";
import { DEG } from "#core/celestial/vector.ts";
import type { Lesson } from "#core/lesson/types.ts";
import { horizonOf, type Session, skyTimeMs } from "#core/session/session.ts";
import type { Sun } from "./picture.ts";

/** By so much the time is set earlier or later. */
export const NIGHT_STEP_MS = 600_000;
/** No night is searched further than this from the lesson's hour: half a day. */
const MOST_STEPS = 72;
/** The Sun's upper limb is at the horizon: 34' of refraction and 16' of radius (almanacs' convention). */
const SUNSET_RAD = (-50 / 60) * DEG;

export interface Night {
  readonly lessonMs: number;
  readonly leastMs: number;
  readonly mostMs: number;
}

/** From the lesson's hour back and on, step by step, until the Sun is up. */
export function nightHours({ place, time }: Pick<Lesson, "place" | "time">): Night {
  const lessonMs = Date.parse(time);
  const isNight = (utcMs: number) => altAzFromDir(horizonFromIcrs(place, utcMs), sunDir(utcMs)).altRad < SUNSET_RAD;
  const asFarAs = (stepMs: number) => {
    let steps = 0;
    while (steps < MOST_STEPS && isNight(lessonMs + (steps + 1) * stepMs)) steps += 1;
    return lessonMs + steps * stepMs;
  };
  return { lessonMs, leastMs: asFarAs(-NIGHT_STEP_MS), mostMs: asFarAs(NIGHT_STEP_MS) };
}

/** Where the Sun stands now, for what is left of twilight. */
export function sunNow(session: Session): Sun {
  const { altRad, azRad } = altAzFromDir(horizonOf(session), sunDir(skyTimeMs(session)));
  return { altitudeRad: altRad, azimuthRad: azRad };
}

/** What limits the view right now: the way from the best view of an instrument to this one, cause by cause. */
import type { Dir } from "#core/seams/index.ts";
import { type Conditions, type Observer, skyHere } from "./conditions.ts";
import { type Optics, starLimits } from "./instrument.ts";
import { FIELD_FACTOR } from "./threshold.ts";

export type Costs = Readonly<Record<"skyGlow" | "moon" | "twilight" | "altitude" | "optics" | "eye", number>>;

/** The darkest natural sky (common value), air without blur, and the keenest young eye. */
const BEST_SKY_MU = 22;
const KEEN_YOUNG: Observer = { fieldFactor: FIELD_FACTOR.keen, pupilMm: 7 };

/**
 * Magnitudes of limit that each cause costs, in this order, each on top of those before: the site's glow (with the Milky
 * Way's), the Moon, twilight, the altitude, the optics (lost light, obstruction, a star's width at this power), the eye
 * (practice, pupil, one eye for two). They add up to the whole way from the best view, so what comes later costs less where
 * the sky is bright already; a narrow pupil alone can bring a gain, as the field factor is that of the eye as it is.
 */
export function costsOf(optics: Optics, now: Conditions, dir: Dir): Costs {
  const zenithDir = now.zenith ?? dir;
  const ideal: Optics = { ...optics, transmission: 1, obstructionMm: 0, eyes: 2 };
  let conditions: Conditions = {
    ...now,
    darknessMu: Math.max(BEST_SKY_MU, now.darknessMu),
    sunAltDeg: -90,
    moon: null,
    seeingArcsec: 0,
    observer: KEEN_YOUNG,
    glowMuAt: undefined,
  };
  let glass = ideal;
  let place = zenithDir;
  const limit = () => starLimits(glass, conditions, skyHere(conditions, place)).avertedMag;
  let before = limit();
  const step = (change: Partial<Conditions>) => {
    conditions = { ...conditions, ...change };
    const after = limit();
    const cost = before - after;
    before = after;
    return cost;
  };
  // The Milky Way's light is that of the place in view, wherever it is thought to stand.
  const glowMuAt = now.glowMuAt && (() => now.glowMuAt!(dir));
  const skyGlow = step({ darknessMu: now.darknessMu, glowMuAt });
  const moon = step({ moon: now.moon });
  const twilight = step({ sunAltDeg: now.sunAltDeg });
  place = dir;
  const altitude = step({});
  glass = { ...optics, eyes: 2 };
  const lost = step({ seeingArcsec: now.seeingArcsec });
  glass = optics;
  const eye = step({ observer: now.observer });
  return { skyGlow, moon, twilight, altitude, optics: lost, eye };
}

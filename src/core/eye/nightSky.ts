/** A night as a page shows it: what is seen, how bright the sky is at the eye, and what limits the view. */
import { dot } from "#core/celestial/vector.ts";
import { gearById } from "#core/optics/gear.ts";
import type { Dir, GearId, Seeing, SkyObject } from "#core/seams/index.ts";
import { scintillation } from "./air.ts";
import { type Conditions, skyHere } from "./conditions.ts";
import { type Costs, costsOf } from "./costs.ts";
import { type EyeSeeingOptions, eyeSeeing, type Place, placeConditions } from "./eyeSeeing.ts";
import { atTheEye } from "./instrument.ts";
import { log10 } from "./light.ts";
import { atHeight, contrastTable, lossTable } from "./lowAir.ts";
import { starWidthArcsec } from "./starImage.ts";

export interface NightSky {
  readonly seeing: Seeing;
  /** The zenith without the Milky Way: the site's night with Moon and twilight, mag/arcsec2. */
  readonly zenithMu: number;
  /** What limits the view at a direction, magnitudes of limit by cause. @throws InputError for an unknown instrument */
  costs(dir: Dir, gear: GearId): Costs;
  /** How bright the sky lies before the eye at the instrument, mag/arcsec2. @throws InputError for an unknown instrument */
  atTheEyeMu(dir: Dir, gear: GearId): number;
  /** Width of a star's image on the sky, arcsec; 0 where the eye takes it for a point. @throws InputError for an unknown instrument */
  starWidthArcsec(dir: Dir, gear: GearId): number;
  /** By how much a star falls behind the limit at a height, as `lowAir.ts` has it. */
  readonly lossMilliMag: ArrayLike<number>;
  /** What is left of a glow's contrast with the night at a height, likewise. */
  readonly glowContrast: ArrayLike<number>;
  /** The same at a direction, 0.001 mag. */
  lossMilliMagAt(dir: Dir): number;
  /** Scintillation in an instrument at the zenith, rms share; it grows as X^1.5. @throws InputError for an unknown instrument */
  zenithScatter(gear: GearId): number;
}

/** The night of a place at an instant, Sun and Moon where they stand, for a typical observer. Pure. */
export function nightAt(
  place: Place,
  utcMs: number,
  objects: readonly SkyObject[],
  options?: EyeSeeingOptions,
): NightSky {
  return nightUnder(placeConditions(place, utcMs, options), place.heightM, objects, options);
}

/** The night of given conditions at a height above the sea. Pure. */
export function nightUnder(
  conditions: Conditions,
  heightM: number,
  objects: readonly SkyObject[],
  options?: EyeSeeingOptions,
): NightSky {
  const zenith = conditions.zenith ?? ([0, 0, 1] as const);
  const lossMilliMag = lossTable(conditions);
  return {
    zenithMu: skyHere({ ...conditions, glowMuAt: undefined }, zenith).skyMu,
    seeing: eyeSeeing(conditions, objects, options),
    costs: (dir, gear) => costsOf(gearById(gear), conditions, dir),
    atTheEyeMu(dir, gear) {
      const { skyMu } = skyHere(conditions, dir);
      return skyMu - 2.5 * log10(atTheEye(gearById(gear), conditions.observer, skyMu).dimming);
    },
    starWidthArcsec: (dir, gear) =>
      starWidthArcsec(gearById(gear), conditions.seeingArcsec, skyHere(conditions, dir).airMass),
    lossMilliMag,
    glowContrast: contrastTable(conditions),
    lossMilliMagAt: (dir) => Math.round(atHeight(lossMilliMag, dot(conditions.zenith ?? dir, dir))),
    zenithScatter: (gear) => scintillation(gearById(gear).apertureMm, 1, heightM),
  };
}

/** Where, when and whose eye: what a limit depends on besides the instrument. */
import { kastenYoung } from "#core/celestial/airmass.ts";
import { moonDir, sunDir } from "#core/celestial/bodies.ts";
import { exactExp } from "#core/celestial/exactMath.ts";
import { altAzFromDir, horizonFromIcrs, type Site, zenithDir } from "#core/celestial/frames.ts";
import { moonPhaseAngleRad } from "#core/celestial/moonPhase.ts";
import { saemundssonDeg } from "#core/celestial/refraction.ts";
import { DEG, dirFromMas, dot, masFromDir, separationRad } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { extinctionOfHeight } from "./air.ts";
import { nanolambertOfMu } from "./light.ts";
import { degOfDot, moonNl, muOfSum, nightNl, twilightNl } from "./skyLight.ts";
import { FIELD_FACTOR } from "./threshold.ts";

export type Observer = {
  /** How much more light than a laboratory's 50 % is asked for: 2.4 novice, 2 typical, 1.4 keen. */
  readonly fieldFactor: number;
  /** Width of the dark-adapted pupil. */
  readonly pupilMm: number;
};
export type MoonNow = { readonly dir: Dir; readonly altDeg: number; readonly phaseDeg: number };
export interface Conditions {
  /** The site's moonless night at the zenith, mag/arcsec2. */
  readonly darknessMu: number;
  /** V, mag per air mass. */
  readonly extinction: number;
  /** The zenith, ICRS; null where everything is taken to stand there. */
  readonly zenith: Dir | null;
  /** Degrees; -90 where no Sun is meant. */
  readonly sunAltDeg: number;
  readonly moon: MoonNow | null;
  /** Width of a star's image at the zenith, arcsec. */
  readonly seeingArcsec: number;
  readonly observer: Observer;
  /** Light of the Milky Way at a direction, as it would be at the zenith, mag/arcsec2, where a map is given. */
  readonly glowMuAt?: ((dir: Dir) => number) | undefined;
}
/** The sky at one place: how it is lit, and what the air takes. */
export type SkyHere = {
  readonly airMass: number;
  /** Extinction beyond that of the zenith, mag: what the zenith takes is inside the field factor. */
  readonly lossMag: number;
  readonly skyMu: number;
  readonly altitudeDeg: number;
};

/** Dark-adapted pupil by age (Schaefer 1990, eq. 5): 20 years 6.9, 40 years 6.5, 60 years 5.8 mm. */
export const pupilOfAge = (years: number): number => 7 * exactExp(-0.5 * (years / 100) * (years / 100));

export const TYPICAL_OBSERVER: Observer = { fieldFactor: FIELD_FACTOR.typical, pupilMm: pupilOfAge(40) };
/** Common for amateurs' sites (common practice, no source). */
const COMMON_SEEING_ARCSEC = 2.5;
/** Directions from the engine's own sine are kept to a second of arc, altitudes to 0.001 degree: so all engines agree. */
const GRAIN_MAS = 1000;

function coarse(dir: Dir): Dir {
  const { raMas, decMas } = masFromDir(dir);
  return dirFromMas({
    raMas: Math.round(raMas / GRAIN_MAS) * GRAIN_MAS,
    decMas: Math.round(decMas / GRAIN_MAS) * GRAIN_MAS,
  });
}
const thousandth = (deg: number) => Math.round(deg * 1000) / 1000;

/** Nothing but a dark sky of a brightness, everything at the zenith. */
export const zenithConditions = (darknessMu: number, observer: Observer = TYPICAL_OBSERVER): Conditions => ({
  darknessMu,
  extinction: extinctionOfHeight(0),
  zenith: null,
  sunAltDeg: -90,
  moon: null,
  seeingArcsec: COMMON_SEEING_ARCSEC,
  observer,
});

/** The conditions of a site at an instant. */
export function conditionsAt(
  darknessMu: number,
  site: Site,
  utcMs: number,
  observer: Observer = TYPICAL_OBSERVER,
): Conditions {
  const horizon = horizonFromIcrs(site, utcMs);
  const [sun, moon] = [coarse(sunDir(utcMs)), coarse(moonDir(site, utcMs))];
  const altDeg = (dir: Dir) => thousandth(altAzFromDir(horizon, dir).altRad / DEG);
  return {
    ...zenithConditions(darknessMu, observer),
    extinction: extinctionOfHeight(site.heightM),
    zenith: coarse(zenithDir(horizon)),
    sunAltDeg: altDeg(sun),
    moon: {
      dir: moon,
      altDeg: altDeg(moon),
      phaseDeg: thousandth(moonPhaseAngleRad(separationRad(sun, moon)) / DEG),
    },
  };
}

/** The apparent altitude of a true one, 0 to 90 degrees. */
export const apparentAltDeg = (trueDeg: number): number =>
  Math.min(90, Math.max(0, trueDeg < 89 ? trueDeg + saemundssonDeg(trueDeg) : trueDeg));
/** Extinction beyond that of the zenith, mag. @param extinction V, mag per air mass */
export const lossMagOf = (extinction: number, airMass: number): number => extinction * Math.max(0, airMass - 1);

/** The sky at a direction (ICRS). Below the horizon it is as at the horizon. */
export function skyHere(now: Conditions, dir: Dir): SkyHere {
  const trueDeg = now.zenith ? 90 - degOfDot(dot(now.zenith, dir)) : 90;
  const altitudeDeg = apparentAltDeg(trueDeg);
  const airMass = kastenYoung(altitudeDeg);
  const zenithRad = (90 - altitudeDeg) * DEG;
  const lights = [nightNl(now.darknessMu, zenithRad, now.extinction), twilightNl(now.sunAltDeg)];
  if (now.moon) {
    const { phaseDeg, altDeg, dir: moon } = now.moon;
    const above = { phaseDeg, zenithDeg: 90 - altDeg, separationDeg: degOfDot(dot(moon, dir)) };
    lights.push(moonNl(above, zenithRad, now.extinction));
  }
  const lossMag = lossMagOf(now.extinction, airMass);
  // The other lights are of the air, which makes or scatters them; this comes from beyond, and the air takes of it as of a star.
  if (now.glowMuAt) lights.push(nanolambertOfMu(now.glowMuAt(dir) + lossMag));
  const skyMu = lights.length === 2 && !now.zenith && lights[1] === 0 ? now.darknessMu : muOfSum(lights);
  return { airMass, lossMag, skyMu, altitudeDeg: Math.max(-90, trueDeg) };
}

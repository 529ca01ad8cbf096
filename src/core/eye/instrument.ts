/** Stars in an instrument: how it dims the sky and gathers light (Crumey 2014, MNRAS 442, 2600, eq. 65 to 73). */
import { AVERAGE_BV } from "#core/celestial/magnitude.ts";
import type { Gear } from "#core/seams/index.ts";
import { seeingArcsec } from "./air.ts";
import type { Conditions, Observer, SkyHere } from "./conditions.ts";
import { candelaOfMu, log10, magOfLux, muOfCandela } from "./light.ts";
import { coneLimitMag, pointLux } from "./threshold.ts";

export type Optics = Pick<Gear, "kind" | "apertureMm" | "magnification" | "obstructionMm" | "transmission" | "eyes">;
/** An instrument at an eye, and what the eye asks for there. */
export type AtTheEye = {
  /** What is left of every luminance, sky and nebula alike. */
  readonly dimming: number;
  readonly magnification: number;
  readonly fieldFactor: number;
};

/** A star's image wider than this at the eye is no point any more, arcsec (Schaefer 1990, PASP 102, 212, eq. 7). */
const POINT_ARCSEC = 900;
/** How limits move with a star's colour away from the average one (Crumey 2014, eq. 7, 13, 16, 18). */
const PER_BV = 0.27;
/** Staring straight at a thing costs so much at most (common practice, no source). */
const DIRECT_LOSS_MAG = 1.5;

export const isNaked = ({ kind }: Pick<Gear, "kind">): boolean => kind === "eye" || kind === "sight";

/**
 * Glare and poor adaptation under lit skies ask the naked eye for more light: fitted, so that its limit under skies of 16 to
 * 18 lies between the cone branch of Schaefer 1990 and observers' tables (common practice, no source).
 */
export const litFactor = (skyMu: number): number => 1 + 0.3 * Math.min(2, Math.max(0, 20 - skyMu));

/** The instrument at an observer's eye under a sky (Crumey 2014, eq. 65 to 70). One eye sees worse by root 2. */
export function atTheEye(optics: Optics, { pupilMm, fieldFactor }: Observer, skyMu: number): AtTheEye {
  const eyes = optics.eyes === 1 ? Math.SQRT2 : 1;
  if (isNaked(optics)) return { dimming: 1, magnification: 1, fieldFactor: fieldFactor * eyes * litFactor(skyMu) };
  const { apertureMm, magnification, obstructionMm, transmission } = optics;
  const exitMm = apertureMm / magnification;
  const used = Math.min(exitMm, pupilMm);
  const shaded = Math.min(used, (obstructionMm / apertureMm) * exitMm);
  const dimming = (transmission * (used * used - shaded * shaded)) / (pupilMm * pupilMm);
  return { dimming, magnification, fieldFactor: fieldFactor * eyes };
}

/** Limits of an instrument for a star of a colour at a place of the sky, V; `direct` never passes `averted`. */
export function starLimits(
  optics: Optics,
  { observer, seeingArcsec: zenithArcsec }: Pick<Conditions, "observer" | "seeingArcsec">,
  { skyMu, airMass, lossMag }: SkyHere,
  colourBV = AVERAGE_BV,
): { readonly avertedMag: number; readonly directMag: number } {
  const { dimming, magnification, fieldFactor } = atTheEye(optics, observer, skyMu);
  const seen = candelaOfMu(skyMu) * dimming;
  const gathering = dimming * magnification * magnification;
  const spread = (seeingArcsec(zenithArcsec, airMass) * magnification) / POINT_ARCSEC;
  const blur = !isNaked(optics) && spread > 1 ? Math.sqrt(spread) : 1;
  const shift = -lossMag + PER_BV * (AVERAGE_BV - colourBV);
  const avertedMag = magOfLux((fieldFactor * blur * pointLux(seen)) / gathering) + shift;
  const eyes = optics.eyes === 1 ? Math.SQRT2 : 1;
  const coneMag = coneLimitMag(muOfCandela(seen)) + 2.5 * log10(gathering / (blur * eyes)) + shift;
  return { avertedMag, directMag: Math.min(avertedMag, Math.max(coneMag, avertedMag - DIRECT_LOSS_MAG)) };
}

/** The limit that more magnification nears as the field grows black, V (Crumey 2014, eq. 73: one eye, pupil 7 mm, transmission 0.75). */
export const darkFieldLimitMag = (apertureMm: number, fieldFactor: number): number =>
  5 * log10(apertureMm / 10) + 8.45 - 2.5 * log10(fieldFactor);

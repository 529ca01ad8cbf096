/**
 * A model of dark adaptation, put together from parts: cones recover within minutes, rods follow at a steady pace on a
 * logarithmic scale. Real eyes gain about 0.2 mag more over the next 10 to 20 minutes (from memory), which is left out.
 */
import { exactExp } from "#core/celestial/exactMath.ts";
import { nakedLimitMag } from "./threshold.ts";

/** Rods after full bleach stand so far above their best, log units (after Pugh 1975, J. Physiol. 248, 413). */
const BLEACHED_LOG = 3.6;
/** Log units a minute (Lamb & Pugh 2004, Prog. Retin. Eye Res. 23, 307, from memory). */
const RODS_PER_MIN = 0.24;
/** Best naked-eye limit before no background at all, for a field factor of 2. */
const BLACK_LIMIT_MAG = 7.61;
/** Cones: their best, what a bleach takes, and the time in which it fades (fitted). */
const CONES = { bestMag: 4.3, lossMag: 2.5, fadeMin: 1.5 } as const;

/** Minutes before rods begin to recover (fitted): after daylight or a white screen, and after dim indoor light. */
export const ROD_DELAY_MIN = { daylight: 8, indoors: 0 } as const;

/** How far rods stand above their best, log units, so many minutes after the light went out. */
export const rodElevation = (minutes: number, delayMin: number): number =>
  Math.max(0, BLEACHED_LOG - RODS_PER_MIN * Math.max(0, minutes - delayMin));

/** Naked-eye limit, V, of a typical observer so many minutes into the dark. */
export function adaptingLimitMag(minutes: number, delayMin: number, skyMu: number, fieldFactor = 2): number {
  const rods = Math.min(nakedLimitMag(skyMu, fieldFactor), BLACK_LIMIT_MAG - 2.5 * rodElevation(minutes, delayMin));
  const cones = CONES.bestMag - CONES.lossMag * exactExp(-Math.max(0, minutes) / CONES.fadeMin);
  return Math.max(rods, cones);
}

/** What the eye lacks now against its best, mag: 0 when it is adapted. Subtract it from any instrument's limit. */
export const adaptationLossMag = (minutes: number, delayMin: number, skyMu: number): number =>
  Math.max(0, nakedLimitMag(skyMu, 2) - adaptingLimitMag(minutes, delayMin, skyMu));

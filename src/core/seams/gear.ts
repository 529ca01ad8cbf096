/** The seams of instruments, mounts and of what is seen. */
import type { Dir } from "./sky.ts";

export type GearId = string;
export type GearKind = "eye" | "sight" | "binocular" | "finder" | "eyepiece";
/**
 * How the light goes, which alone decides the image: `direct` (eye, sight, binocular, erecting straight finder), `halfTurn`
 * (straight finder or refractor without diagonal), `mirrorDiagonal` (one reflection), `erectingDiagonal` (two reflections in
 * a roof), `newtonian` (two mirrors, eyepiece at the side).
 */
export type LightPath = "direct" | "halfTurn" | "mirrorDiagonal" | "erectingDiagonal" | "newtonian";
export interface Gear {
  readonly id: GearId;
  readonly kind: GearKind;
  readonly apertureMm: number;
  readonly magnification: number;
  /** True field: full width of the field stop on the sky, degrees. */
  readonly fieldDeg: number;
  readonly path: LightPath;
  /** Where the eyepiece stands, seen facing the sky: clockwise from the top of the tube, degrees. */
  readonly clockDeg: number;
  readonly obstructionMm: number;
  readonly transmission: number;
  /** 1 or 2. */
  readonly eyes: 1 | 2;
}
/** Flip x if parity is -1, then turn clockwise by rotationRad, starting from the direct view with the zenith up. */
export type Orientation = { readonly parity: 1 | -1; readonly rotationRad: number };
export type MountKind = "altazimuth" | "equatorial";
/** Axis readings: azimuth (from north by east) and altitude, or hour angle (west positive) and declination; das. */
export type Pose = { readonly mount: MountKind; readonly axis1Das: number; readonly axis2Das: number };
/** Upright, or the head turned along with the eyepiece. */
export type Stance = "upright" | "withEyepiece";
/** margin > +0.4, within, below -0.4 mag. */
export type Band = "seen" | "edge" | "not";
export interface Seeing {
  readonly version: number;
  /** Free gaze reaches the averted limit; a thing stared at is seen at the direct one. */
  star(dir: Dir, colourBV: number, gear: GearId): { readonly avertedMilliMag: number; readonly directMilliMag: number };
  object(
    objectId: string,
    gear: GearId,
  ): { readonly marginMilliMag: number; readonly band: Band; readonly bestMagnification: number };
}

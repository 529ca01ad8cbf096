/** A map of the Milky Way's glow: one byte for each HEALPix pixel, nested, and its light at any direction. */
import { pixelCentre, pixelsInCone } from "#core/celestial/healpix.ts";
import { DEG, dot } from "#core/celestial/vector.ts";
import { DataFileError } from "#core/seams/errors.ts";
import type { Dir } from "#core/seams/index.ts";
import { lightOfMu, muOfLight } from "./faintLight.ts";

/** Brightness of the light of faint stars at a direction, mag/arcsec2. */
export type GlowMuAt = (dir: Dir) => number;

/** 3.7 degrees a side: the light changes little on less. */
export const GLOW_ORDER = 4;
export const GLOW_PIXELS = 12 << (2 * GLOW_ORDER);
/** A byte counts from here in these steps, mag/arcsec2. */
const BRIGHTEST_MU = 19;
const STEP_MU = 0.025;
/** Cells within this of a direction have a say: so the light changes softly from cell to cell. */
const REACH_RAD = 4.5 * DEG;
/** Where the poles' own light is taken from. */
const POLE_LATITUDE_SINE = 0.94;
/** Light so faint that it counts as none. */
const NO_LIGHT_MU = 99;

export const glowByte = (mu: number): number => Math.min(255, Math.max(0, Math.round((mu - BRIGHTEST_MU) / STEP_MU)));
const muOfByte = (byte: number): number => BRIGHTEST_MU + STEP_MU * byte;

/** North galactic pole, ICRS (The Hipparcos and Tycho Catalogues 1997, vol. 1, sect. 1.5.3: 192.85948, +27.12825 degrees). */
export const GALACTIC_POLE: Dir = [-0.8676661358, -0.1980763734, 0.4559837762];

/**
 * Weights that fall softly to nothing at a distance from a direction.
 * @param each gets a pixel and its weight
 */
export function nearPixels(
  order: number,
  dir: Dir,
  reachRad: number,
  pixels: number[],
  each: (pixel: number, weight: number) => void,
): void {
  for (const pixel of pixelsInCone(order, dir, reachRad, pixels)) {
    const share = (2 * (1 - dot(dir, pixelCentre(order, pixel)))) / (reachRad * reachRad);
    if (share < 1) each(pixel, (1 - share) * (1 - share));
  }
}

/** The map's own light, mag/arcsec2. @throws DataFileError where the map has not one byte a pixel */
export function glowOfMap(bytes: Uint8Array): GlowMuAt {
  if (bytes.length !== GLOW_PIXELS) {
    throw new DataFileError(`The map of the Milky Way's light has ${bytes.length} bytes`, "Make it anew.");
  }
  const lights = Float64Array.from({ length: 256 }, (_, byte) => lightOfMu(muOfByte(byte)));
  const pixels: number[] = [];
  return (dir) => {
    let light = 0;
    let total = 0;
    nearPixels(GLOW_ORDER, dir, REACH_RAD, pixels, (pixel, weight) => {
      light += weight * lights[bytes[pixel]!]!;
      total += weight;
    });
    return muOfLight(light / total);
  };
}

/** Mean light about the galactic poles, mag/arcsec2. */
export function poleMu(glow: GlowMuAt, pole: Dir): number {
  let light = 0;
  let count = 0;
  for (let pixel = 0; pixel < 12 << 6; pixel++) {
    const dir = pixelCentre(3, pixel);
    if (Math.abs(dot(dir, pole)) < POLE_LATITUDE_SINE) continue;
    light += lightOfMu(glow(dir));
    count += 1;
  }
  return muOfLight(light / count);
}

/** What a glow adds to a night whose own measure was taken away from the Milky Way, and so holds the poles' light already. */
export function glowBeyond(glow: GlowMuAt, nightHoldsMu: number): GlowMuAt {
  const held = lightOfMu(nightHoldsMu);
  return (dir) => {
    const light = lightOfMu(glow(dir)) - held;
    return light > 0 ? Math.min(NO_LIGHT_MU, muOfLight(light)) : NO_LIGHT_MU;
  };
}

/** The map of the catalogue sky's glow, from what its stars say of those too faint for it. */
import { exactAsin, exactLog, exactPow10 } from "#core/celestial/exactMath.ts";
import { pixelCentre, pixelOf } from "#core/celestial/healpix.ts";
import { DEG, dot } from "#core/celestial/vector.ts";
import type { StarBlock } from "#core/seams/index.ts";
import { faintLightPerStar, MEASURED_MAG, muOfLight } from "./faintLight.ts";
import { GALACTIC_POLE, GLOW_ORDER, GLOW_PIXELS, glowByte, nearPixels } from "./glowMap.ts";

/** Brighter stars are seen singly by the naked eye. */
const SINGLE_MAG = 6.5;
/** The slope at V 11 is told by the stars to here. */
const SLOPE_FROM_MAG = 9.5;
/** Counts are evened out over this, their slope, which is noisier, over that. */
const COUNT_REACH_RAD = 4 * DEG;
const SLOPE_REACH_RAD = 10 * DEG;
/** Half the way between the two limits of the slope, from V 11: the slope falls on the way. */
const SLOPE_LAG = 0.011;
const PIXEL_SQ_DEG = 41252.96 / GLOW_PIXELS;

type Counts = { readonly to11: Float64Array; readonly to95: Float64Array; readonly light: Float64Array };

function countsOf(blocks: Iterable<StarBlock>): Counts {
  const counts = {
    to11: new Float64Array(GLOW_PIXELS),
    to95: new Float64Array(GLOW_PIXELS),
    light: new Float64Array(GLOW_PIXELS),
  };
  for (const { count, dirs, milliMag } of blocks) {
    for (let i = 0; i < count && milliMag[i]! <= MEASURED_MAG * 1000; i++) {
      const pixel = pixelOf(GLOW_ORDER, [dirs[3 * i]!, dirs[3 * i + 1]!, dirs[3 * i + 2]!]);
      const mag = milliMag[i]! / 1000;
      counts.to11[pixel]! += 1;
      if (mag <= SLOPE_FROM_MAG) counts.to95[pixel]! += 1;
      if (mag > SINGLE_MAG) counts.light[pixel]! += exactPow10(-0.4 * mag);
    }
  }
  return counts;
}

function smoothed(values: Float64Array, reachRad: number): Float64Array {
  const pixels: number[] = [];
  return values.map((_, pixel) => {
    let sum = 0;
    let total = 0;
    nearPixels(GLOW_ORDER, pixelCentre(GLOW_ORDER, pixel), reachRad, pixels, (near, weight) => {
      sum += weight * values[near]!;
      total += weight;
    });
    return sum / total;
  });
}

/**
 * One byte a pixel. Stars between V 6.5 and 11 give their own light; those beyond follow from the count to V 11 and from how
 * steeply it grows there, region by region. Dust clouds smaller than some degrees come out too bright.
 * @param blocks the whole catalogue sky, V 11 and brighter at least
 */
export function measureGlow(blocks: Iterable<StarBlock>): Uint8Array<ArrayBuffer> {
  const { to11, to95, light } = countsOf(blocks);
  const [wide11, wide95] = [smoothed(to11, SLOPE_REACH_RAD), smoothed(to95, SLOPE_REACH_RAD)];
  const [near11, nearLight] = [smoothed(to11, COUNT_REACH_RAD), smoothed(light, COUNT_REACH_RAD)];
  return Uint8Array.from({ length: GLOW_PIXELS }, (_, pixel) => {
    const latitudeDeg = exactAsin(Math.abs(dot(pixelCentre(GLOW_ORDER, pixel), GALACTIC_POLE))) / DEG;
    const mean = exactLog(wide11[pixel]! / wide95[pixel]!) / Math.LN10 / (MEASURED_MAG - SLOPE_FROM_MAG);
    const faint = near11[pixel]! * faintLightPerStar(latitudeDeg, mean - SLOPE_LAG);
    return glowByte(muOfLight((nearLight[pixel]! + faint) / PIXEL_SQ_DEG));
  });
}

/** The glow of a practice sky: what its own counts give, by place in its own galaxy. */
import { exactLog, exactPow10 } from "#core/celestial/exactMath.ts";
import type { Dir } from "#core/seams/index.ts";
import { darkClouds, type SeeThrough } from "../darkClouds.ts";
import { galacticPlace } from "../practice/density.ts";
import { frameOf } from "../practice/frame.ts";
import { longitudeFactor, longitudeTable } from "../practice/longitudes.ts";
import { planOf } from "../practice/plan.ts";
import { seedOf } from "../practice/seed.ts";
import { countsAt, countTable } from "../practice/starCounts.ts";
import { faintLightPerStar, MEASURED_MAG, muOfLight } from "./faintLight.ts";
import { type GlowMuAt, glowBeyond } from "./glowMap.ts";

const LATITUDES = 91;
/** From the naked eye's limit to where counts end. */
const COUNTS = countTable(6.5, 11);

let lights: Float64Array | undefined;

/** Light at |b| of 0, 1 .. 90 degrees, stars of V = 0 a square degree. */
function lightsByLatitude(): Float64Array {
  const perSqDeg = new Float64Array(COUNTS.mags.length);
  lights ??= Float64Array.from({ length: LATITUDES }, (_, latitudeDeg) => {
    countsAt(COUNTS, latitudeDeg, perSqDeg);
    return lightOfCounts(latitudeDeg, perSqDeg);
  });
  return lights;
}

function lightOfCounts(latitudeDeg: number, perSqDeg: Float64Array): number {
  const { mags } = COUNTS;
  const last = mags.length - 1;
  let light = 0;
  for (let i = 0; i < last; i++) {
    light += (perSqDeg[i + 1]! - perSqDeg[i]!) * exactPow10(-0.4 * ((mags[i]! + mags[i + 1]!) / 2));
  }
  const slope = exactLog(perSqDeg[last]! / perSqDeg[last - 1]!) / Math.LN10 / (mags[last]! - mags[last - 1]!);
  return light + perSqDeg[last]! * faintLightPerStar(latitudeDeg, slope);
}

/** Where no cloud stands. */
const CLEAR: SeeThrough = () => 1;

/**
 * Light of faint stars in the sky of a seed word, mag/arcsec2: by its own galactic latitude and longitude; its smaller hills
 * and hollows are left out.
 * @param seeThrough what its dark nebulae leave of it; a picture whose cells are larger than they are has none
 * @throws InputError where it is no seed word
 */
export function practiceGlow(seedWord: string, seeThrough: SeeThrough = darkClouds(planOf(seedWord).wild)): GlowMuAt {
  const frame = frameOf(seedOf(seedWord));
  const byLatitude = lightsByLatitude();
  const longitudes = longitudeTable(MEASURED_MAG);
  const place = { latDeg: 0, lonDeg: 0 };
  return (dir: Dir) => {
    galacticPlace(frame, dir, place);
    const latitudeDeg = Math.abs(place.latDeg);
    const below = Math.min(LATITUDES - 2, Math.floor(latitudeDeg));
    const [low, high] = [byLatitude[below]!, byLatitude[below + 1]!];
    const mean = low + (latitudeDeg - below) * (high - low);
    return muOfLight(mean * longitudeFactor(longitudes, place.latDeg, place.lonDeg) * seeThrough(dir));
  };
}

/**
 * What that adds to a night, whose own measure holds the light of the poles.
 * @param coarse for a picture of cells larger than any dark nebula
 */
export const practiceGlowBeyond = (seedWord: string, coarse = false): GlowMuAt =>
  glowBeyond(practiceGlow(seedWord, coarse ? CLEAR : undefined), muOfLight(lightsByLatitude()[LATITUDES - 1]!));

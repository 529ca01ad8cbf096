/** The glow of a practice sky: what its own counts give, by place in its own galaxy. */
import { exactLog, exactPow10 } from "#core/celestial/exactMath.ts";
import { DEG, offsetDir, TWO_PI } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { darkClouds, type SeeThrough } from "../darkClouds.ts";
import { createDensity, galacticPlace } from "../practice/density.ts";
import { frameOf } from "../practice/frame.ts";
import { planOf } from "../practice/plan.ts";
import { GLOW_RELIEF } from "../practice/relief.ts";
import { seedOf } from "../practice/seed.ts";
import { countsAt, countTable } from "../practice/starCounts.ts";
import { faintLightPerStar, lightOfMu, muOfLight } from "./faintLight.ts";
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

/**
 * Light of faint stars in the sky of a seed word, mag/arcsec2: by its own galactic latitude and longitude, and by the great
 * hills and the lanes of its deep stars.
 * @param seeThrough what dark nebulae leave of it: the sky's own, if nothing else is given
 * @throws InputError where it is no seed word
 */
export function practiceGlow(seedWord: string, seeThrough: SeeThrough = cloudsOf(seedWord)): GlowMuAt {
  const frame = frameOf(seedOf(seedWord));
  const byLatitude = lightsByLatitude();
  const density = createDensity(frame, GLOW_RELIEF);
  const place = { latDeg: 0, lonDeg: 0 };
  return (dir: Dir) => {
    galacticPlace(frame, dir, place);
    const latitudeDeg = Math.abs(place.latDeg);
    const below = Math.min(LATITUDES - 2, Math.floor(latitudeDeg));
    const [low, high] = [byLatitude[below]!, byLatitude[below + 1]!];
    const mean = low + (latitudeDeg - below) * (high - low);
    return muOfLight(mean * density(dir, place) * seeThrough(dir));
  };
}

function cloudsOf(seedWord: string): SeeThrough {
  const { wild, greatClouds } = planOf(seedWord);
  return darkClouds([...wild, ...greatClouds]);
}

/** Places about one that stand for half a cell of the picture on each side: two rings of six, degrees from it. */
const RINGS_DEG = [0.8, 1.6] as const;
const IN_RING = 6;

/** The mean light about a direction: what is smaller than a cell of the picture neither shows as a whole cell nor is lost. */
function softened(glow: GlowMuAt): GlowMuAt {
  return (dir) => {
    let light = lightOfMu(glow(dir));
    for (const ringDeg of RINGS_DEG)
      for (let i = 0; i < IN_RING; i++)
        light += lightOfMu(glow(offsetDir(dir, ((i + ringDeg) / IN_RING) * TWO_PI, ringDeg * DEG)));
    return muOfLight(light / (1 + RINGS_DEG.length * IN_RING));
  };
}

/**
 * What that adds to a night, whose own measure holds the light of the poles.
 * @param coarse for a picture of cells larger than most dark nebulae
 */
export function practiceGlowBeyond(seedWord: string, coarse = false): GlowMuAt {
  const glow = practiceGlow(seedWord);
  return glowBeyond(coarse ? softened(glow) : glow, muOfLight(lightsByLatitude()[LATITUDES - 1]!));
}

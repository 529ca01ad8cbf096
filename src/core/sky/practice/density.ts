/** How full each place of a sky is, beside the mean of its galactic latitude: longitudes, hills and hollows. */
import { exactAsin, exactAtan2, exactCos, exactExp, exactSin } from "#core/celestial/exactMath.ts";
import { mixHash32 } from "#core/celestial/hash.ts";
import { DEG, dot } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { aboveAmong, along, shareAmong } from "./between.ts";
import type { SkyFrame } from "./frame.ts";
import { type LongitudeTable, longitudeFactor, longitudeTable } from "./longitudes.ts";
import { createSkyNoise, type SkyNoise } from "./noise.ts";
import { HILL_LATITUDES_DEG, type Relief } from "./relief.ts";
import { PURPOSE } from "./seed.ts";

/** Galactic latitude -90 to 90 and longitude 0 to 360, degrees, in a seed's own frame. */
export type GalacticPlace = { latDeg: number; lonDeg: number };

/** Writes where a direction lies in a sky's own galaxy. */
export function galacticPlace(frame: SkyFrame, dir: Dir, out: GalacticPlace): void {
  out.latDeg = galacticLatDeg(frame, dir);
  const lonDeg = exactAtan2(dot(dir, frame.galacticQuarter), dot(dir, frame.galacticCentre)) / DEG;
  out.lonDeg = lonDeg < 0 ? lonDeg + 360 : lonDeg;
}

/** Galactic latitude alone, degrees. */
export function galacticLatDeg({ galacticPole }: SkyFrame, dir: Dir): number {
  return exactAsin(Math.max(-1, Math.min(1, dot(dir, galacticPole)))) / DEG;
}

/** Stars at a direction, whose galactic place is given, for one star of the mean over all longitudes. */
export type Density = (dir: Dir, place: GalacticPlace) => number;

/**
 * The density of a relief. Along each parallel of galactic latitude its mean is that of the counted longitudes: what hills
 * add in one place hollows and lanes take in another.
 */
export function createDensity(frame: SkyFrame, relief: Relief): Density {
  const longitudes = longitudeTable(relief.toMag);
  const uneven = unevenness(frame, relief);
  const [step] = relief.meanStepsDeg;
  const raised = raisedBy(frame, longitudes, uneven, relief.meanStepsDeg);
  return (dir, place) => {
    const row = Math.min(raised.length - 2, Math.floor((place.latDeg + 90) / step));
    const mean = raised[row]! + ((place.latDeg + 90) / step - row) * (raised[row + 1]! - raised[row]!);
    return (longitudeFactor(longitudes, place.latDeg, place.lonDeg) * uneven(dir, place)) / mean;
  };
}

function unevenness(frame: SkyFrame, { hills, laneDepth }: Relief): Density {
  const noises = hills.map(({ spacingDeg }, i) =>
    createSkyNoise(mixHash32(frame.hash, PURPOSE.hills, i) | 0, spacingDeg * DEG),
  );
  const lanes = createSkyNoise(mixHash32(frame.hash, PURPOSE.lanes) | 0, LANE_SPACING_DEG * DEG);
  return (dir, { latDeg }) => {
    const absLatDeg = Math.abs(latDeg);
    const above = aboveAmong(HILL_LATITUDES_DEG, absLatDeg);
    const share = shareAmong(HILL_LATITUDES_DEG, above, absLatDeg);
    let sum = 0;
    for (let i = 0; i < hills.length; i++) {
      const variance = along(hills[i]!.variances, above, share);
      if (variance > 0) sum += Math.sqrt(variance) * noises[i]!(dir);
    }
    if (laneDepth > 0 && absLatDeg < LANES_REACH_DEG) sum -= laneDepth * laneAt(lanes, frame, dir, absLatDeg);
    return exactExp(sum);
  };
}

/** Lanes lie along the plane: their pattern is squeezed across it. */
const LANES_REACH_DEG = 14;
const LANE_SPACING_DEG = 11;
const SQUEEZED = 2.2;
/** A lane is where the noise passes near its middle, so that it runs on as a thread. */
const LANE_HALF_WIDTH = 0.6;

const squeezed: [number, number, number] = [0, 0, 0];

/** 1 in the middle of a dark lane, 0 outside. */
function laneAt(lanes: SkyNoise, { galacticPole }: SkyFrame, dir: Dir, absLatDeg: number): number {
  const across = (SQUEEZED - 1) * dot(dir, galacticPole);
  squeezed[0] = dir[0] + across * galacticPole[0];
  squeezed[1] = dir[1] + across * galacticPole[1];
  squeezed[2] = dir[2] + across * galacticPole[2];
  const off = Math.abs(lanes(squeezed)) / LANE_HALF_WIDTH;
  if (off >= 1) return 0;
  const fading = 1 - absLatDeg / LANES_REACH_DEG;
  const near = 1 - off * off;
  return near * near * fading * Math.sqrt(fading);
}

/** By how much an unevenness raises the mean of each parallel, from the south pole on. */
function raisedBy(
  frame: SkyFrame,
  longitudes: LongitudeTable,
  uneven: Density,
  [latStepDeg, lonStepDeg]: Relief["meanStepsDeg"],
): Float64Array {
  return Float64Array.from({ length: 180 / latStepDeg + 1 }, (_, row) => {
    const latDeg = row * latStepDeg - 90;
    let [smooth, rough] = [0, 0];
    for (let lonDeg = 0; lonDeg < 360; lonDeg += lonStepDeg) {
      const place = { latDeg, lonDeg };
      const factor = longitudeFactor(longitudes, latDeg, lonDeg);
      smooth += factor;
      rough += factor * uneven(dirOfGalacticPlace(frame, place), place);
    }
    return rough / smooth;
  });
}

/** The direction of a galactic place. */
export function dirOfGalacticPlace(
  { galacticCentre, galacticQuarter, galacticPole }: SkyFrame,
  place: GalacticPlace,
): Dir {
  const latRad = place.latDeg * DEG;
  const lonRad = place.lonDeg * DEG;
  const [x, y, z] = [exactCos(latRad) * exactCos(lonRad), exactCos(latRad) * exactSin(lonRad), exactSin(latRad)];
  const axis = (i: 0 | 1 | 2) => x * galacticCentre[i] + y * galacticQuarter[i] + z * galacticPole[i];
  return [axis(0), axis(1), axis(2)];
}

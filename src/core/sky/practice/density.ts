/** How full each place of a sky is, beside the mean of its galactic latitude: longitudes, hills and hollows. */
import { exactAsin, exactAtan2, exactCos, exactExp, exactSin } from "#core/celestial/exactMath.ts";
import { mixHash32 } from "#core/celestial/hash.ts";
import { DEG, dot } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { between } from "./between.ts";
import type { SkyFrame } from "./frame.ts";
import { type LongitudeTable, longitudeFactor, longitudeTable } from "./longitudes.ts";
import { skyNoise } from "./noise.ts";
import { PURPOSE } from "./seed.ts";

/** Galactic latitude -90 to 90 and longitude 0 to 360, degrees, in a seed's own frame. */
export type GalacticPlace = { latDeg: number; lonDeg: number };

/** Writes where a direction lies in a sky's own galaxy. */
export function galacticPlace(frame: SkyFrame, dir: Dir, out: GalacticPlace): void {
  out.latDeg = exactAsin(Math.max(-1, Math.min(1, dot(dir, frame.galacticPole)))) / DEG;
  const lonDeg = exactAtan2(dot(dir, frame.galacticQuarter), dot(dir, frame.galacticCentre)) / DEG;
  out.lonDeg = lonDeg < 0 ? lonDeg + 360 : lonDeg;
}

/** One size of hills: how far apart, and the variance of the logarithm at some galactic latitudes. */
export type Hills = { readonly spacingDeg: number; readonly variances: readonly number[] };
/** |b| at which the variances of {@link Hills} are given, straight between. */
export const HILL_LATITUDES_DEG: readonly number[] = [0, 10, 22, 32, 90];

/** Stars at a direction, whose galactic place is given, for one star of the mean over all longitudes. */
export type Density = (dir: Dir, place: GalacticPlace) => number;

const ROW_STEP_DEG = 2;
const ROWS = 180 / ROW_STEP_DEG + 1;
const COLUMNS = 120;

/**
 * The density of stars to a magnitude. Along each parallel of galactic latitude its mean is that of the counted longitudes:
 * what hills add in one place hollows take in another.
 */
export function createDensity(frame: SkyFrame, toMag: number, hills: readonly Hills[]): Density {
  const longitudes = longitudeTable(toMag);
  const seeds = hills.map((_, i) => mixHash32(frame.hash, PURPOSE.hills, i) | 0);
  const uneven: Density = (dir, { latDeg }) => {
    let sum = 0;
    for (let i = 0; i < hills.length; i++) {
      const variance = between(HILL_LATITUDES_DEG, hills[i]!.variances, Math.abs(latDeg));
      if (variance > 0) sum += Math.sqrt(variance) * skyNoise(seeds[i]!, hills[i]!.spacingDeg * DEG, dir);
    }
    return exactExp(sum);
  };
  const raised = raisedBy(frame, longitudes, uneven);
  return (dir, place) => {
    const row = Math.min(ROWS - 2, Math.floor((place.latDeg + 90) / ROW_STEP_DEG));
    const mean = raised[row]! + ((place.latDeg + 90) / ROW_STEP_DEG - row) * (raised[row + 1]! - raised[row]!);
    return (longitudeFactor(longitudes, place.latDeg, place.lonDeg) * uneven(dir, place)) / mean;
  };
}

/** By how much an unevenness raises the mean of each parallel, from the south pole on. */
function raisedBy(frame: SkyFrame, longitudes: LongitudeTable, uneven: Density): Float64Array {
  return Float64Array.from({ length: ROWS }, (_, row) => {
    const latDeg = row * ROW_STEP_DEG - 90;
    let [smooth, rough] = [0, 0];
    for (let column = 0; column < COLUMNS; column++) {
      const place = { latDeg, lonDeg: (column * 360) / COLUMNS };
      const factor = longitudeFactor(longitudes, latDeg, place.lonDeg);
      smooth += factor;
      rough += factor * uneven(dirOfGalacticPlace(frame, place), place);
    }
    return rough / smooth;
  });
}

function dirOfGalacticPlace({ galacticCentre, galacticQuarter, galacticPole }: SkyFrame, place: GalacticPlace): Dir {
  const latRad = place.latDeg * DEG;
  const lonRad = place.lonDeg * DEG;
  const [x, y, z] = [exactCos(latRad) * exactCos(lonRad), exactCos(latRad) * exactSin(lonRad), exactSin(latRad)];
  const axis = (i: 0 | 1 | 2) => x * galacticCentre[i] + y * galacticQuarter[i] + z * galacticPole[i];
  return [axis(0), axis(1), axis(2)];
}

/** Stars of the ladder: the sky about the pointing, zenith up, correct image, a log scale of distance. */
import { cross, DEG, dot, normalise } from "#core/celestial/vector.ts";
import type { Dir, StarBlock } from "#core/seams/index.ts";
import type { LadderStar } from "./model.ts";

/** Faintest star by distance: the wider, the brighter. */
const DEPTHS: readonly { readonly beyondDeg: number; readonly magV: number }[] = [
  { beyondDeg: 25, magV: 2.6 },
  { beyondDeg: 2.65, magV: 4.4 },
  { beyondDeg: 0.55, magV: 7.6 },
  { beyondDeg: 0, magV: 9 },
];
const MOST = 260;
const DEEPEST_MILLI_MAG = 7600;

const depthAt = (awayDeg: number) => DEPTHS.find(({ beyondDeg }) => awayDeg >= beyondDeg)!.magV;

/** The brightest stars of the blocks, placed about a pointing; none that the instrument does not show. */
export function ladderStarsOf(
  blocks: readonly StarBlock[],
  pointing: Dir,
  zenith: Dir,
  limitMag: number,
): LadderStar[] {
  const rise = dot(zenith, pointing);
  const up = normalise([
    zenith[0] - rise * pointing[0],
    zenith[1] - rise * pointing[1],
    zenith[2] - rise * pointing[2],
  ]);
  const right = cross(pointing, up);
  const stars: LadderStar[] = [];
  const limitMilliMag = Math.min(DEEPEST_MILLI_MAG, 1000 * limitMag);
  for (const { dirs, milliMag, count, invented } of blocks) {
    if (invented) continue;
    for (let i = 0; i < count && milliMag[i]! <= limitMilliMag && stars.length < MOST; i++) {
      const dir: Dir = [dirs[3 * i]!, dirs[3 * i + 1]!, dirs[3 * i + 2]!];
      const awayDeg = Math.acos(Math.min(1, dot(dir, pointing))) / DEG;
      const magV = milliMag[i]! / 1000;
      if (awayDeg > 90 || magV > depthAt(awayDeg)) continue;
      const atDeg = Math.atan2(dot(dir, right), dot(dir, up)) / DEG;
      stars.push({ awayDeg, atDeg, radiusPx: Math.max(0.45, 1.5 - 0.22 * Math.max(0, magV)) });
    }
  }
  return stars;
}

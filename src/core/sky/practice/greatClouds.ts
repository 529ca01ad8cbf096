/** The few dark nebulae of a practice sky that the naked eye sees, as holes in the Milky Way. */
import { exactCos, exactExp, exactLog, roundHalfUp } from "#core/celestial/exactMath.ts";
import { DEG, dot } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { type Chance, createChance } from "./chance.ts";
import { dirOfGalacticPlace } from "./density.ts";
import type { SkyFrame } from "./frame.ts";
import type { WildObject } from "./population.ts";
import { PURPOSE } from "./seed.ts";

/** As many, as large and as near to the plane as the real sky's (from memory: some 3 to 7 degrees long). */
const COUNT = 4;
const MAJOR_ARCMIN = { least: 200, most: 400 } as const;
const AXIS_RATIO = { least: 0.45, most: 0.85 } as const;
const ABS_LAT_DEG = { least: 0.5, most: 6 } as const;
const APART_DEG = 20;
const TRIES = 40;

/**
 * The great clouds of a frame's sky.
 * @param clearOf the middle of a circle that they leave free, with their edges too
 */
export function drawGreatClouds(frame: SkyFrame, clearOf: Dir, clearDeg: number): WildObject[] {
  const chance = createChance(frame.hash, PURPOSE.greatClouds);
  const made: WildObject[] = [];
  while (made.length < COUNT) {
    const { least, most } = MAJOR_ARCMIN;
    const majorArcmin = roundHalfUp(least * exactExp(exactLog(most / least) * chance()));
    const minorArcmin = roundHalfUp(majorArcmin * within(chance, AXIS_RATIO));
    const axisDeg = Math.floor(180 * chance());
    const dir = freePlace(chance, frame, made, clearOf, clearDeg + majorArcmin / 120);
    made.push({ kind: "darkNebula", dir, magV: 99, profile: "uniform", majorArcmin, minorArcmin, axisDeg });
  }
  return made;
}

const within = (chance: Chance, { least, most }: { readonly least: number; readonly most: number }) =>
  least + (most - least) * chance();

function freePlace(chance: Chance, frame: SkyFrame, made: readonly WildObject[], clearOf: Dir, clearDeg: number): Dir {
  const isFree = (dir: Dir) =>
    dot(dir, clearOf) < exactCos(clearDeg * DEG) &&
    made.every((other) => dot(dir, other.dir) < exactCos(APART_DEG * DEG));
  const draw = () => {
    const side = chance() < 0.5 ? -1 : 1;
    return dirOfGalacticPlace(frame, { latDeg: side * within(chance, ABS_LAT_DEG), lonDeg: 360 * chance() });
  };
  let dir = draw();
  for (let i = 0; i < TRIES && !isFree(dir); i++) dir = draw();
  return dir;
}

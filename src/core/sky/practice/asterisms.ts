/** Small figures of a practice sky's own stars, planted so that a person sees them: some as wide as a finder's field. */
import { exactAtan2, exactCos, exactExp, exactLog, roundHalfUp } from "#core/celestial/exactMath.ts";
import { combinedMag } from "#core/celestial/magnitude.ts";
import { DEG, dot, offsetDir } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { ASTERISM_SHAPES, type AsterismShape } from "./asterismShapes.ts";
import { type Chance, createChance, shuffled } from "./chance.ts";
import { drawDir, type SkyStar } from "./frame.ts";
import { planted } from "./plantings.ts";
import type { Free } from "./population.ts";
import { PURPOSE } from "./seed.ts";

export type Asterism = {
  readonly name: string;
  readonly looks: string;
  readonly dir: Dir;
  /** V of all its stars together, to 0.1. */
  readonly magV: number;
  readonly majorArcmin: number;
  readonly minorArcmin: number;
  readonly axisDeg: number;
  readonly stars: readonly SkyStar[];
};

const COUNT = 14;
const SMALLEST_ARCMIN = 14;
const WIDEST_ARCMIN = 150;
/** Middle V of the stars of the widest, and how much fainter those of one half as wide are: small ones want a telescope. */
const WIDEST_MIDDLE_MAG = 5.7;
const FAINTER_BY_HALF_MAG = 0.75;
const SPREAD_MAG = 0.9;
/** Stars stand off their places by up to this, in half lengths. */
const UNEVEN = 0.065;
/** Others and objects stand further off than this, and so do bright stars, in half lengths. */
const APART_DEG = 6;
const FROM_OBJECTS_DEG = 2;
const CLEAR_HALVES = 1.6;
const TRIES = 60;

/** What is there already. */
export type Surroundings = {
  /** Field stars of the bright layer. */
  readonly bright: readonly SkyStar[];
  readonly objects: readonly { readonly dir: Dir }[];
  readonly free: readonly Free[];
};

/** The figures of a sky, in the order of their making; each name is given once. */
export function plantAsterisms(hash: number, around: Surroundings): Asterism[] {
  const chance = createChance(hash, PURPOSE.asterisms);
  const named = ASTERISM_SHAPES.flatMap((shape) => shape.names.map((name) => ({ name, shape })));
  const made: Asterism[] = [];
  shuffled(chance, named)
    .slice(0, COUNT)
    .forEach(({ name, shape }, i) => {
      // From the widest to the smallest, even steps of their logarithm apart.
      const share = (i + chance()) / COUNT;
      const majorArcmin = roundHalfUp(WIDEST_ARCMIN * exactExp(share * exactLog(SMALLEST_ARCMIN / WIDEST_ARCMIN)));
      made.push(figureAt(chance, name, shape, majorArcmin, placeFor(chance, majorArcmin, made, around)));
    });
  return made;
}

/** The first place drawn at which nothing disturbs, or the one where least does. */
function placeFor(chance: Chance, majorArcmin: number, made: readonly Asterism[], around: Surroundings): Dir {
  let best: Dir = [0, 0, 1];
  let fewest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < TRIES && fewest > 0; i++) {
    const dir = drawDir(chance);
    const faults = faultsAt(dir, majorArcmin, made, around);
    if (faults < fewest) [best, fewest] = [dir, faults];
  }
  return best;
}

function faultsAt(dir: Dir, majorArcmin: number, made: readonly Asterism[], { bright, objects, free }: Surroundings) {
  const halfDeg = majorArcmin / 120;
  const near = (list: readonly { readonly dir: Dir }[], deg: number) => {
    const cosine = exactCos(deg * DEG);
    return list.filter((other) => dot(other.dir, dir) > cosine).length;
  };
  const isSpoilt = free.some(({ centre, cosRadius }) => dot(centre, dir) > cosRadius);
  const crowded = near(made, APART_DEG) + near(objects, FROM_OBJECTS_DEG + halfDeg);
  return (isSpoilt ? 1000 : 0) + 10 * crowded + near(bright, CLEAR_HALVES * halfDeg);
}

function figureAt(chance: Chance, name: string, shape: AsterismShape, majorArcmin: number, dir: Dir): Asterism {
  const axisDeg = Math.floor(180 * chance());
  const halvings = exactLog(WIDEST_ARCMIN / majorArcmin) / Math.LN2;
  const middleMag = WIDEST_MIDDLE_MAG + FAINTER_BY_HALF_MAG * halvings;
  const uneven = () => UNEVEN * (2 * chance() - 1);
  const stars = shape.places.map(([along, across]) => {
    const [u, v] = [along + uneven(), across + uneven()];
    const distanceRad = Math.sqrt(u * u + v * v) * (majorArcmin / 120) * DEG;
    const milliMag = roundHalfUp(1000 * (middleMag + SPREAD_MAG * (chance() - 0.5)));
    return planted(offsetDir(dir, axisDeg * DEG + exactAtan2(v, u), distanceRad), milliMag, 1.3 * chance());
  });
  const across = Math.max(...shape.places.map(([, each]) => Math.abs(each)));
  return {
    name,
    looks: shape.looks,
    dir,
    magV: roundHalfUp(10 * combinedMag(stars.map(({ milliMag }) => milliMag / 1000))) / 10,
    majorArcmin,
    minorArcmin: Math.max(1, roundHalfUp(majorArcmin * Math.max(0.1, across))),
    axisDeg,
    stars,
  };
}

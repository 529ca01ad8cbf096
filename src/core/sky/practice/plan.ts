/** The plan of a practice sky: what is made by hand in it. It is the same for a seed whichever tile is asked for first. */
import { pixelOf } from "#core/celestial/healpix.ts";
import { TWO_PI } from "#core/celestial/vector.ts";
import type { TileKey } from "#core/seams/index.ts";
import { type AnchorPlace, drawAnchorPlace } from "./anchorPlace.ts";
import { brightFieldStars } from "./brightStars.ts";
import { createChance } from "./chance.ts";
import { drawFigures, type FigurePlan } from "./figures.ts";
import { frameOf, type SkyFrame, type SkyStar } from "./frame.ts";
import { practiceLayerOf, practiceTileKey } from "./layers.ts";
import { type ClusterPlanting, type GalaxyPlanting, plantCluster, planted, plantGalaxy } from "./plantings.ts";
import { PURPOSE, type Seed, seedOf } from "./seed.ts";
import { drawWords, type SkyWords } from "./words.ts";

const FIGURES = 3;
/** Stars outside every figure that have names of their own reach to this. */
const FAINTEST_NAMED = 1600;

export type SkyPlan = {
  readonly seed: Seed;
  readonly frame: SkyFrame;
  readonly words: SkyWords;
  readonly anchor: SkyStar;
  readonly place: AnchorPlace;
  readonly cluster: ClusterPlanting;
  readonly galaxy: GalaxyPlanting;
  /** The anchor's first. */
  readonly figures: readonly FigurePlan[];
  /** Bright field stars that no figure has. */
  readonly loners: readonly SkyStar[];
  readonly plantedByTile: ReadonlyMap<TileKey, readonly SkyStar[]>;
};

const KEPT = 4;
const kept = new Map<string, SkyPlan>();

/** The plan of a seed word; the last few are kept. @throws InputError where the word is none */
export function planOf(word: string): SkyPlan {
  const seed = seedOf(word);
  const known = kept.get(seed.word);
  if (known) return known;
  const made = makePlan(seed);
  kept.set(seed.word, made);
  if (kept.size > KEPT) kept.delete(kept.keys().next().value!);
  return made;
}

function makePlan(seed: Seed): SkyPlan {
  const frame = frameOf(seed);
  const bright = brightFieldStars(frame);
  const chance = createChance(seed.hash, PURPOSE.plan);
  const clusterTurn = TWO_PI * chance();
  const galaxyTurn = TWO_PI * (0.35 + 0.3 * chance());
  const anchorMag = 1800 + Math.floor(450 * chance());
  const anchorColour = -0.1 + 1.4 * chance();
  const place = drawAnchorPlace(chance, frame, bright);
  const anchor = planted(place.dir, anchorMag, anchorColour);
  const clusterAngle = place.upRad + clusterTurn;
  const plantings = createChance(seed.hash, PURPOSE.cluster);
  const cluster = plantCluster(plantings, anchor.dir, clusterAngle);
  const galaxy = plantGalaxy(plantings, anchor.dir, clusterAngle + galaxyTurn);
  const figures = drawFigures(anchor, bright, FIGURES);
  const taken = new Set(figures.flatMap(({ stars }) => stars));
  return {
    seed,
    frame,
    words: drawWords(createChance(seed.hash, PURPOSE.names)),
    anchor,
    place,
    cluster,
    galaxy,
    figures,
    loners: bright.filter((star) => star.milliMag <= FAINTEST_NAMED && !taken.has(star)),
    plantedByTile: byTile([anchor, ...cluster.pair, ...cluster.members, galaxy.lone, ...galaxy.triangle]),
  };
}

function byTile(stars: readonly SkyStar[]): ReadonlyMap<TileKey, readonly SkyStar[]> {
  const tiles = new Map<TileKey, SkyStar[]>();
  for (const star of stars) {
    const layer = practiceLayerOf(star.milliMag);
    const key = practiceTileKey(layer, pixelOf(layer.order, star.dir));
    const there = tiles.get(key);
    if (there) there.push(star);
    else tiles.set(key, [star]);
  }
  return tiles;
}

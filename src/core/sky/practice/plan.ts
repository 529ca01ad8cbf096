/** The plan of a practice sky: what is made by hand in it. It is the same for a seed whichever tile is asked for first. */

import { exactCos } from "#core/celestial/exactMath.ts";
import { pixelOf } from "#core/celestial/healpix.ts";
import { DEG, TWO_PI } from "#core/celestial/vector.ts";
import type { TileKey } from "#core/seams/index.ts";
import { type AnchorPlace, drawAnchorPlace } from "./anchorPlace.ts";
import { type Asterism, plantAsterisms } from "./asterisms.ts";
import { brightFieldStars } from "./brightStars.ts";
import { createChance } from "./chance.ts";
import { type Constellation, drawConstellations } from "./constellations.ts";
import { type DarkTiles, darkTilesOf } from "./darkTiles.ts";
import { frameOf, type SkyFrame, type SkyStar } from "./frame.ts";
import { drawGreatClouds } from "./greatClouds.ts";
import { practiceLayerOf, practiceTileKey } from "./layers.ts";
import { membersOf } from "./members.ts";
import { type ClusterPlanting, type GalaxyPlanting, plantCluster, planted, plantGalaxy } from "./plantings.ts";
import { drawPopulation, type Free, type WildObject } from "./population.ts";
import { PURPOSE, type Seed, seedOf } from "./seed.ts";
import { drawWords, type SkyWords } from "./words.ts";

/** Stars with letters reach to this, figures too. */
const FAINTEST_LETTERED = 4500;
/** Nothing but what is planted stands so near to the anchor: the first hops are made there. */
const PRACTISED_DEG = 9;

export type SkyPlan = {
  readonly seed: Seed;
  readonly frame: SkyFrame;
  readonly words: SkyWords;
  readonly anchor: SkyStar;
  readonly place: AnchorPlace;
  readonly cluster: ClusterPlanting;
  readonly galaxy: GalaxyPlanting;
  /** The anchor's first. */
  readonly figures: readonly Constellation<SkyStar>[];
  /** The anchor and every field star that is bright enough for a letter, brightest first. */
  readonly bright: readonly SkyStar[];
  /** What else is in the sky, far from the anchor. */
  readonly wild: readonly WildObject[];
  readonly asterisms: readonly Asterism[];
  readonly greatClouds: readonly WildObject[];
  /** The circle where nothing stands but what is planted for the first hops. */
  readonly practised: Free;
  readonly darkTiles: DarkTiles;
  readonly plantedByTile: ReadonlyMap<TileKey, readonly SkyStar[]>;
};

const KEPT = 16;
const kept = new Map<string, SkyPlan>();

/** The plan of a seed word; the last few are kept. @throws InputError where the word is none */
export function planOf(word: string): SkyPlan {
  // A word as it is kept needs no reading: tile after tile asks for the same one.
  const asked = kept.get(word);
  if (asked) return asked;
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
  const words = drawWords(createChance(seed.hash, PURPOSE.names));
  const letteredStars = [anchor, ...bright.filter(({ milliMag }) => milliMag <= FAINTEST_LETTERED)].sort(
    (a, b) => a.milliMag - b.milliMag,
  );
  const practised = { centre: anchor.dir, cosRadius: exactCos(PRACTISED_DEG * DEG) };
  const wild = drawPopulation(frame, [practised]);
  const members = wild.flatMap((object, i) => (object.kind === "openCluster" ? membersOf(seed.hash, i, object) : []));
  const asterisms = plantAsterisms(seed.hash, { bright, objects: wild, free: [practised] });
  const greatClouds = drawGreatClouds(frame, anchor.dir, PRACTISED_DEG);
  const figureStars = asterisms.flatMap(({ stars }) => stars);
  return {
    seed,
    frame,
    words,
    anchor,
    place,
    cluster,
    galaxy,
    figures: drawConstellations(letteredStars, words.figureOrder, anchor),
    bright: letteredStars,
    wild,
    asterisms,
    greatClouds,
    practised,
    darkTiles: darkTilesOf([...wild, ...greatClouds]),
    plantedByTile: byTile([
      anchor,
      ...cluster.pair,
      ...cluster.members,
      galaxy.lone,
      ...galaxy.triangle,
      ...members,
      ...figureStars,
    ]),
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

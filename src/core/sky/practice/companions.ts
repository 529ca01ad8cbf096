/** Companions: pairs that belong together, beyond those that chance puts side by side. */
import { exactExp } from "#core/celestial/exactMath.ts";
import { mixHash32, mixHashOn } from "#core/celestial/hash.ts";
import { pixelCentre, pixelOf } from "#core/celestial/healpix.ts";
import { DEG, offsetDir, TWO_PI } from "#core/celestial/vector.ts";
import type { Dir, TileKey } from "#core/seams/index.ts";
import { beginChance, type Chance, createChanceState, drawChance } from "./chance.ts";
import { COMPANION_SHARE, FAINTER_MAG } from "./companionShare.ts";
import type { DarkTiles } from "./darkTiles.ts";
import { galacticLatDeg } from "./density.ts";
import { fieldStars } from "./fieldStars.ts";
import type { SkyFrame, SkyStar } from "./frame.ts";
import {
  FAINTEST_PRACTICE_MAG,
  PRACTICE_LAYERS,
  type PracticeLayer,
  practiceLayerOfKey,
  practiceTileKey,
} from "./layers.ts";
import { PURPOSE } from "./seed.ts";
import { colourOf } from "./starColours.ts";
import { dirOfStar, emptyStars, type StarList, starOf } from "./starList.ts";

const FAINTEST_MILLIMAG = FAINTEST_PRACTICE_MAG * 1000;
/**
 * Of equal weight in the logarithm from the nearest to 12", then of half that weight to 60": of the pairs in Tycho-2 that are
 * more than chance, both to V 9.5, 0.0029 for each star away from the plane lie between 15 and 60".
 */
const NEAREST_ARCSEC = 0.7;
const BEND_ARCSEC = 12;
const WIDE_WEIGHT = 0.5;
const LOG_NEAR = 2.841582;
const LOG_WIDE = 1.609438;
const ARCSEC = DEG / 3600;

/** What of a sky its tiles hang on. */
export type TileSky = { readonly frame: SkyFrame; readonly darkTiles: DarkTiles };

/** Lists that are written over again and again: the tile's in hand, and those of the tiles about it. */
const ownStars = emptyStars();
const starsAbove = emptyStars();

/** The field stars of a tile, good until the next is asked for, and the companions in it: theirs, and of brighter stars, whose tiles are larger. */
export function tileStars(sky: TileSky, key: TileKey): { stars: StarList; companions: readonly SkyStar[] } {
  const own = practiceLayerOfKey(key);
  const stars = fieldStars(sky.frame, key, sky.darkTiles(key), ownStars);
  let companions: readonly SkyStar[] = NONE;
  for (let i = 0; i <= own.layer; i++) {
    const layer = PRACTICE_LAYERS[i]!;
    const above = practiceTileKey(layer, key.pixel >> (2 * (own.order - layer.order)));
    const more = companionsOf(sky, above, layer === own ? stars : undefined).within(own, key.pixel);
    if (more.length > 0) companions = companions.length > 0 ? [...companions, ...more] : more;
  }
  return { stars, companions };
}

const NONE: readonly SkyStar[] = [];

/** The companions of a tile's own field stars, of any magnitude and so of this layer or a fainter one. */
type Companions = {
  /** Those of them that a tile of a layer holds, which lies in the stars' own tile. */
  within(layer: PracticeLayer, pixel: number): readonly SkyStar[];
};

const NO_COMPANIONS: Companions = { within: () => NONE };

/**
 * Tiles of each layer whose companions are kept, for the sky in hand alone. All fainter layers ask for them, and to make a
 * tile's stars anew for its companions costs more than a small tile itself: so many, of some ten stars each.
 */
const KEPT_TILES = 2048;
const kept = PRACTICE_LAYERS.map(() => new Map<number, Companions>());
let keptOf: SkyFrame | undefined;

function companionsOf({ frame, darkTiles }: TileSky, key: TileKey, stars?: StarList): Companions {
  if (frame !== keptOf) for (const tiles of kept) tiles.clear();
  keptOf = frame;
  const known = kept[key.layer]!;
  const there = known.get(key.pixel);
  if (there) return there;
  let made: SkyStar[] | undefined;
  drawCompanions(frame, key, stars ?? fieldStars(frame, key, darkTiles(key), starsAbove), (star) => {
    made ??= [];
    made.push(star);
  });
  const companions = made ? sorted(made, key.order) : NO_COMPANIONS;
  // Nobody else asks for those of the last layer.
  if (key.layer === PRACTICE_LAYERS.length - 1) return companions;
  known.set(key.pixel, companions);
  if (known.size > KEPT_TILES) known.delete(known.keys().next().value!);
  return companions;
}

/** A layer's tiles are told apart when one of them is first asked for: there are hundreds to a large tile. */
function sorted(stars: readonly SkyStar[], order: number): Companions {
  const layers: (Map<number, SkyStar[]> | undefined)[] = [];
  return {
    within(layer, pixel) {
      // Where tiles are as large there is but this one.
      if (layer.order === order) return stars.filter((star) => isIn(star, layer));
      const tiles = layers[layer.layer] ?? byPixel(stars, layer);
      layers[layer.layer] = tiles;
      return tiles.get(pixel) ?? NONE;
    },
  };
}

const isIn = ({ milliMag }: SkyStar, { brightestMilliMag, faintestMilliMag }: PracticeLayer) =>
  milliMag > brightestMilliMag && milliMag <= faintestMilliMag;

function byPixel(stars: readonly SkyStar[], layer: PracticeLayer): Map<number, SkyStar[]> {
  const tiles = new Map<number, SkyStar[]>();
  for (const star of stars) {
    if (!isIn(star, layer)) continue;
    const pixel = pixelOf(layer.order, star.dir);
    const there = tiles.get(pixel);
    if (there) there.push(star);
    else tiles.set(pixel, [star]);
  }
  return tiles;
}

/** Gets a companion, and the place in the list of the star that has it. */
type TakePair = (companion: SkyStar, of: number) => void;

/** One sequence after the other, for each tile its own. */
const state = createChanceState();
const chance: Chance = () => drawChance(state);

function drawCompanions(frame: SkyFrame, key: TileKey, stars: StarList, take: TakePair): void {
  beginChance(state, mixHashOn(mixHashOn(mixHash32(frame.hash, PURPOSE.companions), key.layer), key.pixel));
  let absLatDeg = -1;
  for (let i = 0; i < stars.count; i++) {
    if (chance() >= COMPANION_SHARE) continue;
    const milliMag = stars.milliMag[i]! + Math.floor(1000 * FAINTER_MAG * chance());
    if (milliMag > FAINTEST_MILLIMAG) continue;
    const dir = placeBeside(key, dirOfStar(stars, i));
    if (!dir) continue;
    // Many tiles have no companion, and need not know where they lie.
    if (absLatDeg < 0) absLatDeg = Math.abs(galacticLatDeg(frame, pixelCentre(key.order, key.pixel)));
    take({ dir, milliMag, colourBV: colourOf(milliMag, absLatDeg, chance()) }, i);
  }
}

export type StarPair = { readonly primary: SkyStar; readonly companion: SkyStar };

/** The pairs of a sky whose brighter star is in the bright layer, tile by tile. */
export function brightPairs(frame: SkyFrame): StarPair[] {
  const [layer] = PRACTICE_LAYERS;
  const pairs: StarPair[] = [];
  for (let pixel = 0; pixel < 12 << (2 * layer.order); pixel++) {
    const key = practiceTileKey(layer, pixel);
    const stars = fieldStars(frame, key, undefined, starsAbove);
    drawCompanions(frame, key, stars, (companion, of) => pairs.push({ primary: starOf(stars, of), companion }));
  }
  return pairs;
}

/** Each lies within the tile of its star: where one side is beyond the edge it stands on the other. */
function placeBeside({ order, pixel }: TileKey, primary: Dir): Dir | undefined {
  const draw = chance() * (LOG_NEAR + WIDE_WEIGHT * LOG_WIDE);
  const arcsec =
    draw < LOG_NEAR ? NEAREST_ARCSEC * exactExp(draw) : BEND_ARCSEC * exactExp((draw - LOG_NEAR) / WIDE_WEIGHT);
  const angleRad = TWO_PI * chance();
  const dir = offsetDir(primary, angleRad, arcsec * ARCSEC);
  if (pixelOf(order, dir) === pixel) return dir;
  const other = offsetDir(primary, angleRad + TWO_PI / 2, arcsec * ARCSEC);
  return pixelOf(order, other) === pixel ? other : undefined;
}

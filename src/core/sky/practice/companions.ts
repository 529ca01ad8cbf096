/** Companions: pairs that belong together, beyond those that chance puts side by side. */
import { exactExp } from "#core/celestial/exactMath.ts";
import { pixelCentre, pixelOf } from "#core/celestial/healpix.ts";
import { DEG, offsetDir, TWO_PI } from "#core/celestial/vector.ts";
import type { Dir, TileKey } from "#core/seams/index.ts";
import { type Chance, createChance } from "./chance.ts";
import { COMPANION_SHARE, FAINTER_MAG } from "./companionShare.ts";
import type { DarkTiles } from "./darkTiles.ts";
import { type GalacticPlace, galacticPlace } from "./density.ts";
import { fieldStars } from "./fieldStars.ts";
import type { SkyFrame, SkyStar } from "./frame.ts";
import { FAINTEST_PRACTICE_MAG, PRACTICE_LAYERS, practiceLayerOfKey, practiceTileKey } from "./layers.ts";
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

const galactic: GalacticPlace = { latDeg: 0, lonDeg: 0 };

/** What of a sky its tiles hang on. */
export type TileSky = { readonly frame: SkyFrame; readonly darkTiles: DarkTiles };

/** Lists that are written over again and again: the tile's in hand, and those of the tiles about it. */
const ownStars = emptyStars();
const starsAbove = emptyStars();

/** The field stars of a tile, good until the next is asked for, and the companions in it: theirs, and of brighter stars, whose tiles are larger. */
export function tileStars(sky: TileSky, key: TileKey): { stars: StarList; companions: SkyStar[] } {
  const own = practiceLayerOfKey(key);
  const stars = fieldStars(sky.frame, key, sky.darkTiles(key), ownStars);
  const companions: SkyStar[] = [];
  for (const layer of PRACTICE_LAYERS.slice(0, own.layer + 1)) {
    const above = practiceTileKey(layer, key.pixel >> (2 * (own.order - layer.order)));
    for (const star of companionsOf(sky, above, layer === own ? stars : undefined)) {
      const inLayer = star.milliMag > own.brightestMilliMag && star.milliMag <= own.faintestMilliMag;
      if (inLayer && (above === key || pixelOf(own.order, star.dir) === key.pixel)) companions.push(star);
    }
  }
  return { stars, companions };
}

/** Tiles whose companions are kept: about a field there are a few of each layer, which all fainter ones ask for. */
const KEPT_TILES = 256;
const kept = new WeakMap<SkyFrame, Map<TileKey, readonly SkyStar[]>>();

/** The companions of a tile's own field stars, of any magnitude and so of this layer or a fainter one. */
function companionsOf({ frame, darkTiles }: TileSky, key: TileKey, stars?: StarList): readonly SkyStar[] {
  const known = kept.get(frame) ?? new Map<TileKey, readonly SkyStar[]>();
  kept.set(frame, known);
  const there = known.get(key);
  if (there) return there;
  const made: SkyStar[] = [];
  drawCompanions(frame, key, stars ?? fieldStars(frame, key, darkTiles(key), starsAbove), (star) => made.push(star));
  known.set(key, made);
  if (known.size > KEPT_TILES) known.delete(known.keys().next().value!);
  return made;
}

/** Gets a companion, and the place in the list of the star that has it. */
type TakePair = (companion: SkyStar, of: number) => void;

function drawCompanions(frame: SkyFrame, key: TileKey, stars: StarList, take: TakePair): void {
  const chance = createChance(frame.hash, PURPOSE.companions, key.layer, key.pixel);
  galacticPlace(frame, pixelCentre(key.order, key.pixel), galactic);
  const absLatDeg = Math.abs(galactic.latDeg);
  for (let i = 0; i < stars.count; i++) {
    if (chance() >= COMPANION_SHARE) continue;
    const milliMag = stars.milliMag[i]! + Math.floor(1000 * FAINTER_MAG * chance());
    if (milliMag > FAINTEST_MILLIMAG) continue;
    const dir = placeBeside(chance, key, dirOfStar(stars, i));
    if (dir) take({ dir, milliMag, colourBV: colourOf(milliMag, absLatDeg, chance()) }, i);
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
function placeBeside(chance: Chance, { order, pixel }: TileKey, primary: Dir): Dir | undefined {
  const draw = chance() * (LOG_NEAR + WIDE_WEIGHT * LOG_WIDE);
  const arcsec =
    draw < LOG_NEAR ? NEAREST_ARCSEC * exactExp(draw) : BEND_ARCSEC * exactExp((draw - LOG_NEAR) / WIDE_WEIGHT);
  const angleRad = TWO_PI * chance();
  const dir = offsetDir(primary, angleRad, arcsec * ARCSEC);
  if (pixelOf(order, dir) === pixel) return dir;
  const other = offsetDir(primary, angleRad + TWO_PI / 2, arcsec * ARCSEC);
  return pixelOf(order, other) === pixel ? other : undefined;
}

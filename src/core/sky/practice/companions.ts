/** Companions: pairs that belong together, beyond those that chance puts side by side. */
import { exactExp } from "#core/celestial/exactMath.ts";
import { pixelCentre, pixelOf } from "#core/celestial/healpix.ts";
import { DEG, offsetDir, TWO_PI } from "#core/celestial/vector.ts";
import type { Dir, TileKey } from "#core/seams/index.ts";
import { type Chance, createChance } from "./chance.ts";
import { type GalacticPlace, galacticPlace } from "./density.ts";
import { fieldStars, type StarList } from "./fieldStars.ts";
import type { SkyFrame, SkyStar } from "./frame.ts";
import { PRACTICE_LAYERS, practiceLayerOfKey, practiceTileKey } from "./layers.ts";
import { PURPOSE } from "./seed.ts";
import { colourOf } from "./starColours.ts";

/**
 * Share of stars with a companion up to 5 mag fainter within 60". Tycho-2 (Hog et al. 2000, A&A 355, L27) has 0.077, 0.058
 * and 0.031 to V 11 for each star to V 6.5, 8 and 9.5, pairs of chance taken off: one share for all, cut at V 11. Fainter
 * stars, for which nothing was counted, are given the same.
 */
const SHARE = 0.08;
const FAINTER_MILLIMAG = 5000;
/** Of equal weight in the logarithm from the nearest to 20", then of this weight to 60". */
const NEAREST_ARCSEC = 0.7;
const BEND_ARCSEC = 20;
const WIDE_WEIGHT = 0.62;
const LOG_NEAR = 3.352407;
const LOG_WIDE = 1.098612;
const ARCSEC = DEG / 3600;

const galactic: GalacticPlace = { latDeg: 0, lonDeg: 0 };

/** The companions in a tile: of its own field stars and of brighter ones, whose tiles are larger. */
export function companionsIn(frame: SkyFrame, key: TileKey): SkyStar[] {
  const own = practiceLayerOfKey(key);
  return PRACTICE_LAYERS.slice(0, own.layer + 1).flatMap((layer) => {
    const above = practiceTileKey(layer, key.pixel >> (2 * (own.order - layer.order)));
    return companionsOf(frame, above).filter(
      ({ dir, milliMag }) =>
        milliMag > own.brightestMilliMag && milliMag <= own.faintestMilliMag && pixelOf(own.order, dir) === key.pixel,
    );
  });
}

/**
 * The companions of a tile's own field stars, of any magnitude and so of this layer or a fainter one. Each lies within the
 * tile of its star: where one side is beyond the edge it stands on the other.
 */
function companionsOf(frame: SkyFrame, key: TileKey): readonly SkyStar[] {
  const known = keptOf(frame);
  const there = known.get(key);
  if (there) return there;
  const made = drawCompanions(frame, key, fieldStars(frame, key));
  known.set(key, made);
  if (known.size > KEPT_TILES) known.delete(known.keys().next().value!);
  return made;
}

const KEPT_TILES = 256;
const kept = new WeakMap<SkyFrame, Map<TileKey, readonly SkyStar[]>>();

function keptOf(frame: SkyFrame): Map<TileKey, readonly SkyStar[]> {
  const known = kept.get(frame) ?? new Map<TileKey, readonly SkyStar[]>();
  kept.set(frame, known);
  return known;
}

function drawCompanions(frame: SkyFrame, key: TileKey, stars: StarList): SkyStar[] {
  const chance = createChance(frame.hash, PURPOSE.companions, key.layer, key.pixel);
  galacticPlace(frame, pixelCentre(key.order, key.pixel), galactic);
  const absLatDeg = Math.abs(galactic.latDeg);
  const found: SkyStar[] = [];
  for (let i = 0; i < stars.milliMag.length; i++) {
    if (chance() >= SHARE) continue;
    const milliMag = stars.milliMag[i]! + Math.floor(FAINTER_MILLIMAG * chance());
    const primary: Dir = [stars.dirs[3 * i]!, stars.dirs[3 * i + 1]!, stars.dirs[3 * i + 2]!];
    const dir = placeBeside(chance, key, primary);
    const colourBV = colourOf(milliMag / 1000, absLatDeg, chance());
    if (dir) found.push({ dir, milliMag, colourBV });
  }
  return found;
}

function placeBeside(chance: Chance, { order, pixel }: TileKey, primary: Dir): Dir | undefined {
  const draw = chance() * (LOG_NEAR + WIDE_WEIGHT * LOG_WIDE);
  const arcsec =
    draw < LOG_NEAR ? NEAREST_ARCSEC * exactExp(draw) : BEND_ARCSEC * exactExp((draw - LOG_NEAR) / WIDE_WEIGHT);
  const angleRad = TWO_PI * chance();
  const sides = [angleRad, angleRad + TWO_PI / 2].map((turn) => offsetDir(primary, turn, arcsec * ARCSEC));
  return sides.find((dir) => pixelOf(order, dir) === pixel);
}

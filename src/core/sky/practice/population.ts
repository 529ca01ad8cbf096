/** Objects of a practice sky: how many of each kind, how bright, how large and where, as they are in the real one. */
import { exactExp, exactLog, roundHalfUp } from "#core/celestial/exactMath.ts";
import { DEG, dot, offsetDir, TWO_PI } from "#core/celestial/vector.ts";
import type { Dir, ObjectKind, ObjectProfile } from "#core/seams/index.ts";
import table from "#shared/populations.json" with { type: "json" };
import { between } from "./between.ts";
import { type Chance, createChance } from "./chance.ts";
import { dirOfGalacticPlace } from "./density.ts";
import type { SkyFrame } from "./frame.ts";
import { PURPOSE } from "./seed.ts";

export type WildKind = keyof typeof table.kinds | "darkNebula";
/** What is drawn of an object; names and words come later. */
export type WildObject = {
  readonly kind: WildKind;
  readonly dir: Dir;
  /** V to 0.1; 99 for a dark nebula. */
  readonly magV: number;
  readonly majorArcmin: number;
  readonly minorArcmin: number;
  readonly axisDeg: number;
  readonly profile: ObjectProfile;
};
/** A circle that stays free of objects. */
export type Free = { readonly centre: Dir; readonly cosRadius: number };

/** Shares at which quantiles are given, and the ends: as far beyond the outer ones as a quarter of the step before. */
const SHARES: readonly number[] = [0, 0.05, 0.25, 0.5, 0.75, 0.95, 1];
const FAINTEST_MAG = 11.5;
/** Width of the scatter between brightness rank and size rank. */
const SCATTER = 0.7;
const SMALLEST_ARCMIN = 0.05;
/** Dark nebulae are not in the counted catalogue. Their number and sizes: from memory of the photographic lists. */
const DARK = { count: 60, majorArcmin: [4, 9, 16, 30, 60], axisRatio: [0.3, 0.45, 0.6, 0.8, 1] } as const;

/**
 * Galactic latitude, degrees. Those of clusters and nebulae in the counted catalogue are spoilt by the two Clouds; these are
 * our own Galaxy's alone (from memory: scale heights of 2 to 4 degrees).
 */
const ABS_LAT_DEG: Readonly<Record<Exclude<WildKind, "globularCluster">, readonly number[]>> = {
  openCluster: [0.2, 1.1, 2.6, 5.5, 16],
  emissionNebula: [0.1, 0.6, 1.5, 3.2, 12],
  reflectionNebula: [0.5, 1.2, 7, 14, 20],
  supernovaRemnant: [0.3, 1.2, 2.8, 5, 9],
  darkNebula: [0.3, 1.4, 3.2, 6.5, 15],
  planetaryNebula: table.kinds.planetaryNebula.absLatDeg,
  galaxy: table.kinds.galaxy.absLatDeg,
};
/** Angle of globular clusters from the middle of the galaxy, degrees: half of them within 27 (from memory). */
const FROM_CENTRE_DEG: readonly number[] = [4, 12, 27, 60, 120];
/** Share of galaxies that stand near another one, and how near, degrees. */
const GROUPED = 0.35;
const GROUP_DEG = 2.5;
const TRIES = 40;

/** All objects of a frame's sky, kind after kind. Those that would stand in a circle to be kept free stand elsewhere. */
export function drawPopulation(frame: SkyFrame, free: readonly Free[]): WildObject[] {
  const kinds = Object.keys(table.kinds) as (keyof typeof table.kinds)[];
  const lit = kinds.flatMap((kind, i) => {
    const chance = createChance(frame.hash, PURPOSE.objects, i);
    const made: WildObject[] = [];
    while (made.length < table.kinds[kind].count) {
      const form = litForm(kind, chance);
      made.push({ ...form, kind, dir: freePlace(chance, frame, kind, made, free) });
    }
    return made;
  });
  const chance = createChance(frame.hash, PURPOSE.objects, kinds.length);
  const dark = Array.from({ length: DARK.count }, (): WildObject => {
    const dir = freePlace(chance, frame, "darkNebula", [], free);
    const axes = axesOf(chance, chance(), DARK.majorArcmin, DARK.axisRatio);
    return { kind: "darkNebula", dir, magV: 99, profile: "uniform", ...axes };
  });
  return [...lit, ...dark];
}

/** The value at a share of a distribution whose quantiles are given, straight between them. */
function quantile(values: readonly number[], share: number): number {
  const [a = 0, b = 0, , d = 0, e = 0] = values;
  return between(SHARES, [a - (b - a) / 4, ...values, e + (e - d) / 4], share);
}

const quantileOfLog = (values: readonly number[], share: number) => exactExp(quantile(values.map(exactLog), share));

/** Back into 0 to 1 as from two mirrors: what is spread evenly stays so. */
function mirrored(share: number): number {
  if (share < 0) return -share;
  return share > 1 ? 2 - share : share;
}

function litForm(kind: keyof typeof table.kinds, chance: Chance) {
  const { magV, majorArcmin, axisRatio } = table.kinds[kind];
  const rank = chance();
  const mag = Math.min(FAINTEST_MAG, roundHalfUp(10 * quantile(magV, rank)) / 10);
  // The brighter is the larger, more or less.
  const sizeRank = mirrored(1 - rank + SCATTER * (chance() - 0.5));
  return { magV: mag, ...axesOf(chance, sizeRank, majorArcmin, axisRatio), profile: profileOf(kind, chance()) };
}

function axesOf(chance: Chance, sizeRank: number, sizes: readonly number[], ratios: readonly number[]) {
  const major = Math.max(SMALLEST_ARCMIN, rounded(quantileOfLog(sizes, sizeRank)));
  const ratio = Math.max(0.15, Math.min(1, quantile(ratios, chance())));
  return {
    majorArcmin: major,
    minorArcmin: Math.max(SMALLEST_ARCMIN, Math.min(major, rounded(major * ratio))),
    axisDeg: Math.floor(180 * chance()),
  };
}

/** To the figures in which sizes are listed: hundredths of small ones, tenths, whole minutes of large ones. */
function rounded(arcmin: number): number {
  const parts = arcmin < 1 ? 100 : arcmin < 20 ? 10 : 1;
  return roundHalfUp(arcmin * parts) / parts;
}

/** A quarter of the galaxies is old and round (270 of 1,110 to V 12), some planetaries show a ring. */
function profileOf(kind: ObjectKind, draw: number): ObjectProfile {
  if (kind === "galaxy") return draw < 0.25 ? "bulge" : "exponential";
  if (kind === "planetaryNebula") return draw < 0.15 ? "ring" : "uniform";
  if (kind === "openCluster") return "members";
  if (kind === "globularCluster") return "plummer";
  return kind === "reflectionNebula" ? "exponential" : "uniform";
}

function freePlace(
  chance: Chance,
  frame: SkyFrame,
  kind: WildKind,
  made: readonly WildObject[],
  free: readonly Free[],
): Dir {
  let dir = placeOf(chance, frame, kind, made);
  for (let i = 0; i < TRIES && free.some(({ centre, cosRadius }) => dot(centre, dir) > cosRadius); i++)
    dir = placeOf(chance, frame, kind, made);
  return dir;
}

function placeOf(chance: Chance, frame: SkyFrame, kind: WildKind, made: readonly WildObject[]): Dir {
  if (kind === "globularCluster")
    return offsetDir(frame.galacticCentre, TWO_PI * chance(), Math.max(0, quantile(FROM_CENTRE_DEG, chance())) * DEG);
  if (kind === "galaxy" && made.length > 0 && chance() < GROUPED) {
    const host = made[Math.floor(chance() * made.length)]!;
    return offsetDir(host.dir, TWO_PI * chance(), GROUP_DEG * chance() * DEG);
  }
  const side = chance() < 0.5 ? -1 : 1;
  const latDeg = side * Math.max(0, Math.min(90, quantile(ABS_LAT_DEG[kind], chance())));
  return dirOfGalacticPlace(frame, { latDeg, lonDeg: 360 * chance() });
}

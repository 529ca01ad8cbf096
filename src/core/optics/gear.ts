/**
 * The instruments, from `shared/gear.json`. A gear is one way of looking: the eye, or one telescope with one eyepiece.
 * True fields and magnifications belong to common instruments of their aperture (common practice, no source).
 */
import { DataFileError, InputError } from "#core/seams/errors.ts";
import type { Gear, GearId, GearKind, LightPath } from "#core/seams/index.ts";
import gearFile from "#shared/gear.json";

/** Widths of the outstretched hand on the sky (common practice, no source: arms and hands differ by a fifth). */
export interface HandRuler {
  readonly fistDeg: number;
  readonly threeFingersDeg: number;
  readonly littleFingerDeg: number;
}

const KINDS: readonly GearKind[] = ["eye", "sight", "binocular", "finder", "eyepiece"];
const PATHS: readonly LightPath[] = ["direct", "halfTurn", "mirrorDiagonal", "erectingDiagonal", "newtonian"];

function need(holds: boolean, id: unknown, what: string): void {
  if (!holds) throw new DataFileError(`gear ${String(id)}: ${what}`, "Mend shared/gear.json.");
}

const isIn = (x: unknown, low: number, high: number) => typeof x === "number" && x >= low && x <= high;

/**
 * Checks one row of a gear table and gives it back typed.
 * @throws DataFileError naming the row and the field that is missing or out of range
 */
export function checkGear(row: unknown): Gear {
  need(typeof row === "object" && row !== null, row, "is no object");
  const g = row as Record<string, unknown>;
  need(typeof g.id === "string" && /^[a-z0-9-]{1,40}$/.test(g.id), g.id, "id has other than a-z, 0-9 and hyphen");
  need(KINDS.includes(g.kind as GearKind), g.id, `kind is none of ${KINDS.join(", ")}`);
  need(PATHS.includes(g.path as LightPath), g.id, `path is none of ${PATHS.join(", ")}`);
  need(isIn(g.apertureMm, 1, 1000), g.id, "apertureMm is not within 1 to 1000");
  need(isIn(g.magnification, 1, 600), g.id, "magnification is not within 1 to 600");
  need(isIn(g.fieldDeg, 0.05, 120), g.id, "fieldDeg is not within 0.05 to 120");
  need(isIn(g.clockDeg, -180, 180), g.id, "clockDeg is not within -180 to 180");
  need(
    isIn(g.obstructionMm, 0, (g.apertureMm as number) / 2),
    g.id,
    "obstructionMm is not within 0 to half the aperture",
  );
  need(isIn(g.transmission, 0.1, 1), g.id, "transmission is not within 0.1 to 1");
  need(g.eyes === 1 || g.eyes === 2, g.id, "eyes is neither 1 nor 2");
  return row as Gear;
}

function readGear(): ReadonlyMap<GearId, Gear> {
  const map = new Map<GearId, Gear>();
  for (const row of gearFile.gear) {
    const gear = checkGear(row);
    need(!map.has(gear.id), gear.id, "comes twice");
    map.set(gear.id, gear);
  }
  return map;
}

/** All instruments by id, in order of the table: eye first, then by growing magnification of their kind. */
export const GEAR: ReadonlyMap<GearId, Gear> = readGear();
export const HAND_RULER: HandRuler = gearFile.handRuler;
/** Full widths of the reflex sight's rings, degrees. */
export const SIGHT_RINGS_DEG: readonly number[] = gearFile.sightRingsDeg;

/** @throws InputError where no instrument has this id */
export function gearById(id: GearId): Gear {
  const gear = GEAR.get(id);
  if (!gear) throw new InputError(`no instrument "${id}"`, `Known: ${[...GEAR.keys()].join(", ")}.`);
  return gear;
}

/** Width of the pencil of light that leaves the eyepiece: aperture / magnification (textbook). */
export function exitPupilMm(gear: Gear): number {
  return gear.apertureMm / gear.magnification;
}

/** True field in tenths of an arcsecond. */
export function fieldDas(gear: Gear): number {
  return Math.round(gear.fieldDeg * 36000);
}

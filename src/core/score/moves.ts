/** Moves from rest to rest, and what each was meant to be: the raw material of the habits. */
import { dirFromMas, positionAngleRad, slerpDir, TWO_PI } from "#core/celestial/vector.ts";
import { gearById } from "#core/optics/gear.ts";
import type { AttemptRecord, Dir, Gear } from "#core/seams/index.ts";
import { gearAt } from "./path.ts";
import { dirsOfRoute, distanceDas, distanceToArcDas } from "./places.ts";
import { restsOf } from "./rests.ts";

/** A displacement of at least this share of the field between two rests is a move; permille. */
const MOVE_PERMILLE = 150;
/** Its first bearing is that of its first quarter field; permille. */
const FIRST_PERMILLE = 250;
/** Bearings within this of a hypothesis fit it, and a fit must be the only one; degrees. */
const FIT_DEG = 30;

export type Fit = "right" | "reversed" | "mirrored" | "none";
export type Move = {
  readonly fromMs: number;
  readonly toMs: number;
  readonly from: Dir;
  readonly to: Dir;
  readonly fit: Fit;
  readonly lengthDas: number;
  readonly legDas: number;
  readonly gear: Gear;
};

/** The next mark of the nearest way, seen from a place. */
export function nextMark(record: AttemptRecord, place: Dir): Dir {
  let best: Dir = dirFromMas(record.compiled.spec.targets[0]!.dir);
  let bestDas = Number.MAX_SAFE_INTEGER;
  for (const way of record.compiled.ways) {
    const marks = dirsOfRoute(way);
    for (let i = 1; i < marks.length; i++) {
      const offDas = distanceToArcDas(place, marks[i - 1]!, marks[i]!);
      if (offDas < bestDas) [best, bestDas] = [marks[i]!, offDas];
    }
  }
  return best;
}

const degBetween = (aRad: number, bRad: number): number => {
  const apart = Math.abs(aRad - bRad) % TWO_PI;
  return Math.round((Math.min(apart, TWO_PI - apart) * 360) / TWO_PI);
};

/** Which hypothesis alone a first bearing fits; both bearings counted from the zenith, in the correct image. */
function fitOf(bearingRad: number, dueRad: number): Fit {
  const offsDeg: readonly (readonly [Fit, number])[] = [
    ["right", degBetween(bearingRad, dueRad)],
    ["reversed", degBetween(bearingRad, dueRad + Math.PI)],
    ["mirrored", degBetween(bearingRad, TWO_PI - dueRad)],
  ];
  const fitting = offsDeg.filter(([, offDeg]) => offDeg <= FIT_DEG);
  return fitting.length === 1 ? fitting[0]![0] : "none";
}

/** Where a move stood after its first quarter field. */
function firstQuarter(dirs: readonly Dir[], from: number, to: number, fieldDas: number): Dir {
  for (let i = from + 1; i <= to; i++) {
    const goneDas = distanceDas(dirs[from]!, dirs[i]!);
    const dueDas = Math.round((fieldDas * FIRST_PERMILLE) / 1000);
    if (goneDas >= dueDas) return slerpDir(dirs[from]!, dirs[i]!, dueDas / goneDas);
  }
  return dirs[to]!;
}

/** All moves made with the hopping instrument, in order. */
export function movesOf(record: AttemptRecord, dirs: readonly Dir[]): Move[] {
  const { compiled } = record;
  const zenith = dirFromMas(compiled.zenith);
  const fieldDas = compiled.hoppingFieldDas;
  const rests = restsOf(record);
  return rests.slice(1).flatMap((rest, i) => {
    const before = rests[i]!;
    const [from, to] = [dirs[before.index]!, dirs[rest.index]!];
    const lengthDas = distanceDas(from, to);
    const gear = gearAt(record, rest.fromMs);
    if (gear !== compiled.spec.hoppingGear || lengthDas * 1000 < fieldDas * MOVE_PERMILLE) return [];
    const due = nextMark(record, from);
    const up = positionAngleRad(from, zenith);
    const bearing = positionAngleRad(from, firstQuarter(dirs, before.index, rest.index, fieldDas)) - up;
    const fit = fitOf((bearing + TWO_PI) % TWO_PI, (positionAngleRad(from, due) - up + TWO_PI) % TWO_PI);
    const legDas = distanceDas(from, due);
    return [{ fromMs: before.toMs, toMs: rest.fromMs, from, to, fit, lengthDas, legDas, gear: gearById(gear) }];
  });
}

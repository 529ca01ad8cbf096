/** The corridor about the ways: what a careful hop may wander in for half the price. */
import { dirFromMas, slerpDir } from "#core/celestial/vector.ts";
import type { CompiledAttempt, Dir } from "#core/seams/index.ts";
import type { Step } from "./path.ts";
import { dirsOfRoute, distanceDas, distanceToArcDas } from "./places.ts";
import { CORRIDOR_HALF_FIELDS, FREE_PAR_TENTHS } from "./rules.ts";

/** Steps are judged in parts of a fortieth of the hopping field. */
const PARTS_PER_FIELD = 40;

export interface Corridor {
  readonly anchor: Dir;
  readonly target: Dir;
  /** Arcs of the ways and of the straight line. */
  readonly arcs: readonly (readonly [from: Dir, to: Dir])[];
  readonly halfDas: number;
  readonly parDas: number;
  readonly fieldDas: number;
}

/** The corridor of a compiled attempt, to its first target. */
export function corridorOf(compiled: CompiledAttempt): Corridor {
  const anchor = dirFromMas(compiled.spec.anchor);
  const target = dirFromMas(compiled.spec.targets[0]!.dir);
  const arcs = compiled.ways.flatMap((way) => {
    const dirs = dirsOfRoute(way);
    return dirs.slice(1).map((dir, i) => [dirs[i]!, dir] as const);
  });
  return {
    anchor,
    target,
    arcs: [...arcs, [anchor, target]],
    halfDas: Math.round(compiled.hoppingFieldDas * CORRIDOR_HALF_FIELDS),
    parDas: compiled.parDas,
    fieldDas: compiled.hoppingFieldDas,
  };
}

/** Whether a place lies in the corridor, or in the ellipse of par about anchor and target. */
export function isInside(corridor: Corridor, place: Dir): boolean {
  const bothEndsDas = distanceDas(place, corridor.anchor) + distanceDas(place, corridor.target);
  if (10 * bothEndsDas <= FREE_PAR_TENTHS * corridor.parDas) return true;
  return corridor.arcs.some(([from, to]) => distanceToArcDas(place, from, to) <= corridor.halfDas);
}

export type Lengths = { readonly insideDas: number; readonly outsideDas: number };

/** Length of the steps that count, inside and outside of the corridor; whole das. */
export function lengthsIn(corridor: Corridor, steps: readonly Step[]): Lengths {
  let inside = 0;
  let outside = 0;
  for (const { from, to, lengthDas, share } of steps) {
    const parts = Math.max(1, Math.ceil((lengthDas * PARTS_PER_FIELD) / corridor.fieldDas));
    let within = 0;
    for (let part = 0; part < parts; part++) if (isInside(corridor, slerpDir(from, to, (part + 0.5) / parts))) within++;
    inside += (lengthDas * share * within) / parts;
    outside += (lengthDas * share * (parts - within)) / parts;
  }
  return { insideDas: Math.round(inside), outsideDas: Math.round(outside) };
}

/**
 * Length beyond what the hop needed. A detour inside the corridor is free up to 1.3 par (or par and half a field), then
 * counts half; outside everything counts.
 */
export function excessDas(corridor: Corridor, { insideDas, outsideDas }: Lengths): number {
  const freeDas = Math.max(
    Math.round((corridor.parDas * FREE_PAR_TENTHS) / 10),
    corridor.parDas + Math.round(corridor.fieldDas / 2),
  );
  return Math.max(0, insideDas - freeDas) / 2 + outsideDas;
}

/**
 * Whole points for directness: success weighted by path length (Anderson et al. 2018, arXiv:1807.06757), with par, at least
 * one field, as the length that was due.
 */
export function directnessPoints(corridor: Corridor, lengths: Lengths, weight: number): number {
  const baseDas = Math.max(corridor.parDas, corridor.fieldDas);
  return Math.round((weight * baseDas) / (baseDas + excessDas(corridor, lengths)));
}

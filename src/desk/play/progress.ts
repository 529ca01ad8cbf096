/** How far the hop is: which leg, which moment. Only guided and completion lessons are told. */
import { DAS_RAD, dirFromMas, separationRad } from "#core/celestial/vector.ts";
import type { Moment } from "#core/lesson/types.ts";
import { distanceToArcDas } from "#core/score/places.ts";
import type { CompiledAttempt, Dir, Route } from "#core/seams/index.ts";

/** Shares of the hopping field: a mark is reached, the target is near, a rest is off every way. */
const NEAR = { mark: 0.2, target: 0.35, offWay: 0.6 } as const;
const RESTS_TO_BE_LOST = 3;

const dirsOf = (way: Route): Dir[] => way.marks.map(({ dir }) => dirFromMas(dir));

/** The leg of the first way that a place is nearest to, from 0. */
export function legAt(compiled: CompiledAttempt, place: Dir): number {
  const dirs = dirsOf(compiled.ways[0]!);
  let best = 0;
  let bestDas = Number.MAX_SAFE_INTEGER;
  for (let i = 1; i < dirs.length; i++) {
    const offDas = distanceToArcDas(place, dirs[i - 1]!, dirs[i]!);
    if (offDas < bestDas) [best, bestDas] = [i - 1, offDas];
  }
  return best;
}

const offWaysDas = (compiled: CompiledAttempt, place: Dir): number =>
  Math.min(
    ...compiled.ways.flatMap((way) => {
      const dirs = dirsOf(way);
      return dirs.slice(1).map((dir, i) => distanceToArcDas(place, dirs[i]!, dir));
    }),
  );

export interface Progress {
  /** The tube came to rest: the moment that this is, if it is one. */
  rest(place: Dir): Moment | null;
  restarted(): void;
}

/** Follows the rests of a hop; `reached` is told the name of each mark that a rest reaches. */
export function createProgress(compiled: CompiledAttempt, reached: (name: string) => void): Progress {
  const fieldRad = compiled.hoppingFieldDas * DAS_RAD;
  const [way] = compiled.ways;
  const target = dirFromMas(compiled.spec.targets[0]!.dir);
  let restsOff = 0;
  return {
    rest(place) {
      restsOff = offWaysDas(compiled, place) > NEAR.offWay * compiled.hoppingFieldDas ? restsOff + 1 : 0;
      if (restsOff >= RESTS_TO_BE_LOST) return "lost";
      if (separationRad(place, target) < NEAR.target * fieldRad) return "nearTarget";
      const marks = dirsOf(way!);
      for (let i = marks.length - 2; i > 0; i--) {
        if (separationRad(place, marks[i]!) > NEAR.mark * fieldRad) continue;
        reached(way!.marks[i]!.name);
        return `markReached:${i}` as Moment;
      }
      return null;
    },
    restarted() {
      restsOff = 0;
    },
  };
}

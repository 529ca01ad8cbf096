/** How far the hop is: which leg, which moment. Only guided and completion lessons are told. */
import { DAS_RAD, dirFromMas, separationRad } from "#core/celestial/vector.ts";
import type { Facts } from "#core/lesson/steps.ts";
import { distanceToArcDas } from "#core/score/places.ts";
import type { CompiledAttempt, Dir, Route } from "#core/seams/index.ts";

/** Shares of the hopping field: a mark is reached, the target is near (and of par, for short hops), a rest is off every way. */
const NEAR = { mark: 0.2, target: 0.35, targetOfPar: 0.4, offWay: 0.6 } as const;
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

type Reached = Pick<Facts, "marksReached" | "nearTarget" | "lost">;

export interface Progress {
  /** The tube came to rest: how far the hop is. */
  rest(place: Dir): Reached;
  restarted(): Reached;
}

/** Follows the rests of a hop; `reached` is told the name of each mark when a rest first reaches it. */
export function createProgress(compiled: CompiledAttempt, reached: (name: string) => void): Progress {
  const fieldRad = compiled.hoppingFieldDas * DAS_RAD;
  const way = compiled.ways[0]!;
  const marks = dirsOf(way);
  const target = dirFromMas(compiled.spec.targets[0]!.dir);
  const nearRad = Math.min(NEAR.target * fieldRad, NEAR.targetOfPar * compiled.parDas * DAS_RAD);
  let restsOff = 0;
  let marksReached = 0;
  return {
    rest(place) {
      restsOff = offWaysDas(compiled, place) > NEAR.offWay * compiled.hoppingFieldDas ? restsOff + 1 : 0;
      const nearTarget = separationRad(place, target) < nearRad;
      const mark = marks.findLastIndex(
        (dir, i) => i > 0 && i < marks.length - 1 && separationRad(place, dir) <= NEAR.mark * fieldRad,
      );
      if (mark > marksReached) {
        marksReached = mark;
        reached(way.marks[mark]!.name);
      }
      return { marksReached, nearTarget, lost: restsOff >= RESTS_TO_BE_LOST };
    },
    restarted() {
      restsOff = 0;
      marksReached = 0;
      return { marksReached, nearTarget: false, lost: false };
    },
  };
}

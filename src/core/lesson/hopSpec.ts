import { DEG, masFromDir, separationRad } from "#core/celestial/vector.ts";
import { InputError } from "#core/seams/errors.ts";
import type { Dir, HopSpec, Mark, Route, SkyObject, TargetSpec } from "#core/seams/index.ts";
import type { FoundSpot, Lookups, SkyLookup } from "./lookups.ts";
import { findSpot, spotName } from "./spots.ts";
import type { Lesson, Spot } from "./types.ts";

/** Objects this near to the target might be meant by a claim. */
const NEIGHBOUR_DEG = 3;
const MAS_PER_DEG = 3_600_000;
const DAS_PER_DEG = 36_000;
const DAS_PER_ARCMIN = 600;

/** The route's length is measured when the attempt is compiled. */
const UNMEASURED = 0;

function wanted(spot: Spot, sky: SkyLookup): FoundSpot {
  const found = findSpot(spot, sky);
  if (!found)
    throw new InputError(`this sky has no "${spotName(spot)}"`, "Check the lesson file: its findings say more.");
  return found;
}

const markOf = (found: FoundSpot): Mark => ({ name: found.name, dir: masFromDir(found.dir) });

const targetOf = (object: SkyObject): TargetSpec => ({
  objectId: object.id,
  dir: masFromDir(object.dir),
  sizeDas: Math.round(object.majorArcmin * DAS_PER_ARCMIN),
});

const neighboursOf = (target: SkyObject, objects: readonly SkyObject[]): TargetSpec[] => {
  const near = ({ dir }: { dir: Dir }) => separationRad(dir, target.dir) <= NEIGHBOUR_DEG * DEG;
  // A double star is a star as the others of the field are: nobody takes it for something else.
  const mayMislead = ({ id, kind }: SkyObject) => id !== target.id && kind !== "doubleStar";
  return objects.filter((object) => mayMislead(object) && near(object)).map(targetOf);
};

/**
 * A stage of a lesson as a hop to compile: every place, length and angle a whole number.
 * @throws InputError where a name is unknown, the target no object, or there is no such stage: the check finds these first
 */
export function toHopSpec(lesson: Lesson, stageIndex: number, lookups: Pick<Lookups, "sky">): HopSpec {
  const hop = lesson.stages[stageIndex]?.hop;
  if (!hop)
    throw new InputError(`lesson ${lesson.id} has no stage ${stageIndex + 1}`, `It has ${lesson.stages.length}.`);
  const sky = lookups.sky(lesson);
  const target = wanted(hop.target, sky).object;
  if (!target)
    throw new InputError(`${spotName(hop.target)} is no object`, "Check the lesson file: its findings say more.");
  const ways: Route[] = hop.ways.map(({ marks }) => ({
    marks: marks.map((mark) => markOf(wanted(mark, sky))),
    lengthDas: UNMEASURED,
  }));
  const { gear, place } = lesson;
  return {
    sky: sky.ref,
    anchor: masFromDir(wanted(hop.anchor, sky).dir),
    targets: [targetOf(target)],
    neighbours: neighboursOf(target, sky.objects),
    ways,
    hoppingGear: gear.hopping,
    claimGear: gear.claim,
    gear: gear.use,
    mount: gear.mount,
    stance: gear.stance,
    siteMas: [Math.round(place.latDeg * MAS_PER_DEG), Math.round(place.lonDeg * MAS_PER_DEG)],
    startMs: Date.parse(lesson.time),
    drift: lesson.drift,
    weights: lesson.weights,
    aids: lesson.aids,
    level: lesson.level,
    finderOffsetDas: [Math.round(gear.finderOffDeg[0] * DAS_PER_DEG), Math.round(gear.finderOffDeg[1] * DAS_PER_DEG)],
  };
}

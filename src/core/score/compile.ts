/**
 * Compiles an attempt: everything a score will need becomes integers here, once, so that later neither tiles nor models are
 * asked again.
 */
import { horizonFromIcrs, zenithDir } from "#core/celestial/frames.ts";
import { mixHash32 } from "#core/celestial/hash.ts";
import { AVERAGE_BV } from "#core/celestial/magnitude.ts";
import { dirFromMas, masFromDir } from "#core/celestial/vector.ts";
import { gearById } from "#core/optics/gear.ts";
import type {
  Compile,
  CompiledAttempt,
  Dir,
  GearLimit,
  HopSpec,
  MasDir,
  Resident,
  Route,
  Seeing,
} from "#core/seams/index.ts";
import { RECORD_VERSION } from "#core/session/record.ts";
import { lookAlikesOf } from "./lookAlikes.ts";
import { distanceDas, lengthOfMarksDas } from "./places.ts";
import { SCORE_VERSION } from "./rules.ts";

/** Ways come from the lesson by name; a solver that finds them has a version of its own. */
const SOLVER = "named-1";
const MAS_PER_DEG = 3_600_000;
const DAS_PER_DEG = 36_000;
/** The hand's gain lies within a quarter of 1. */
const GAIN = { least: 750, span: 501 };
/** Stars kept for the habits: the brightest near the way, none fainter than the bright layer of a sky holds. */
const CONTEXT_STARS = 48;
export const CONTEXT_LIMIT_MILLI_MAG = 6500;
/** The zenith is kept to a second of arc: engines may differ far below that. */
const ZENITH_GRAIN_MAS = 1000;

const limitsOf = (spec: HopSpec, seeing: Seeing): GearLimit[] =>
  spec.gear.map((gear) => ({
    gear,
    fieldDas: Math.round(gearById(gear).fieldDeg * DAS_PER_DEG),
    ...seeing.star(dirFromMas(spec.anchor), AVERAGE_BV, gear),
  }));

const measured = (way: Route): Route => ({
  marks: way.marks,
  lengthDas: lengthOfMarksDas(way.marks.map(({ dir }) => dir)),
});

const zenithOf = ({ siteMas, startMs }: HopSpec): MasDir => {
  const [latMas, lonMas] = siteMas;
  const site = { latDeg: latMas / MAS_PER_DEG, lonDeg: lonMas / MAS_PER_DEG, heightM: 0 };
  const { raMas, decMas } = masFromDir(zenithDir(horizonFromIcrs(site, startMs)));
  const coarse = (mas: number) => Math.round(mas / ZENITH_GRAIN_MAS) * ZENITH_GRAIN_MAS;
  return { raMas: coarse(raMas), decMas: coarse(decMas) };
};

/** The brightest stars within a hopping field of a mark, as triples, down to what the hopping instrument shows at a stare. */
function contextOf(ways: readonly Route[], fieldDas: number, limitMilliMag: number, stars: Resident): Int32Array {
  const marks = ways.flatMap((way) => way.marks.map(({ dir }) => dirFromMas(dir)));
  const found: { raMas: number; decMas: number; milliMag: number }[] = [];
  for (const { dirs, milliMag, count, invented } of stars.blocks) {
    if (invented) continue;
    for (let i = 0; i < count && milliMag[i]! <= limitMilliMag; i++) {
      const dir: Dir = [dirs[3 * i]!, dirs[3 * i + 1]!, dirs[3 * i + 2]!];
      if (marks.some((mark) => distanceDas(mark, dir) <= fieldDas))
        found.push({ ...masFromDir(dir), milliMag: milliMag[i]! });
    }
  }
  found.sort((a, b) => a.milliMag - b.milliMag || a.raMas - b.raMas || a.decMas - b.decMas);
  const triples = new Int32Array(3 * Math.min(CONTEXT_STARS, found.length));
  found.slice(0, CONTEXT_STARS).forEach(({ raMas, decMas, milliMag }, i) => {
    triples.set([raMas, decMas, milliMag], 3 * i);
  });
  return triples;
}

const gainOf = (seed: number, axis: 1 | 2): number => GAIN.least + (mixHash32(seed, axis) % GAIN.span);

/**
 * Compiles a hop.
 * @param stars what is resident about the ways, down to the context's limit
 * @param seed any integer; draws the hand's gains
 * @returns the compiled attempt, or the tiles that must come first
 */
export const compileHop: Compile = (spec, stars, seeing, seed) => {
  if (stars.missing.length > 0) return { needs: stars.missing };
  const limits = limitsOf(spec, seeing);
  const hopping = limits.find(({ gear }) => gear === spec.hoppingGear);
  if (!hopping) throw new Error(`the hopping instrument ${spec.hoppingGear} is not among the gear`);
  const ways = spec.ways.map(measured);
  const contextLimit = Math.min(CONTEXT_LIMIT_MILLI_MAG, hopping.directMilliMag);
  const about = contextOf(ways, hopping.fieldDas, contextLimit, stars);
  const compiled: CompiledAttempt = {
    versions: {
      record: RECORD_VERSION,
      score: SCORE_VERSION,
      sky: spec.sky.skyVersion,
      generator: spec.sky.kind === "practice" ? spec.sky.skyVersion : 0,
      seeing: seeing.version,
      solver: SOLVER,
    },
    spec,
    ways,
    parDas: Math.min(...ways.map(({ lengthDas }) => lengthDas)),
    hoppingFieldDas: hopping.fieldDas,
    limits,
    zenith: zenithOf(spec),
    gainPermille: [gainOf(seed, 1), gainOf(seed, 2)],
    rivals: spec.neighbours.filter(({ objectId }) => seeing.object(objectId, spec.claimGear).band !== "not"),
    targetBands: spec.targets.map(({ objectId }) => seeing.object(objectId, spec.claimGear).band),
    context: { stars: about, lookAlikes: lookAlikesOf(ways, about, hopping.fieldDas) },
  };
  return { ok: compiled };
};

/** Hops over practice skies for simulated learners: made as the lessons' are, on a page as it is printed. */
import { DEG, dirFromMas, masFromDir, offsetDir, separationRad, slerpDir } from "#core/celestial/vector.ts";
import { chartMarks } from "#core/chart/marks.ts";
import { type ChartPage, projectionOf, reachRad } from "#core/chart/page.ts";
import { zenithConditions } from "#core/eye/conditions.ts";
import { eyeSeeing } from "#core/eye/eyeSeeing.ts";
import { gearById } from "#core/optics/gear.ts";
import { createRehearsal } from "#core/rehearsal/learner.ts";
import { type RehearsalRun, rehearse } from "#core/rehearsal/rehearse.ts";
import { taskOfPage } from "#core/rehearsal/task.ts";
import { compileHop } from "#core/score/compile.ts";
import type { CompiledAttempt, Dir, GearId, HopSpec, Seeing, SkyObject, StarSource } from "#core/seams/index.ts";
import { createSession, type Session, stepEvent } from "#core/session/session.ts";
import { setTubeFor } from "#core/session/tube.ts";
import { starsWithin } from "#core/sky/catalogue/starsWithin.ts";
import type { SkyNames } from "#core/sky/names/types.ts";
import { practiceFacts, practiceNames, practiceObjects } from "#core/sky/practice/practiceSky.ts";
import { createPracticeSource } from "#core/sky/practice/practiceSource.ts";

/** More dots than this on a page are fog. */
const MOST_DOTS = 520;

export const never = new AbortController().signal;
/** How far off the anchor the sight leaves the tube. */
const OFF_ANCHOR_RAD = 0.2 * DEG;
const FREE = "free" as const;

export type HopWorld = {
  readonly source: StarSource;
  readonly seeing: Seeing;
  readonly objects: readonly SkyObject[];
  readonly names: SkyNames;
};

export function practiceWorld(seed: string): HopWorld {
  const objects = practiceObjects(seed);
  return {
    source: createPracticeSource(seed),
    seeing: eyeSeeing(zenithConditions(20.8), objects),
    objects,
    names: practiceNames(seed),
  };
}

export type PracticeHop = {
  readonly seed: string;
  readonly goal: "cluster" | "galaxy";
  readonly hopping: GearId;
  readonly claim: GearId;
  readonly mount?: HopSpec["mount"];
};

export function practiceSpec({ goal, ...hop }: PracticeHop): HopSpec {
  const facts = practiceFacts(hop.seed);
  const way = goal === "cluster" ? facts.clusterWay : facts.galaxyWay;
  return specOf(hop, facts.anchor.dir, way, facts[goal]);
}

/** A hop of a practice sky by a way of its own. */
export function specOf(
  { seed, hopping, claim, mount = "altazimuth" }: Omit<PracticeHop, "goal">,
  from: Dir,
  way: readonly { readonly name: string; readonly dir: Dir }[],
  target: SkyObject,
): HopSpec {
  const stops = [{ name: "anchor", dir: from }, ...way, { name: "target", dir: target.dir }];
  const [anchor] = stops;
  return {
    sky: createPracticeSource(seed).ref,
    anchor: masFromDir(anchor!.dir),
    targets: [{ dir: masFromDir(target.dir), sizeDas: Math.round(target.majorArcmin * 600), objectId: target.id }],
    neighbours: [],
    ways: [{ marks: stops.map(({ name, dir }) => ({ name, dir: masFromDir(dir) })), lengthDas: 0 }],
    hoppingGear: hopping,
    claimGear: claim,
    gear: [...new Set([hopping, claim])],
    mount,
    stance: "upright",
    siteMas: [180_000_000, 0],
    startMs: Date.parse("2027-10-29T20:00Z"),
    drift: false,
    weights: { directness: 50, pins: 30, care: 20 },
    aids: { ring: FREE, compass: FREE, limits: FREE, asInInstrument: FREE, carry: "off", trail: FREE, hints: FREE },
    level: "P",
    finderOffsetDas: [0, 0],
  };
}

export type Rehearsed = RehearsalRun & { readonly session: Session };

/**
 * The tube set on the anchor as the sight would have it, a little off; then the learner, with a page and nothing else.
 * `printed`: the sky of the page, where it is another than that of the field.
 */
export async function rehearsed(
  spec: HopSpec,
  world: HopWorld,
  options: { seed?: number; knock?: CompiledAttempt["knock"]; printed?: HopWorld } = {},
): Promise<Rehearsed> {
  const [anchor, target] = [dirFromMas(spec.anchor), dirFromMas(spec.targets[0]!.dir)];
  const deepest = Math.floor(world.seeing.star(anchor, 0.7, spec.hoppingGear).avertedMilliMag / 500) / 2 + 0.5;
  const cone = { centre: slerpDir(anchor, target, 0.5), radiusRad: separationRad(anchor, target) / 2 + 12 * DEG };
  const paper = options.printed ?? world;
  for (const { source } of [world, paper]) await source.want(source.resident(cone, deepest).missing, 0, never);
  const page = pageFor(anchor, target, gearById(spec.hoppingGear).fieldDeg, paper, deepest);
  const compiled = compileHop(spec, world.source.resident(cone, deepest), world.seeing, options.seed ?? 1);
  if (!("ok" in compiled)) throw new Error("tiles are missing");
  const session = createSession({ ...compiled.ok, knock: options.knock });
  stepEvent(session, { kind: "use", gear: spec.hoppingGear });
  setTubeFor(session, spec.hoppingGear, offsetDir(anchor, options.seed ?? 1, OFF_ANCHOR_RAD));
  stepEvent(session, { kind: "confirm" });
  if (session.state.phase !== "hop") throw new Error("the anchor was not in the middle");
  const { names, source } = paper;
  const marks = chartMarks(page, {
    blocks: source.resident({ centre: page.centre, radiusRad: reachRad(page) }, page.limitMag).blocks,
    names: names.stars,
    segments: names.segments,
    figures: names.figures,
    objects: [],
    anchor,
    target: { dir: target, object: paper.objects.find(({ id }) => id === spec.targets[0]!.objectId) ?? null },
    ways: [],
    words: { anchor: "anchor", target: "target" },
  });
  const task = taskOfPage(page, marks, gearById(spec.hoppingGear), gearById(spec.claimGear));
  const run = await rehearse(session, createRehearsal(task), { ...world, page: projectionOf(page) }, never);
  return { ...run, session };
}

/** Paper as the game prints it: the hop with room for a field about it; no deeper than stays readable. */
function pageFor(anchor: Dir, target: Dir, fieldDeg: number, { source }: HopWorld, limitMag: number): ChartPage {
  const spanDeg = separationRad(anchor, target) / DEG + 1.3 * fieldDeg;
  const page = {
    centre: slerpDir(anchor, target, 0.5),
    widthPx: 424,
    heightPx: 520,
    marginPx: 18,
    pxPerDeg: Math.min(52, 400 / spanDeg),
    limitMag,
  };
  const cone = { centre: page.centre, radiusRad: reachRad(page) };
  while (page.limitMag > 6) {
    const limit = page.limitMag * 1000;
    if (starsWithin(source.resident(cone, page.limitMag), cone.centre, cone.radiusRad, limit).length <= MOST_DOTS)
      break;
    page.limitMag -= 0.5;
  }
  return page;
}

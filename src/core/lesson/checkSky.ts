/** Checks against the sky: names, ways and their legs, darkness, altitude, and whether the instruments show what they must. */
import { moonDir, sunDir } from "#core/celestial/bodies.ts";
import { altAzFromDir, horizonFromIcrs } from "#core/celestial/frames.ts";
import { DEG, separationRad } from "#core/celestial/vector.ts";
import { GEAR } from "#core/optics/gear.ts";
import type { Dir, GearId, Seeing } from "#core/seams/index.ts";
import { checkBodiesInSky, isMoving } from "./checkBodies.ts";
import { type Finding, type FindingCode, finding } from "./findings.ts";
import type { Path, Places } from "./locate.ts";
import type { FoundSpot, Lookups, SkyLookup } from "./lookups.ts";
import { nearestWord } from "./nearestWord.ts";
import type { Report } from "./report.ts";
import { findSpot, spotName, spotsOf } from "./spots.ts";
import type { Lesson, LessonHop } from "./types.ts";

/** Degrees below which the Sun must stand, and should. */
const SUN = { mustDeg: -12, shouldDeg: -15 } as const;
const ALTITUDE = { leastDeg: 20, mostDeg: 85 } as const;
/** A leg is at most this share of the hopping field, so that the old mark and the new one can share it. */
const LONGEST_LEG_FIELDS = 0.75;
/** Looking for a like name goes through them all: enough for slips, too little to be dear. */
const MOST_SUGGESTIONS = 3;
/** A mark stands at the anchor or target if it lies this near. */
const SAME_PLACE_DEG = 1 / 60;
/** A place that somebody wrote down to a tenth of a degree is meant for the star so near to it. */
const ROUNDED_PLACE_DEG = 0.1;

interface Scene {
  readonly lesson: Lesson;
  readonly sky: SkyLookup;
  readonly seeing: Seeing;
  readonly altitudeDeg: (dir: Dir) => number;
  readonly report: Report;
}

const deg = (value: number) => `${value.toFixed(1)} degrees`;
const apartDeg = (a: Dir, b: Dir) => separationRad(a, b) / DEG;

/** Whether no star or object that has a name stands at a place: there may be nothing to put in the middle. */
function isBare({ dir }: FoundSpot, sky: SkyLookup): boolean {
  for (const name of sky.names()) {
    const named = sky.find(name);
    if (named && apartDeg(named.dir, dir) < ROUNDED_PLACE_DEG) return false;
  }
  return true;
}

function checkNight({ lesson, altitudeDeg, report }: Scene): void {
  const utcMs = Date.parse(lesson.time);
  const sunDeg = altitudeDeg(sunDir(utcMs));
  const where = `the Sun stands ${deg(sunDeg)} high at ${lesson.time}`;
  if (sunDeg > SUN.mustDeg) report("FW028", ["time"], where);
  else if (sunDeg > SUN.shouldDeg) report("FW029", ["time"], where);
  const moonDeg = altitudeDeg(moonDir(lesson.place, utcMs));
  if (moonDeg > 0) report("FW042", ["time"], `the Moon stands ${deg(moonDeg)} high`);
}

/** Places of all spots of a hop by their name; unknown ones are reported, each once. */
function findAll(
  { sky, report, altitudeDeg }: Scene,
  hop: LessonHop,
  at: (path: Path) => Path,
): Map<string, FoundSpot> {
  const found = new Map<string, FoundSpot>();
  const told = new Set<string>();
  for (const { spot, path } of spotsOf(hop)) {
    const name = spotName(spot);
    if (found.has(name) || told.has(name)) continue;
    told.add(name);
    const place = findSpot(spot, sky);
    if (!place) {
      const near = told.size - found.size <= MOST_SUGGESTIONS ? nearestWord(name, sky.names()) : undefined;
      report("FW022", at(path), `this sky has no "${name}"`, near && `Did you mean "${near}"?`);
      continue;
    }
    found.set(name, place);
    const high = altitudeDeg(place.dir);
    if (high < ALTITUDE.leastDeg || high > ALTITUDE.mostDeg)
      report("FW030", at(path), `${name} stands ${deg(high)} high`);
  }
  return found;
}

/** How an instrument shows a spot: to any look, to the free gaze alone, or not. Places without a magnitude pass. */
function shownBy(
  { object, magV, dir, colourBV }: FoundSpot,
  gear: GearId,
  seeing: Seeing,
): "plainly" | "beside" | "not" {
  if (object) return seeing.object(object.id, gear).band === "not" ? "not" : "plainly";
  if (magV === undefined) return "plainly";
  const { avertedMilliMag, directMilliMag } = seeing.star(dir, colourBV, gear);
  if (magV * 1000 > avertedMilliMag) return "not";
  return magV * 1000 > directMilliMag ? "beside" : "plainly";
}

/** Reports a star to be stepped from or to that is not there for whoever looks straight at it. */
function checkShown({ seeing, report }: Scene, spot: FoundSpot, gear: GearId, code: FindingCode, path: Path): void {
  const shown = shownBy(spot, gear, seeing);
  if (shown === "not") report(code, path, `${gear} does not show ${spot.name}`);
  else if (shown === "beside") report("FW051", path, `${gear} shows ${spot.name} only to one who looks beside it`);
}

function checkWays(
  scene: Scene,
  hop: LessonHop,
  found: ReadonlyMap<string, FoundSpot>,
  at: (path: Path) => Path,
): void {
  const { lesson, report } = scene;
  const field = GEAR.get(lesson.gear.hopping)!.fieldDeg;
  const anchor = found.get(spotName(hop.anchor));
  const target = found.get(spotName(hop.target));
  hop.ways.forEach(({ name, marks }, w) => {
    const places = marks.map((mark) => found.get(spotName(mark)));
    const isAt = (place: FoundSpot | undefined, end: FoundSpot | undefined) =>
      !place || !end || apartDeg(place.dir, end.dir) < SAME_PLACE_DEG;
    if (!isAt(places[0], anchor))
      report("FW024", at(["ways", w, "marks", 0]), `way "${name}" starts at ${spotName(marks[0]!)}`);
    const last = marks.length - 1;
    if (!isAt(places[last], target))
      report("FW025", at(["ways", w, "marks", last]), `way "${name}" ends at ${spotName(marks[last]!)}`);
    places.forEach((place, m) => {
      const before = places[m - 1];
      if (!place) return;
      const path = at(["ways", w, "marks", m]);
      if (m > 0 && m < last) checkShown(scene, place, lesson.gear.hopping, "FW033", path);
      const leg = before ? apartDeg(before.dir, place.dir) : 0;
      if (leg > LONGEST_LEG_FIELDS * field)
        report(
          "FW026",
          path,
          `${deg(leg)} from ${before!.name}; three quarters of the field are ${deg(LONGEST_LEG_FIELDS * field)}`,
        );
    });
  });
}

function checkEnds(
  scene: Scene,
  hop: LessonHop,
  found: ReadonlyMap<string, FoundSpot>,
  at: (path: Path) => Path,
): void {
  const { lesson, report } = scene;
  const anchor = found.get(spotName(hop.anchor));
  const first = lesson.gear.use[0]!;
  if (anchor && isMoving(anchor)) report("FW048", at(["anchor"]), `${anchor.name} moves among the stars`);
  else if (anchor && typeof hop.anchor !== "string" && isBare(anchor, scene.sky))
    report("FW053", at(["anchor"]), `nothing that has a name stands at ${anchor.name}`);
  else if (anchor) checkShown(scene, anchor, first, "FW031", at(["anchor"]));
  const target = found.get(spotName(hop.target));
  if (!target) return;
  if (!target.object) report("FW023", at(["target"]), `${target.name} is a place or a star`);
  else checkShown(scene, target, lesson.gear.claim, "FW032", at(["target"]));
}

/** Wants a lesson whose instruments are all known, and whose bodies have whole orbits. */
export function checkSky(file: string, lesson: Lesson, places: Places, lookups: Lookups): Finding[] {
  const findings: Finding[] = [];
  const horizon = horizonFromIcrs(lesson.place, Date.parse(lesson.time));
  const scene: Scene = {
    lesson,
    sky: lookups.sky(lesson),
    seeing: lookups.seeing(lesson),
    altitudeDeg: (dir) => altAzFromDir(horizon, dir).altRad / DEG,
    report: (code, path, message, hint) => {
      findings.push(finding(file, code, places.value(path), message, hint));
    },
  };
  checkNight(scene);
  checkBodiesInSky(lesson, scene.sky, scene.seeing, scene.report);
  lesson.stages.forEach(({ hop }, s) => {
    const at = (path: Path): Path => ["stages", s, "hop", ...path];
    const found = findAll(scene, hop, at);
    checkWays(scene, hop, found, at);
    checkEnds(scene, hop, found, at);
  });
  return findings;
}

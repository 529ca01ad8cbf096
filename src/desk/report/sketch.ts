/** The field of the claim as one would sketch it: dots for stars, stipple for what is soft, north marked. */

import { mixHash32 } from "#core/celestial/hash.ts";
import { DEG, offsetDir } from "#core/celestial/vector.ts";
import { isGlow } from "#core/field/glows.ts";
import { fieldCone, seenField } from "#core/field/seenField.ts";
import { visibleStars } from "#core/field/visibleStars.ts";
import { fieldRadiusPlane, projectionOf } from "#core/optics/viewFrame.ts";
import type { AttemptRecord, Dir, Gear, Seeing, SkyObject, StarSource } from "#core/seams/index.ts";
import { createSession, gearInUse, pointing, viewOf } from "#core/session/session.ts";

/** In radii of the field: x right, y down, as on paper. */
export type SketchDot = { readonly x: number; readonly y: number; readonly r: number };
export interface Sketch {
  readonly gear: Gear;
  readonly stars: readonly SketchDot[];
  readonly stipple: readonly SketchDot[];
  /** The way to north, clockwise from the top, degrees. */
  readonly northDeg: number;
}
export interface SketchSky {
  readonly source: StarSource;
  readonly seeing: Seeing;
  readonly objects: readonly SkyObject[];
}

const MILLI = 1000;
/** A dot's radius for a star so far above the limit, in a field of radius 1. */
const dotRadius = (aboveMag: number) => Math.min(0.032, 0.0042 + 0.0032 * Math.max(0, aboveMag));
const STIPPLE = { radius: 0.0036, least: 40, most: 260, perArea: 9000 } as const;

type Project = (dir: Dir) => { readonly x: number; readonly y: number } | null;

/** Places of the field in radii of its stop, from a view as the instrument shows it. */
function projectOf(gear: Gear, m: Float64Array): Project {
  const shift = projectionOf(gear) === "stereographic" ? 1 : 0;
  const scale = (1 + shift) / fieldRadiusPlane(gear);
  return ([x, y, z]) => {
    const along = (row: number) => m[row]! * x + m[row + 1]! * y + m[row + 2]! * z;
    const depth = shift + along(6);
    return depth > 0 ? { x: (scale * along(0)) / depth, y: (-scale * along(3)) / depth } : null;
  };
}

/** Points crowded towards the middle of an object, the same ones each time. */
function stippleOf({ id, dir, axisDeg, majorArcmin, minorArcmin }: SkyObject, project: Project): SketchDot[] {
  const tip = (angleDeg: number, arcmin: number) => project(offsetDir(dir, angleDeg * DEG, (arcmin / 120) * DEG));
  const [middle, major, minor] = [project(dir), tip(axisDeg, majorArcmin), tip(axisDeg + 90, minorArcmin)];
  if (!middle || !major || !minor) return [];
  const [a, b] = [
    { x: major.x - middle.x, y: major.y - middle.y },
    { x: minor.x - middle.x, y: minor.y - middle.y },
  ];
  const area = Math.abs(a.x * b.y - a.y * b.x);
  const count = Math.round(Math.min(STIPPLE.most, STIPPLE.least + STIPPLE.perArea * area));
  const seed = [...id].reduce((hash, letter) => mixHash32(hash, letter.charCodeAt(0)), 1);
  return Array.from({ length: count }, (_, i) => {
    const reach = (mixHash32(seed, i, 1) / 2 ** 32) ** 0.9;
    const angle = (mixHash32(seed, i, 2) / 2 ** 32) * 2 * Math.PI;
    const [u, v] = [reach * Math.cos(angle), reach * Math.sin(angle)];
    return { x: middle.x + u * a.x + v * b.x, y: middle.y + u * a.y + v * b.y, r: STIPPLE.radius };
  }).filter(({ x, y }) => x * x + y * y < 1);
}

/** What has to be resident before the field can be sketched. */
export function sketchNeeds(record: AttemptRecord, seeing: Seeing) {
  const session = createSession(record.compiled, { resume: record });
  const gear = gearInUse(session);
  const limitMag = seeing.star(pointing(session), 0.7, gear.id).avertedMilliMag / MILLI;
  return { cone: fieldCone(pointing(session), gear), limitMag };
}

/** Sketches the field in use when the attempt ended, as the instrument showed it. */
export function sketchOf(record: AttemptRecord, { source, seeing, objects }: SketchSky): Sketch {
  const session = createSession(record.compiled, { resume: record });
  const [gear, at] = [gearInUse(session), pointing(session)];
  const view = viewOf(session, new Float64Array(9));
  const seen = seenField({ pointing: at, gear, source, seeing, objects });
  const project = projectOf(gear, view);
  const { count, x, y, milliMag } = visibleStars(seen, view);
  const stars = Array.from({ length: count }, (_, i) => ({
    x: x[i]!,
    y: -y[i]!,
    r: dotRadius((seen.limitMilliMag - milliMag[i]!) / MILLI),
  }));
  const soft = seen.objects.map(({ object }) => object).filter(({ kind }) => isGlow(kind));
  const north = project(offsetDir(at, 0, 0.001)) ?? { x: 0, y: -1 };
  return {
    gear,
    stars,
    stipple: soft.flatMap((object) => stippleOf(object, project)),
    northDeg: (Math.atan2(north.x, -north.y) / DEG + 360) % 360,
  };
}

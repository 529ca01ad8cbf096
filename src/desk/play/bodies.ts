/** Moon and planets over a hop: where they stand now, for the field. Practice skies have none. */

import type { Site } from "#core/celestial/frames.ts";
import { DEG, dot } from "#core/celestial/vector.ts";
import { type BodiesInView, type BodyDisc, bodiesInView } from "#core/field/bodies.ts";
import type { Dir, Gear, StarBlock } from "#core/seams/index.ts";
import { gearInUse, horizonOf, type Session, skyTimeMs } from "#core/session/session.ts";
import type { SolarSystem } from "#core/sky/solar/solarSystem.ts";
import type { FieldBody } from "../../stage/index.ts";

/** The Moon goes by half a minute of arc in that time. */
const STALE_MS = 60_000;
/** A disc with its haze (the stage's quad is so many times as wide). */
const QUAD = 3;
const PEAK = { moon: 0.85, planet: 0.95 } as const;
/** Drawn over the disc. To the naked eye the full Moon's light reaches so far about it; a thinner Moon's less (set by eye, no source). */
const GLOW_RAD = 11 * DEG;

export interface Bodies {
  /** Points of the moment; null before the first look. */
  points(): StarBlock | null;
  /** As the instrument in use has them; null before the first look. */
  view(): BodiesInView | null;
  /** Another list whenever it changes. */
  readonly discs: readonly FieldBody[];
  /** Looks where they stand, when that is worth it. */
  follow(session: Session): void;
}

export type SolarAt = (site: Site, utcMs: number) => Promise<SolarSystem>;

/** The Moon's light about it where nothing magnifies: a disc of four px alone would be no brighter than a star. */
function glowOf({ dir, look }: BodyDisc): FieldBody {
  const share = Math.cbrt(look.litShare);
  const wideRad = 2 * GLOW_RAD * share;
  return { dir, majorRad: wideRad, minorRad: wideRad, axisRad: 0, peak: share, look: { ...look, form: "glow" } };
}

/**
 * The discs of a view, for the stage.
 * @param zenith ICRS, where the sky is open: there the Moon, if it is up, lights the sky about it
 */
export const discsOf = ({ discs }: BodiesInView, zenith: Dir | null = null): FieldBody[] => [
  ...discs.map(({ name, dir, diameterRad, axisRad, look }) => ({
    dir,
    majorRad: QUAD * diameterRad,
    minorRad: QUAD * diameterRad,
    axisRad,
    peak: name === "moon" ? PEAK.moon : PEAK.planet,
    look,
  })),
  ...discs.filter(({ name, dir }) => zenith && name === "moon" && dot(dir, zenith) > 0).map((moon) => glowOf(moon)),
];

function zenithOf(session: Session): Dir {
  const [, , , , , , x, y, z] = horizonOf(session);
  return [x!, y!, z!];
}

/**
 * The bodies as they are seen from a place.
 * @param solarAt works out where they stand; it may fail, then they stay as they were
 * @param came is told when they stand elsewhere
 */
export function createBodies(place: Site, solarAt: SolarAt, came: () => void): Bodies {
  let system: SolarSystem | null = null;
  let askedMs = Number.NaN;
  let gear: Gear | null = null;
  let view: BodiesInView | null = null;
  const look = (session: Session) => {
    if (!system || !gear) return;
    view = bodiesInView(system, gear);
    bodies.discs = discsOf(view, gear.magnification === 1 ? zenithOf(session) : null);
    came();
  };
  const ask = (session: Session, utcMs: number) => {
    askedMs = utcMs;
    const { latDeg, lonDeg, heightM } = place;
    solarAt({ latDeg, lonDeg, heightM }, utcMs).then(
      (stand) => {
        system = stand;
        look(session);
      },
      // Without them the field is as the catalogue has it; the next minute asks again.
      () => undefined,
    );
  };
  const bodies = {
    points: () => view?.points ?? null,
    view: () => view,
    discs: [] as readonly FieldBody[],
    follow(session: Session) {
      const nowMs = skyTimeMs(session);
      if (!(Math.abs(nowMs - askedMs) < STALE_MS)) ask(session, nowMs);
      const gearNow = gearInUse(session);
      if (gearNow === gear) return;
      gear = gearNow;
      look(session);
    },
  };
  return bodies;
}

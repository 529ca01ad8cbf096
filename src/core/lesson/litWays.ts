/** Ways to clusters, which stand even a city's sky: from a star that the naked eye sees there, by one more, within the finder's steps. */
import { altAzFromDir, horizonFromIcrs } from "#core/celestial/frames.ts";
import { AVERAGE_BV } from "#core/celestial/magnitude.ts";
import { DEG, separationRad } from "#core/celestial/vector.ts";
import type { Place } from "#core/eye/eyeSeeing.ts";
import type { Gear, Seeing, SkyObject } from "#core/seams/index.ts";
import type { NamedStar } from "#core/sky/names/types.ts";

export interface LitWay {
  readonly anchor: NamedStar;
  readonly mark: NamedStar;
  readonly target: SkyObject;
}
export interface LitSky {
  /** Brightest first. */
  readonly stars: readonly NamedStar[];
  readonly objects: readonly SkyObject[];
  readonly seeing: Seeing;
  readonly place: Place;
  readonly utcMs: number;
  readonly hopping: Gear;
  readonly claim: Gear;
}

/** Plain to see, not just seen, 0.001 mag: of clusters, and of the anchor to the naked eye (common practice, no source). */
const PLAIN_MILLI_MAG = { cluster: 700, anchor: 500 } as const;
/** Large enough to be no star, and with sky about it in the eyepiece: arcminutes, share of the field. */
const SIZE = { leastArcmin: 4, mostFields: 0.5 } as const;
/** Neither in the haze nor where a tube is hard to turn. */
const ALTITUDE_DEG = { least: 30, most: 75 } as const;
/** Both stars of a leg share the field. */
const LONGEST_LEG_FIELDS = 0.7;
const SHORTEST_LEG_DEG = 1;
/** Further than one sees at once, and not by a wide detour. */
const LEAST_WAY_DEG = 3;
const MOST_DETOUR = 1.3;
/** A mark outshines what stands so near to it. */
const ALONE_DEG = 1;

const apartDeg = (a: { dir: NamedStar["dir"] }, b: { dir: NamedStar["dir"] }) => separationRad(a.dir, b.dir) / DEG;

/** Clusters that are plain to see in the claim instrument, well up. */
function plainClusters({ objects, seeing, place, utcMs, claim }: LitSky): SkyObject[] {
  const horizon = horizonFromIcrs(place, utcMs);
  const mostArcmin = 60 * SIZE.mostFields * claim.fieldDeg;
  return objects.filter(({ id, kind, dir, majorArcmin }) => {
    if (kind !== "openCluster" && kind !== "globularCluster") return false;
    if (majorArcmin < SIZE.leastArcmin || majorArcmin > mostArcmin) return false;
    // To a thousandth of a degree, so that all engines agree.
    const altitudeDeg = Math.round((1000 * altAzFromDir(horizon, dir).altRad) / DEG) / 1000;
    if (altitudeDeg < ALTITUDE_DEG.least || altitudeDeg > ALTITUDE_DEG.most) return false;
    return seeing.object(id, claim.id).marginMilliMag >= PLAIN_MILLI_MAG.cluster;
  });
}

/** The way to a cluster from the brightest star that has one; null where no pair of named stars leads there. */
function wayTo(target: SkyObject, letters: readonly NamedStar[], { seeing, hopping }: LitSky): LitWay | null {
  const longestDeg = LONGEST_LEG_FIELDS * hopping.fieldDeg;
  const near = letters.filter((star) => apartDeg(star, target) <= 2 * longestDeg);
  const isLeg = (deg: number) => deg >= SHORTEST_LEG_DEG && deg <= longestDeg;
  const isAlone = (mark: NamedStar) =>
    near.every((other) => other === mark || other.magV > mark.magV || apartDeg(other, mark) > ALONE_DEG);
  for (const anchor of near) {
    const wayDeg = apartDeg(anchor, target);
    const eye = seeing.star(anchor.dir, anchor.colourBV ?? AVERAGE_BV, "eye");
    const faintestMilliMag = Math.min(eye.directMilliMag, eye.avertedMilliMag - PLAIN_MILLI_MAG.anchor);
    if (1000 * anchor.magV > faintestMilliMag || wayDeg < LEAST_WAY_DEG) continue;
    const mark = near.find((star) => {
      const [first, second] = [apartDeg(anchor, star), apartDeg(star, target)];
      // A mark brighter than the anchor would be the better anchor.
      const isOnTheWay = isLeg(first) && isLeg(second) && first + second <= MOST_DETOUR * wayDeg;
      return isOnTheWay && star.magV >= anchor.magV && isAlone(star);
    });
    if (mark) return { anchor, mark, target };
  }
  return null;
}

/** The ways that there are, one a cluster, in the order of the objects. Pure, the same in every engine. */
export function litWays(sky: LitSky): LitWay[] {
  const letters = sky.stars.filter(({ con, flamsteed }) => con !== undefined && flamsteed === undefined);
  return plainClusters(sky).flatMap((target) => wayTo(target, letters, sky) ?? []);
}

/**
 * The star that is most easily taken for a waymark on the next step, and what an observer sees that tells the two apart.
 * Thresholds are common practice, no source.
 */
import { separationRad } from "#core/celestial/vector.ts";
import type { Dir, StarBlock } from "#core/seams/index.ts";
import { type FoundStar, starsWithin } from "../sky/catalogue/starsWithin.ts";

/** What the rival is against the waymark. */
export type Telling = "brighter" | "fainter" | "redder" | "whiter" | "alone" | "accompanied";
export interface Rival {
  readonly dir: Dir;
  readonly telling: Telling;
}
export interface StepTaken {
  /** The waymark that one steps from, and the one that one steps to. */
  readonly from: Dir;
  readonly to: Dir;
  /** True field of the hopping instrument, and what it shows. */
  readonly fieldRad: number;
  readonly limitMilliMag: number;
}

/** Shares of the field: a waymark and its own, a step's reach, what counts as company. */
const OWN_FIELDS = 0.05;
const REACH_FIELDS = 0.75;
const COMPANY_FIELDS = 0.05;
/** So much brighter or fainter may still be taken for it; so much an eye tells. */
const ALIKE_MILLI_MAG = 700;
const TOLD_MILLI_MAG = 300;
/** B-V of a white star and an orange one; an eye sees colour only in stars so far above the limit. */
const TOLD_BV = 0.6;
const COLOUR_MILLI_MAG = 2200;
/** Company is seen at a glance where it is so far above the limit. */
const PLAIN_MILLI_MAG = 800;

/**
 * The star as bright as a waymark, in the reach of the step, that stands nearest to it. Pure.
 * @param blocks stars about the step, down to the limit
 * @returns null where nothing is alike, or nothing but the place tells it apart
 */
export function rivalOf(blocks: readonly StarBlock[], { from, to, fieldRad, limitMilliMag }: StepTaken): Rival | null {
  const own = OWN_FIELDS * fieldRad;
  const mark = starsWithin({ blocks }, to, own, limitMilliMag)[0];
  if (!mark) return null;
  const alike = starsWithin({ blocks }, from, REACH_FIELDS * fieldRad, mark.milliMag + ALIKE_MILLI_MAG).filter(
    ({ dir, milliMag, invented }) =>
      !invented &&
      milliMag >= mark.milliMag - ALIKE_MILLI_MAG &&
      separationRad(dir, from) > own &&
      separationRad(dir, to) > own,
  );
  const offRad = ({ dir }: FoundStar) => separationRad(dir, mark.dir);
  const rival = alike.toSorted((a, b) => offRad(a) - offRad(b) || a.id - b.id)[0];
  if (!rival) return null;
  const hasCompany = ({ dir, id }: FoundStar) =>
    starsWithin({ blocks }, dir, COMPANY_FIELDS * fieldRad, limitMilliMag - PLAIN_MILLI_MAG).some(
      (one) => one.id !== id,
    );
  const telling = tellingOf(mark, rival, hasCompany, limitMilliMag);
  return telling && { dir: rival.dir, telling };
}

function tellingOf(
  mark: FoundStar,
  rival: FoundStar,
  hasCompany: (star: FoundStar) => boolean,
  limitMilliMag: number,
): Telling | null {
  const [there, here] = [hasCompany(rival), hasCompany(mark)];
  // A figure is told from a single star before anything else.
  if (here && !there) return "alone";
  const fainterMilliMag = rival.milliMag - mark.milliMag;
  if (Math.abs(fainterMilliMag) >= TOLD_MILLI_MAG) return fainterMilliMag > 0 ? "fainter" : "brighter";
  if (there && !here) return "accompanied";
  const redderBV = rival.colourBV - mark.colourBV;
  const showsColour = Math.max(rival.milliMag, mark.milliMag) <= limitMilliMag - COLOUR_MILLI_MAG;
  if (showsColour && Math.abs(redderBV) >= TOLD_BV) return redderBV > 0 ? "redder" : "whiter";
  return null;
}

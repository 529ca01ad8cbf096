/**
 * Stars that pass for a waymark: as bright, with the same small figure about them, however turned. All by whole numbers, so
 * that every engine names the same ones. Thresholds are common practice, no source.
 */
import { dirFromMas, positionAngleRad, TWO_PI } from "#core/celestial/vector.ts";
import type { Dir, Route } from "#core/seams/index.ts";
import { distanceDas } from "./places.ts";

/** A mark is the star that stands within this of it: to the naked eye, the same place. */
const AT_MARK_DAS = 1800;
/** So much brighter or fainter still looks the same. */
const SAME_MILLI_MAG = 500;
/** Lengths of a figure pass for the same within this share of them, or of the field where they are short. */
const SAME_LENGTH_PERMILLE = 150;
const SAME_SHORT_PERMILLE = 25;
const SAME_ANGLE_DEG = 20;
/** Figures are made of stars within half a field, and sought within one and a half of their mark. */
const FIGURE_PERMILLE = 500;
const NEAR_PERMILLE = 1500;
/** A figure is a star and its brightest neighbours, so many at most. */
const NEIGHBOURS = 2;

type Star = { readonly index: number; readonly dir: Dir; readonly milliMag: number };
/** A neighbour as its star has it: how far, how much fainter, in which direction. */
type Neighbour = { readonly lengthDas: number; readonly fainterMilliMag: number; readonly towardsDeg: number };

function starsOf(triples: Int32Array): Star[] {
  return Array.from({ length: triples.length / 3 }, (_, index) => ({
    index,
    dir: dirFromMas({ raMas: triples[3 * index]!, decMas: triples[3 * index + 1]! }),
    milliMag: triples[3 * index + 2]!,
  }));
}

const nearest = (stars: readonly Star[], dir: Dir): Star | undefined => {
  let best: Star | undefined;
  let bestDas = AT_MARK_DAS + 1;
  for (const star of stars) {
    const offDas = distanceDas(star.dir, dir);
    if (offDas < bestDas) [best, bestDas] = [star, offDas];
  }
  return best;
};

/** Neighbours of a star within so far, brightest first, as the stars come. */
function neighboursOf(star: Star, stars: readonly Star[], withinDas: number): Neighbour[] {
  return stars.flatMap((other) => {
    const lengthDas = distanceDas(star.dir, other.dir);
    if (lengthDas <= AT_MARK_DAS || lengthDas > withinDas) return [];
    const towardsDeg = Math.round((positionAngleRad(star.dir, other.dir) * 360) / TWO_PI);
    return [{ lengthDas, fainterMilliMag: other.milliMag - star.milliMag, towardsDeg }];
  });
}

const turnDeg = (from: Neighbour, to: Neighbour): number => (to.towardsDeg - from.towardsDeg + 720) % 360;

/** Whether a figure's neighbour has its like; `slackDas`: what short lengths may differ by. */
const isLike = (one: Neighbour, other: Neighbour, slackDas: number): boolean =>
  Math.abs(one.fainterMilliMag - other.fainterMilliMag) <= SAME_MILLI_MAG &&
  Math.abs(one.lengthDas - other.lengthDas) <=
    Math.max(slackDas, Math.round((other.lengthDas * SAME_LENGTH_PERMILLE) / 1000));

/** Whether a figure can be laid on the neighbours of another star by turning alone: a mirrored one is another figure. */
function repeats(figure: readonly Neighbour[], there: readonly Neighbour[], slackDas: number): boolean {
  const [first, second] = figure;
  if (!first) return false;
  const firsts = there.filter((one) => isLike(one, first, slackDas));
  if (!second) return firsts.length > 0;
  const dueDeg = turnDeg(first, second);
  return firsts.some((a) =>
    there.some((b) => {
      if (a === b || !isLike(b, second, slackDas)) return false;
      const offDeg = Math.abs(turnDeg(a, b) - dueDeg);
      return Math.min(offDeg, 360 - offDeg) <= SAME_ANGLE_DEG;
    }),
  );
}

/**
 * Which stars about the ways pass for a mark of them: for any waymark that is a star with neighbours, those that repeat it;
 * for the anchor also those as bright as it is. The targets are no waymarks, and no mark passes for another.
 * @param triples raMas, decMas, milliMag a star, brightest first
 * @param fieldDas the hopping field
 * @returns places in the list of stars, rising
 */
export function lookAlikesOf(ways: readonly Route[], triples: Int32Array, fieldDas: number): number[] {
  const stars = starsOf(triples);
  const share = (permille: number) => Math.round((fieldDas * permille) / 1000);
  const own = new Set<Star>();
  const anchors = new Set<Star>();
  for (const { marks } of ways)
    marks.slice(0, -1).forEach(({ dir }, i) => {
      const star = nearest(stars, dirFromMas(dir));
      if (star) own.add(star);
      if (star && i === 0) anchors.add(star);
    });
  const about = stars.map((star) => neighboursOf(star, stars, share(FIGURE_PERMILLE)));
  /** A like figure may reach a little farther out than its pattern. */
  const wider = stars.map((star) => neighboursOf(star, stars, share(FIGURE_PERMILLE) + share(SAME_LENGTH_PERMILLE)));
  const passesFor = (star: Star, mark: Star): boolean => {
    if (Math.abs(star.milliMag - mark.milliMag) > SAME_MILLI_MAG) return false;
    if (distanceDas(star.dir, mark.dir) > share(NEAR_PERMILLE)) return false;
    const figure = about[mark.index]!.slice(0, NEIGHBOURS);
    return anchors.has(mark) || repeats(figure, wider[star.index]!, share(SAME_SHORT_PERMILLE));
  };
  const marks = [...own];
  return stars
    .filter((star) => !own.has(star) && marks.some((mark) => passesFor(star, mark)))
    .map(({ index }) => index);
}

/** The ladder's scale: rings by the logarithm of the field, so that their gaps are the true ratios of the fields. */

export interface LadderScale {
  /** Radius of each ring, px, in the order of the fields. */
  readonly radiiPx: readonly number[];
  /** False where rings would come too near each other and stand in equal gaps instead: no star has its place then. */
  readonly toScale: boolean;
  /** Radius for a field, or for a star at half that distance. */
  radiusPx(fieldDeg: number): number;
}
/** Rings may not be nearer than that, px at a ladder of 124. */
const LEAST_GAP = 18 / 124;
/** Radius of the smallest ring, as a share; of two rings alone it can be larger, and hold its name. */
const INNER = 0.3;
const INNER_OF_TWO = 0.48;

/**
 * @param fieldsDeg true fields, smallest first
 * @param outerPx radius of the widest ring
 */
export function ladderScale(fieldsDeg: readonly number[], outerPx: number): LadderScale {
  const least = fieldsDeg[0] ?? 1;
  const most = fieldsDeg[fieldsDeg.length - 1] ?? 180;
  const innerPx = fieldsDeg.length < 2 ? outerPx : outerPx * (fieldsDeg.length === 2 ? INNER_OF_TWO : INNER);
  const perDecadePx = most > least ? (outerPx - innerPx) / Math.log10(most / least) : 0;
  const radiusPx = (fieldDeg: number) =>
    fieldDeg <= least ? (innerPx * fieldDeg) / least : innerPx + perDecadePx * Math.log10(fieldDeg / least);
  const radiiPx = fieldsDeg.map(radiusPx);
  const toScale = radiiPx.every((radius, i) => i === 0 || radius - radiiPx[i - 1]! >= LEAST_GAP * outerPx);
  if (toScale) return { radiiPx, toScale, radiusPx };
  const gapPx = (outerPx - innerPx) / Math.max(1, fieldsDeg.length - 1);
  return { radiiPx: fieldsDeg.map((_, i) => innerPx + gapPx * i), toScale, radiusPx };
}

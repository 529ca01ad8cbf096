/** The value at `x` of a line through points of rising `xs`. */
export function between(xs: readonly number[], ys: readonly number[], x: number): number {
  const above = aboveAmong(xs, x);
  return along(ys, above, shareAmong(xs, above, x));
}

/** The first of rising `xs` that is not below `x`, at least the second and at most the last. */
export function aboveAmong(xs: readonly number[], x: number): number {
  let above = 1;
  while (above < xs.length - 1 && x > xs[above]!) above += 1;
  return above;
}

/** How far `x` is on the way to `xs[above]` from the one before, 0 to 1. */
export function shareAmong(xs: readonly number[], above: number, x: number): number {
  return Math.min(1, Math.max(0, (x - xs[above - 1]!) / (xs[above]! - xs[above - 1]!)));
}

/** The value so far on the way to `ys[above]`. */
export function along(ys: readonly number[], above: number, share: number): number {
  return ys[above - 1]! + share * (ys[above]! - ys[above - 1]!);
}

/** The value at `x` of a line through points of rising `xs`. */
export function between(xs: readonly number[], ys: readonly number[], x: number): number {
  let above = 1;
  while (above < xs.length - 1 && x > xs[above]!) above += 1;
  const share = Math.min(1, Math.max(0, (x - xs[above - 1]!) / (xs[above]! - xs[above - 1]!)));
  return ys[above - 1]! + share * (ys[above]! - ys[above - 1]!);
}

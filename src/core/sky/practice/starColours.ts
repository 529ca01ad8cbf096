/** Colours of field stars. */

/**
 * B-V at 5, 25, 50, 75 and 95 % of the stars to a limit, as measured in Tycho-2 (Hog et al. 2000, A&A 355, L27;
 * B-V = 0.85 (BT - VT)); the outermost values are set so that the tails end.
 */
const QUANTILES: readonly { readonly toMag: number; readonly bv: readonly number[] }[] = [
  { toMag: 3.5, bv: [-0.24, -0.17, -0.06, 0.22, 1.04, 1.62, 1.85] },
  { toMag: 5, bv: [-0.24, -0.16, -0.01, 0.4, 1.08, 1.6, 1.85] },
  { toMag: 6.5, bv: [-0.2, -0.11, 0.06, 0.47, 1.11, 1.62, 1.85] },
  { toMag: 8, bv: [-0.15, -0.04, 0.21, 0.58, 1.14, 1.63, 1.85] },
  { toMag: 9.5, bv: [-0.08, 0.04, 0.33, 0.64, 1.15, 1.64, 1.85] },
  { toMag: 99, bv: [0, 0.14, 0.42, 0.69, 1.13, 1.67, 1.9] },
];
const SHARES = [0, 0.05, 0.25, 0.5, 0.75, 0.95, 1] as const;

/** B-V of a star of magnitude V, for a draw in [0, 1): the inverse of the measured distribution. */
export function colourOf(magV: number, draw: number): number {
  const { bv } = QUANTILES.find(({ toMag }) => magV <= toMag)!;
  let above = 1;
  while (draw > SHARES[above]!) above += 1;
  const share = (draw - SHARES[above - 1]!) / (SHARES[above]! - SHARES[above - 1]!);
  return bv[above - 1]! + share * (bv[above]! - bv[above - 1]!);
}

/** Colours of field stars. */
import statistics from "#shared/star-statistics.json" with { type: "json" };

const { colourShares, colours } = statistics;
/** |b| to which the colours of the plane hold, and from which those of the poles. */
const PLANE_DEG = 5;
const POLES_DEG = 45;

/**
 * B-V of a star of magnitude V at galactic latitude |b|, for a draw in [0, 1): the inverse of the distribution measured in
 * Tycho-2 (`source` of star-statistics.json). Towards the poles the blue stars of the plane grow rare.
 */
export function colourOf(magV: number, absLatDeg: number, draw: number): number {
  const { planeCentiBv, poleCentiBv } = colours.find(({ toMag }) => magV <= toMag) ?? colours.at(-1)!;
  const polar = Math.min(1, Math.max(0, (absLatDeg - PLANE_DEG) / (POLES_DEG - PLANE_DEG)));
  let above = 1;
  while (draw > colourShares[above]!) above += 1;
  const share = (draw - colourShares[above - 1]!) / (colourShares[above]! - colourShares[above - 1]!);
  const at = (i: number) => planeCentiBv[i]! + polar * (poleCentiBv[i]! - planeCentiBv[i]!);
  return (at(above - 1) + share * (at(above) - at(above - 1))) / 100;
}

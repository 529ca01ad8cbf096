/** Colours of field stars. */
import statistics from "#shared/star-statistics.json" with { type: "json" };

const { colourShares, colours } = statistics;
/** |b| to which the colours of the plane hold, and from which those of the poles. */
const PLANE_DEG = 5;
const POLES_DEG = { bright: 45, faint: 33 } as const;
/** Bright stars are near, and so lie about the plane in a layer that looks thicker. */
const BRIGHT_BINS = 3;

const SHARES = Float64Array.from(colourShares);
const STEPS = SHARES.length;
const TO_MILLIMAG = Float64Array.from(colours, ({ toMag }) => toMag * 1000);
const PLANE = colours.map(({ planeCentiBv }) => Float64Array.from(planeCentiBv, (centi) => centi / 100));
const POLES = colours.map(({ poleCentiBv }) => Float64Array.from(poleCentiBv, (centi) => centi / 100));

/**
 * B-V of a star of magnitude V at galactic latitude |b|, for a draw in [0, 1): the inverse of the distribution measured in
 * Tycho-2 (`source` of star-statistics.json). Towards the poles the blue stars of the plane grow rare; stars beyond V 11
 * have the colours of those to V 11.
 */
export function colourOf(milliMag: number, absLatDeg: number, draw: number): number {
  let bin = 0;
  while (bin < TO_MILLIMAG.length - 1 && milliMag > TO_MILLIMAG[bin]!) bin += 1;
  const polesDeg = bin < BRIGHT_BINS ? POLES_DEG.bright : POLES_DEG.faint;
  const polar = Math.min(1, Math.max(0, (absLatDeg - PLANE_DEG) / (polesDeg - PLANE_DEG)));
  // A mixture, not a shift: between the white and the orange stars a gap stays at every latitude.
  const ofPoles = draw < polar;
  const within = ofPoles ? draw / polar : (draw - polar) / (1 - polar);
  return valueAt((ofPoles ? POLES : PLANE)[bin]!, within);
}

function valueAt(values: Float64Array, draw: number): number {
  let above = draw < 0.5 ? 1 : STEPS >> 1;
  while (above < STEPS - 1 && draw > SHARES[above]!) above += 1;
  const share = (draw - SHARES[above - 1]!) / (SHARES[above]! - SHARES[above - 1]!);
  return values[above - 1]! + share * (values[above]! - values[above - 1]!);
}

/** Colours of field stars. */
import { exactAsin, exactSin } from "#core/celestial/exactMath.ts";
import { DEG } from "#core/celestial/vector.ts";
import table from "#shared/star-colours.json" with { type: "json" };
import { COLOUR_STEP, unpackColourBV } from "../catalogue/tileFormat.ts";
import { aboveAmong, shareAmong } from "./between.ts";

const { toMags, bandEdgesDeg, perMille } = table;
const TO_MILLIMAG = Float64Array.from(toMags, (mag) => mag * 1000);
const LATITUDES = 91;
/** Steps of equal numbers of stars: within one colours are spread evenly. */
const STEPS = 256;

/** For each range of magnitudes and whole degree of |b|, when it is first asked for: B-V at each step. */
const inverses: (Float64Array | undefined)[] = Array.from({ length: TO_MILLIMAG.length * LATITUDES });

/**
 * B-V of a star of magnitude V at galactic latitude |b|, for a draw in [0, 1): the inverse of the distribution measured in
 * Tycho-2 (`about` of star-colours.json). Towards the poles the blue stars of the plane grow rare; stars beyond V 11 have the
 * colours of those to V 11.
 */
export function colourOf(milliMag: number, absLatDeg: number, draw: number): number {
  return colourAmong(coloursAt(milliMag, absLatDeg), draw);
}

/** The colours of a magnitude and latitude, for {@link colourAmong}. */
export function coloursAt(milliMag: number, absLatDeg: number): Float64Array {
  let bin = 0;
  while (bin < TO_MILLIMAG.length - 1 && milliMag > TO_MILLIMAG[bin]!) bin += 1;
  const latitude = Math.floor(absLatDeg + 0.5);
  const known = inverses[bin * LATITUDES + latitude];
  const values = known ?? inverseOf(bin, latitude);
  if (!known) inverses[bin * LATITUDES + latitude] = values;
  return values;
}

/** Whether all magnitudes of a range have the same colours. */
export function isOneColourRange(fromMilliMag: number, toMilliMag: number): boolean {
  const inner = TO_MILLIMAG.slice(0, -1);
  return inner.every((edge) => edge <= fromMilliMag || edge >= toMilliMag);
}

/** B-V for a draw in [0, 1). */
export function colourAmong(colours: Float64Array, draw: number): number {
  const place = draw * STEPS;
  const step = Math.floor(place);
  return colours[step]! + (place - step) * (colours[step + 1]! - colours[step]!);
}

function inverseOf(bin: number, latitude: number): Float64Array {
  const shares = sharesAt(perMille[bin]!, latitude);
  const all = shares.reduce((sum, share) => sum + share, 0);
  const last = shares.findLastIndex((share) => share > 0);
  let [code, before] = [0, 0];
  return Float64Array.from({ length: STEPS + 1 }, (_, step) => {
    const wanted = (all * step) / STEPS;
    while (code < last && before + shares[code]! <= wanted) {
      before += shares[code]!;
      code += 1;
    }
    return unpackColourBV(code) + (Math.min(1, (wanted - before) / shares[code]!) - 0.5) * COLOUR_STEP;
  });
}

const sineOf = (edgeDeg: number): number => exactSin(edgeDeg * DEG);
/** |b| on either side of which half of a band's area lies, degrees. */
const middles = bandEdgesDeg
  .slice(1)
  .map((to, band) => exactAsin((sineOf(bandEdgesDeg[band]!) + sineOf(to)) / 2) / DEG);

/** A mixture of the nearest two bands, not a shift: between the white and the orange stars a gap stays at every latitude. */
function sharesAt(byBand: readonly (readonly number[])[], latitude: number): number[] {
  const above = aboveAmong(middles, latitude);
  const along = shareAmong(middles, above, latitude);
  return byBand[above - 1]!.map((share, code) => share + along * (byBand[above]![code]! - share));
}

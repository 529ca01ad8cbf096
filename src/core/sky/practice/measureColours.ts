/** The colours of the stars of the catalogue sky, by magnitude and by the latitude in our own galaxy. */
import { exactSin } from "#core/celestial/exactMath.ts";
import { DEG, dot } from "#core/celestial/vector.ts";
import type { StarBlock } from "#core/seams/index.ts";
import { COLOUR_CODES, packColour } from "../catalogue/tileFormat.ts";
import { GALACTIC_POLE } from "../glow/glowMap.ts";

/** Each holds the stars from the limit before to this one, V. */
const TO_MAGS: readonly number[] = [3.5, 5, 6.5, 8, 9.5, 11];
const BAND_EDGES_DEG: readonly number[] = [0, 2.5, 6, 10, 15, 20, 26, 33, 45, 60, 90];
const BANDS = BAND_EDGES_DEG.length - 1;
/** Where a band has fewer stars than this, its neighbours' are taken in, one more to each side, until there are enough. */
const FEWEST = 200;
/** Shares are given in parts of this. */
const PARTS = 1000;

/** For each range of magnitudes and band of |b|, the share of each 5-bit colour of the tiles. */
export type ColourTable = {
  readonly toMags: readonly number[];
  readonly bandEdgesDeg: readonly number[];
  readonly perMille: readonly (readonly (readonly number[])[])[];
};

/**
 * Counts the colours of blocks that hold the whole catalogue sky to V 11. The few stars of unknown colour (one in a thousand)
 * count as neutral.
 */
export function measureColours(blocks: Iterable<StarBlock>): ColourTable {
  const counts = TO_MAGS.map(() => Array.from({ length: BANDS }, () => new Float64Array(COLOUR_CODES)));
  for (const block of blocks) countColours(block, counts);
  return {
    toMags: TO_MAGS,
    bandEdgesDeg: BAND_EDGES_DEG,
    perMille: counts.map((byBand) => byBand.map((_, band) => perMille(withNeighbours(byBand, band)))),
  };
}

const SINES = BAND_EDGES_DEG.slice(1, -1).map((edge) => exactSin(edge * DEG));

function countColours({ count, dirs, milliMag, colourBV }: StarBlock, counts: readonly Float64Array[][]): void {
  for (let i = 0; i < count; i++) {
    const bin = TO_MAGS.findIndex((mag) => milliMag[i]! <= mag * 1000);
    if (bin < 0) break;
    const sine = Math.abs(dot([dirs[3 * i]!, dirs[3 * i + 1]!, dirs[3 * i + 2]!], GALACTIC_POLE));
    const band = SINES.filter((edge) => sine > edge).length;
    counts[bin]![band]![packColour(colourBV[i]!)]! += 1;
  }
}

const sum = (counts: Float64Array): number => counts.reduce((all, each) => all + each, 0);

function withNeighbours(byBand: readonly Float64Array[], band: number): Float64Array {
  for (let reach = 0; ; reach++) {
    const near = byBand.slice(Math.max(0, band - reach), band + reach + 1);
    const all = near[0]!.map((_, code) => near.reduce((stars, counts) => stars + counts[code]!, 0));
    if (sum(all) >= FEWEST || near.length === byBand.length) return all;
  }
}

/** Rounded so that the sum of the first ones is right everywhere. */
function perMille(counts: Float64Array): number[] {
  const all = sum(counts);
  let [before, given] = [0, 0];
  return Array.from(counts, (each) => {
    before += each;
    const rounded = Math.floor((PARTS * before) / all + 0.5) - given;
    given += rounded;
    return rounded;
  });
}
